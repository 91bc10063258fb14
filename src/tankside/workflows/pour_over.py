"""From bottle to bottle: decanted into full ones, poured together, topped up, filtered."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, tzinfo

from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import LEAST_ML
from tankside.core.shelf.bottles import Bottle
from tankside.core.shelf.contents import decanted, merged
from tankside.core.shelf.ledger import LedgerLine
from tankside.workflows.get_ready import Marks, empty_bottle
from tankside.workflows.look_at_shelf import BottleNow, bottle_now
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.shelf_acts import book_act

MOST_BOTTLES = 20


@dataclass(frozen=True, slots=True)
class Empties:
    """So many clean bottles of `holds_ml` each."""

    count: int
    holds_ml: float


def decant(
    desk: Desk, dice: Dice, code: str, into: Empties, now: Instant, *, zone: tzinfo
) -> tuple[Bottle, ...]:
    """Fill the empty bottles from one, each to the brim while there is enough; what is over stays.

    Dates, film a litre and contamination go along; every new bottle has a code of its own.
    """
    if not 1 <= into.count <= MOST_BOTTLES:
        raise refuse("number-out-of-range", at="count", least=1, most=MOST_BOTTLES)
    if into.holds_ml <= 0:
        raise refuse("bottle-volume-out-of-range", at="holds", volume_ml=into.holds_ml)
    with desk.together():
        source, today = _known(desk, code, now, zone), _day(now, zone)
        shares = _shares(source.contents.ml, into)
        parts = decanted(source.contents, [(ml, into.holds_ml) for ml in shares], on=today)
        bottles: list[Bottle] = []
        lines: list[LedgerLine] = []
        for part in parts:
            bottle = empty_bottle(desk, dice, source.batch, Marks(), now, holds_ml=part.holds_ml)
            bottles.append(bottle)
            lines += _moved(part.ml, part.area_units, part.counted_units, code, bottle.code)
            if part.contaminated:
                lines.append(LedgerLine(bottle.code, "contaminated", words=f"decanted from {code}"))
        book_act(desk, dice, lines, now)
    return tuple(bottles)


def pour_together(desk: Desk, dice: Dice, code: str, other: str, now: Instant, *, zone: tzinfo) -> None:
    """Pour all of `other` into `code`: film adds up, the older date counts, contamination spreads."""
    with desk.together():
        into, source = _known(desk, code, now, zone), _known(desk, other, now, zone)
        alike = (into.batch.kind, into.batch.parts) == (source.batch.kind, source.batch.parts)
        if code == other or not alike:
            raise refuse("bottles-not-alike", at="other", bottle_code=code, other_code=other)
        merged(into.contents, source.contents, into_ml=into.contents.holds_ml, on=_day(now, zone))
        poured = source.contents
        lines = _moved(poured.ml, poured.area_units, poured.counted_units, other, code)
        if poured.contaminated and not into.contents.contaminated:
            lines.append(LedgerLine(code, "contaminated", words=f"{other} went in"))
        book_act(desk, dice, lines, now)


def top_up(desk: Desk, dice: Dice, code: str, ml: float, now: Instant, *, zone: tzinfo) -> None:
    """Fill up with fresh solution of the same kind; the date of the old stays."""
    with desk.together():
        found = _known(desk, code, now, zone)
        room_ml = found.contents.holds_ml - found.contents.ml
        if not 0 < ml <= room_ml + LEAST_ML:
            raise refuse("bottle-too-small", at="ml", volume_ml=ml, holds_ml=max(0.0, room_ml))
        book_act(desk, dice, [LedgerLine(code, "topped up", ml=ml)], now)


def filter_bottle(desk: Desk, dice: Dice, code: str, now: Instant, *, zone: tzinfo, words: str = "") -> None:
    """Note that it was filtered."""
    _known(desk, code, now, zone)
    book_act(desk, dice, [LedgerLine(code, "filtered", words=words)], now)


def alike(bottles: tuple[BottleNow, ...], one: BottleNow) -> tuple[BottleNow, ...]:
    """The other bottles that may be poured into one: the same kind and parts, and room for all of it."""
    room_ml = one.contents.holds_ml - one.contents.ml
    return tuple(
        other
        for other in bottles
        if other.bottle.code != one.bottle.code
        and (other.batch.kind, other.batch.parts) == (one.batch.kind, one.batch.parts)
        and LEAST_ML < other.contents.ml <= room_ml + LEAST_ML
        and not other.account.discarded
    )


def _moved(ml: float, area: float, counted: float, source: str, into: str) -> list[LedgerLine]:
    """What goes out of one bottle and into another."""
    return [
        LedgerLine(source, "decanted", -ml, -area, counted_units=-counted, words=f"into {into}"),
        LedgerLine(into, "decanted", ml, area, counted_units=counted, words=f"from {source}"),
    ]


def _shares(ml: float, into: Empties) -> list[float]:
    """Each bottle full in turn, the last with what is left."""
    shares: list[float] = []
    for _ in range(into.count):
        share = min(into.holds_ml, ml - sum(shares))
        if share <= LEAST_ML:
            raise refuse("more-bottles-than-needed", at="count", count=into.count, enough=len(shares))
        shares.append(share)
    return shares


def _known(desk: Desk, code: str, now: Instant, zone: tzinfo) -> BottleNow:
    """A bottle that stands there with something in it."""
    found = bottle_now(desk, code, zone, _day(now, zone))
    if found is None:
        raise refuse("no-such-bottle", bottle=code, ways_on=("look-at-the-shelf",))
    if found.contents.ml <= LEAST_ML or found.account.discarded:
        raise refuse("bottle-empty", bottle_code=code, ways_on=("look-at-the-shelf",))
    return found


def _day(now: Instant, zone: tzinfo) -> date:
    """The day at the place."""
    return moment_of(now).astimezone(zone).date()
