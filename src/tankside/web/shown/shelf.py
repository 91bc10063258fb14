"""What the shelf pages show: each bottle as its vessel, and one bottle's ledger."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from zoneinfo import ZoneInfo

from tankside.core.planning.developer_left import rolls_left as rolls_of_stock
from tankside.core.planning.fixer_known import fixer_tests
from tankside.core.quantities.display import volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bath_tests import Tested
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.web.drawing.kinds import SIGNS, Sign, sign_of_solution
from tankside.web.drawing.levels import Levels, levels
from tankside.web.drawing.stock import Stock, long_step, stock
from tankside.web.drawing.vessel import Cylinder, cylinder
from tankside.web.shown.counted import Counted, counted
from tankside.web.shown.minded import Said, at_the_shelf
from tankside.web.shown.tonight import Tonight
from tankside.wording.fixer import test_words, void_words
from tankside.wording.keeping import leader_sentence, until_sentence
from tankside.wording.shelf import bottle_name, developer_left, line_words, standing, volume_binds
from tankside.workflows.developer_used import how_used
from tankside.workflows.look_at_shelf import BottleNow, bottle_now, bottles_now
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk

WHY_LEFT = {"fixer": "fixer-left", "stop bath": "stop-left"}
"""The working of what each kind may still take."""


@dataclass(frozen=True, slots=True)
class OnShelf:
    """One bottle: `answer` is what binds, `vessel` is drawn with rolls (`stock`) or without (`cylinder`).

    `first` is what to do before it is used; `tested` where its test is noted on a page of its own.
    """

    code: str
    name: str
    cap: str
    place: str
    sign: Sign
    holds: str
    answer: str
    more: str
    spoilt: bool
    gone: bool
    stock: Stock | None
    cylinder: Cylinder | None
    first: str
    doubtful: bool
    tested: bool
    fixer: bool
    counts_by_label: bool
    on_discard: tuple[Said, ...]
    why: str


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a ledger; `act` is the act at the shelf that may be taken back, empty for any other."""

    when: str
    words: str
    after: str
    act: str = ""


@dataclass(frozen=True, slots=True)
class TestLine:
    """One test of a bottle: when, what it said, and why it is void, if it is."""

    when: str
    words: str
    void: str


@dataclass(frozen=True, slots=True)
class Told:
    """One bottle with its whole ledger."""

    bottle: OnShelf
    lines: tuple[Line, ...]
    picture: Levels | None
    tests: tuple[TestLine, ...]


def on_shelf(
    desk: Desk, preferences: Preferences, zone: str, now: Instant, *, tonight: Tonight
) -> tuple[OnShelf, ...]:
    """Every bottle with something in it, in order of use, the spoilt last, each with its last good day."""
    there = ZoneInfo(zone)
    today = moment_of(now).astimezone(there).date()
    shown = (
        told if told.spoilt else replace(told, more=" ".join(filter(None, (told.more, until, slow))))
        for one in bottles_now(desk, there, today)
        if not one.empty
        for booked in (desk.ledger.of_bottle(one.bottle.code),)
        for plain in (bottle_told(one.bottle, one.batch, booked, preferences, zone=zone, tonight=tonight),)
        for told in (with_rolls_left(plain, one, desk, preferences, tonight=tonight),)
        for until in (until_sentence(one.until, today),)
        for slow in (leader_sentence(one.leader) if one.leader and one.leader.verdict != "good" else "",)
    )
    return tuple(sorted(shown, key=lambda one: (one.spoilt, SIGNS.index(one.sign))))


def with_rolls_left(
    told: OnShelf, one: BottleNow, desk: Desk, preferences: Preferences, *, tonight: Tonight
) -> OnShelf:
    """A bottle of stock with how many rolls it is enough for, where it is known how it is used."""
    use = how_used(desk, one)
    if use is None or told.spoilt or told.gone:
        return told
    ml, holds_ml = one.contents.ml, max(one.bottle.holds_ml, one.contents.ml)
    rolls = rolls_of_stock(ml, use)
    good = Counted("", "", at_most=max(holds_ml / use.stock_ml * use.rolls, rolls, 1.0), left=(rolls, rolls))
    drawn = _stock(one.bottle, ml, good, tonight.after_ml(told.code, ml))
    return replace(
        told,
        stock=drawn,
        cylinder=None,
        answer=developer_left(rolls, use),
        more=f"{told.holds} left. {volume_binds(use, preferences)} {told.more}".strip(),
        why=f"/shelf/{told.code}/why/developer-left",
    )


