"""What the shelf pages show: each bottle as its vessel, and one bottle's ledger."""

from __future__ import annotations

from dataclasses import dataclass, replace
from zoneinfo import ZoneInfo

from tankside.core.permanence.capacity import ROLLS_PER_L_NAMED, ROLLS_PER_L_PLANNED, Fixed, capacity_left
from tankside.core.quantities.display import volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import Account, account
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.web.drawing.kinds import Sign, sign_of_solution
from tankside.web.drawing.levels import Levels, levels
from tankside.web.drawing.stock import Stock, long_step, stock
from tankside.web.drawing.vessel import Cylinder, cylinder
from tankside.wording.keeping import leader_sentence, until_sentence
from tankside.wording.shelf import bottle_name, capacity_sentence, line_words, rolls_left, standing
from tankside.workflows.look_at_shelf import bottles_now
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk

SMALLEST_COUNTED_ML = 50.0


@dataclass(frozen=True, slots=True)
class OnShelf:
    """One bottle: `answer` is what binds, `vessel` is drawn with rolls (`stock`) or without (`cylinder`)."""

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


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a ledger; `act` is the act at the shelf that may be taken back, empty for any other."""

    when: str
    words: str
    after: str
    act: str = ""


@dataclass(frozen=True, slots=True)
class Told:
    """One bottle with its whole ledger."""

    bottle: OnShelf
    lines: tuple[Line, ...]
    picture: Levels | None


def on_shelf(desk: Desk, preferences: Preferences, zone: str, now: Instant) -> tuple[OnShelf, ...]:
    """Every bottle with something in it, those that are spoilt last; each says until when it is good."""
    there = ZoneInfo(zone)
    today = moment_of(now).astimezone(there).date()
    shown = (
        told if told.spoilt else replace(told, more=" ".join(filter(None, (told.more, until, slow))))
        for one in bottles_now(desk, there, today)
        if not one.empty
        for told in (bottle_told(one.bottle, one.batch, one.account, preferences),)
        for until in (until_sentence(one.until, today),)
        for slow in (leader_sentence(one.leader) if one.leader and one.leader.verdict != "good" else "",)
    )
    return tuple(sorted(shown, key=lambda one: one.spoilt))


def bottle_told(bottle: Bottle, batch: Batch, stands: Account, preferences: Preferences) -> OnShelf:
    """One bottle in words and as a drawing."""
    ml = max(stands.ml or 0.0, 0.0)
    counted = (
        batch.kind == "fixer"
        and batch.strength == "working"
        and not stands.contaminated
        and not stands.discarded
        and bottle.holds_ml >= SMALLEST_COUNTED_ML
    )
    answer, more = f"{volume_text(ml, preferences)} left", standing(batch, stands, preferences)
    drawn: Stock | None = None
    if counted:
        left = capacity_left([Fixed(max(stands.counted_units, 0.0))], working_ml=bottle.holds_ml)
        litres = bottle.holds_ml / 1000
        named = ROLLS_PER_L_NAMED * litres
        answer = rolls_left(left)
        more = capacity_sentence(left, planned=ROLLS_PER_L_PLANNED * litres, named=named)
        low, high = (min(max(0.0, one), named) for one in (left.left_planned, left.left_named))
        drawn = stock(capacity_ml=bottle.holds_ml, holds_ml=ml, rolls_at_most=named, rolls_left=(low, high))
    return OnShelf(
        bottle.code,
        bottle_name(batch),
        bottle.cap,
        bottle.place,
        sign_of_solution(batch.kind),
        volume_text(ml, preferences),
        "Contaminated" if stands.contaminated else answer,
        more,
        stands.contaminated,
        stands.discarded,
        drawn,
        None if drawn else _cylinder(bottle.holds_ml, ml),
    )


def _cylinder(holds_ml: float, ml: float) -> Cylinder:
    """A measure as large as the bottle, at its level."""
    step = long_step(holds_ml, 116.0)
    return cylinder(
        high=holds_ml, unit=step / 5, holds=ml, left=48, top=36, width_px=84, height_px=116, middle=5, long=5
    )


def ledger_told(desk: Desk, bottle: Bottle, preferences: Preferences, zone: str) -> Told:
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
    return Told(
        bottle_told(bottle, batch, account(booked), preferences),
        tuple(
            _line(
                one, ml, preferences, zone, may_go_back=one.key not in undone and last[one.event] == one.key
            )
            for one, ml in zip(booked, volumes, strict=True)
        ),
        levels(volumes, capacity_ml=max([bottle.holds_ml, *volumes])) if volumes else None,
    )


def _line(
    booking: Booking, after_ml: float, preferences: Preferences, zone: str, *, may_go_back: bool
) -> Line:
    """One line with what was left after it."""
    at = booking.recorded.astimezone(ZoneInfo(zone))
    words = line_words(booking.line, preferences)
    of_shelf = booking.event.startswith("shelf:") and booking.line.reverses is None
    return Line(
        f"{at:%Y-%m-%d %H:%M}",
        words[0].upper() + words[1:],
        volume_text(max(after_ml, 0.0), preferences),
        booking.event if of_shelf and may_go_back else "",
    )
