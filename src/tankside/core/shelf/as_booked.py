"""What every bottle holds and since when it stands part full, by the whole ledger: nothing is kept twice."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, tzinfo
from itertools import groupby

from tankside.core.shelf.accounts import LEAST_ML, account
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.contents import Contents, since_part_full


@dataclass(frozen=True, slots=True)
class Vessel:
    """A bottle before anything is booked on it: what it holds when full (mL), and when its batch was made."""

    code: str
    holds_ml: float
    made: date


@dataclass(frozen=True, slots=True)
class _Moved:
    """What one act came to in one bottle after everything that was put right since, on the day of the act."""

    day: date
    act: str
    bottle: str
    decanted: bool
    ml: float
    area_units: float
    counted_units: float


def contents_of(
    vessels: Iterable[Vessel], booked: Sequence[Booking], *, zone: tzinfo
) -> Mapping[str, Contents]:
    """The contents of each bottle by its code, from all that was ever booked, in order.

    Arguments: `zone` of the place, whose days count. Result: volume in mL, area in units of 80 in2, dates.
    A bottle is judged full or not as it stood at the end of a day, so that a bath which went out and came
    back the same evening did no harm. What was poured over brings its dates with it.
    Own model: docs/science/keeping. Doubt: the mark of each measure.
    """
    lines: dict[str, list[Booking]] = {}
    for one in booked:
        lines.setdefault(one.line.bottle, []).append(one)
    held = {
        one.code: Contents(
            0.0, one.holds_ml, 0.0, one.made, None, account(lines.get(one.code, [])).contaminated
        )
        for one in vessels
    }
    for day, moves in groupby(_moved(booked, zone), key=lambda one: one.day):
        _live(held, day, [one for one in moves if one.bottle in held])
    return held


def _live(held: dict[str, Contents], day: date, moves: Sequence[_Moved]) -> None:
    """One day: every pour, then each bottle that was touched as it stands in the evening."""
    for one in moves:
        stands = held[one.bottle]
        stands = replace(
            stands,
            ml=max(0.0, stands.ml + one.ml),
            area_units=max(0.0, stands.area_units + one.area_units),
            counted_units=max(0.0, stands.counted_units + one.counted_units),
        )
        for source in _sources(one, moves, held):
            stands = replace(
                stands,
                made=min(stands.made, source.made),
                part_full_since=_earlier(stands.part_full_since, source.part_full_since),
            )
        held[one.bottle] = stands
    for code in {one.bottle for one in moves}:
        stands = held[code]
        held[code] = replace(
            stands, part_full_since=since_part_full(stands, stands.ml, stands.holds_ml, on=day)
        )


def _sources(into: _Moved, moves: Sequence[_Moved], held: Mapping[str, Contents]) -> Iterator[Contents]:
    """The bottles that this one was filled from in the same act."""
    if into.decanted and into.ml > 0:
        for one in moves:
            if one.act == into.act and one.decanted and one.ml < 0:
                yield held[one.bottle]


def _moved(booked: Sequence[Booking], zone: tzinfo) -> list[_Moved]:
    """Every act that still moves something, in order of the day it was first booked."""
    acts: dict[tuple[str, str, str], list[Booking]] = {}
    for one in booked:
        acts.setdefault((one.line.because, one.line.bottle, one.line.kind), []).append(one)
    found = [
        _Moved(
            lines[0].recorded.astimezone(zone).date(),
            act,
            bottle,
            kind == "decanted",
            sum(one.line.ml for one in lines),
            sum(one.line.area_units for one in lines),
            sum(one.line.counted_units for one in lines),
        )
        for (act, bottle, kind), lines in acts.items()
    ]
    moving = (one for one in found if abs(one.ml) > LEAST_ML or abs(one.area_units) > LEAST_ML)
    return sorted(moving, key=lambda one: one.day)


def _earlier(one: date | None, other: date | None) -> date | None:
    """The earlier of two days, either of which may be unknown."""
    return min((day for day in (one, other) if day is not None), default=None)