def bottle_told(
    bottle: Bottle,
    batch: Batch,
    booked: Sequence[Booking],
    preferences: Preferences,
    *,
    zone: str,
    tonight: Tonight,
) -> OnShelf:
    """One bottle in words and as a drawing."""
    stands = account(booked)
    ml = max(stands.ml or 0.0, 0.0)
    good = None
    if not (stands.contaminated or stands.discarded):
        good = counted(bottle, batch, booked, preferences, zone=zone, tonight=bottle.code in tonight.bottles)
    after_ml = tonight.after_ml(bottle.code, ml)
    drawn = _stock(bottle, ml, good, after_ml)
    volume = f"{volume_text(ml, preferences)} left"
    more = good.more if good else standing(batch, stands, preferences)
    if after_ml is not None:
        more += f" Broken line: {volume_text(after_ml, preferences)} after tonight."
    return OnShelf(
        bottle.code,
        bottle_name(batch),
        bottle.cap,
        bottle.place,
        sign_of_solution(batch.kind),
        volume_text(ml, preferences),
        "Contaminated" if stands.contaminated else good.answer if good else volume,
        more,
        stands.contaminated,
        stands.discarded,
        drawn,
        None if drawn else _cylinder(bottle.holds_ml, ml),
        first=good.first if good else "",
        doubtful=bool(good and good.doubtful),
        tested=batch.kind in ("fixer", "stop bath"),
        fixer=batch.kind == "fixer",
        counts_by_label=batch.kind == "stop bath" and batch.strength == "working",
        on_discard=at_the_shelf(batch.kind, "discard"),
        why=f"/shelf/{bottle.code}/why/{WHY_LEFT[batch.kind]}" if good and batch.kind in WHY_LEFT else "",
    )


def _stock(bottle: Bottle, ml: float, good: Counted | None, after_ml: float | None) -> Stock | None:
    """The vessel with its stripe of rolls, where rolls are counted."""
    if good is None or good.at_most is None:
        return None
    return stock(
        capacity_ml=bottle.holds_ml,
        holds_ml=ml,
        rolls_at_most=good.at_most,
        rolls_left=good.left,
        after_ml=after_ml,
    )


def _cylinder(holds_ml: float, ml: float) -> Cylinder:
    """A measure as large as the bottle, at its level."""
    step = long_step(holds_ml, 116.0)
    return cylinder(
        high=holds_ml, unit=step / 5, holds=ml, left=48, top=36, width_px=84, height_px=116, middle=5, long=5
    )


def ledger_told(desk: Desk, bottle: Bottle, preferences: Preferences, zone: str, *, tonight: Tonight) -> Told:
    """One bottle with every line of its ledger and the surface that they come to."""
    batch = desk.batches.by_key(bottle.batch)
    assert batch is not None
    booked = desk.ledger.of_bottle(bottle.code)
    undone = {one.line.reverses for one in booked}
    last = {one.event: one.key for one in booked}
    after, volumes = 0.0, []
    for one in booked:
        after += one.line.ml
        volumes.append(after)
    now = bottle_now(desk, bottle.code, ZoneInfo(zone), date.min)
    assert now is not None
    plain = bottle_told(bottle, batch, booked, preferences, zone=zone, tonight=tonight)
    return Told(
        with_rolls_left(plain, now, desk, preferences, tonight=tonight),
        tuple(
            _line(
                one, ml, preferences, zone, may_go_back=one.key not in undone and last[one.event] == one.key
            )
            for one, ml in zip(booked, volumes, strict=True)
        ),
        levels(volumes, capacity_ml=max([bottle.holds_ml, *volumes])) if volumes else None,
        tuple(_test(one, preferences, zone) for one in fixer_tests(booked)),
    )


def _test(one: Tested, preferences: Preferences, zone: str) -> TestLine:
    """One test of the bottle."""
    words = test_words(one.test, preferences)
    return TestLine(_when(one.at, zone), words[0].upper() + words[1:], void_words(one))


def _line(
    booking: Booking, after_ml: float, preferences: Preferences, zone: str, *, may_go_back: bool
) -> Line:
    """One line with what was left after it."""
    words = line_words(booking.line, preferences)
    of_shelf = booking.event.startswith("shelf:") and booking.line.reverses is None
    return Line(
        _when(booking.recorded, zone),
        words[0].upper() + words[1:],
        volume_text(max(after_ml, 0.0), preferences),
        booking.event if of_shelf and may_go_back else "",
    )


def _when(moment: datetime, zone: str) -> str:
    """A moment on the clock of the house."""
    return f"{moment.astimezone(ZoneInfo(zone)):%Y-%m-%d %H:%M}"
