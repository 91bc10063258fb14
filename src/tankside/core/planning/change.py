"""What differs between two plans, in values."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.core.planning.timetable import timetable

What = Literal[
    "starts", "ends", "rolls", "tankful-added", "tankful-gone", "aim", "bath-added", "bath-gone", "mix-to"
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Difference:
    """One thing that differs: of which tankful and bath (or liquid), from what to what, in `unit`."""

    what: What
    before: float | None
    after: float | None
    unit: str = ""
    tankful: str | None = None
    about: str = ""


def differences(before: Plan, after: Plan) -> tuple[Difference, ...]:
    """What differs between two plans: starts, end, rolls, tankfuls, baths, aims and temperatures to mix to.

    Times in s (starts after the first pour), the end as s after the earlier plan's end. Doubt: none.
    """
    return tuple(_all(before, after))


def _all(before: Plan, after: Plan) -> Iterator[Difference]:
    """Everything that differs, in the order a person reads it."""
    old = {one.letter: one for one in before.tankfuls}
    new = {one.letter: one for one in after.tankfuls}
    for letter in sorted(old.keys() | new.keys()):
        if letter not in new:
            yield Difference("tankful-gone", float(len(old[letter].rolls)), None, "rolls", letter)
        elif letter not in old:
            yield Difference("tankful-added", None, float(len(new[letter].rolls)), "rolls", letter)
        else:
            yield from _tankful(old[letter], new[letter])
    warm = {one.key: one.mix_to_c.value if one.mix_to_c else None for one in before.liquids}
    for liquid in after.liquids:
        now_c = liquid.mix_to_c.value if liquid.mix_to_c else None
        if liquid.key in warm and warm[liquid.key] != now_c:
            yield Difference("mix-to", warm[liquid.key], now_c, "C", about=liquid.key)
    later_s = (timetable(after).ends - timetable(before).ends).total_seconds()
    if later_s:
        yield Difference("ends", 0.0, later_s, "s")


def _tankful(old: PlannedTankful, new: PlannedTankful) -> Iterator[Difference]:
    """What differs in one tankful."""
    if old.starts_s != new.starts_s:
        yield Difference("starts", old.starts_s, new.starts_s, "s", new.letter)
    if [one.key for one in old.rolls] != [one.key for one in new.rolls]:
        yield Difference("rolls", float(len(old.rolls)), float(len(new.rolls)), "rolls", new.letter)
    aims = {bath.id: bath.times.aim_s for bath in old.baths}
    for bath in new.baths:
        if bath.id not in aims:
            yield Difference("bath-added", None, bath.times.aim_s, "s", new.letter, bath.id)
        elif aims[bath.id] != bath.times.aim_s:
            yield Difference("aim", aims[bath.id], bath.times.aim_s, "s", new.letter, bath.id)
    for gone in aims.keys() - {bath.id for bath in new.baths}:
        yield Difference("bath-gone", aims[gone], None, "s", new.letter, gone)
