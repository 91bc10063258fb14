"""Where a tankful stands in its plan: which baths count, what comes next, and what came out of order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.methods.baths import BathKind
from tankside.core.planning.plan import PlannedBath
from tankside.core.run.charges import planned_bottle
from tankside.core.run.state import Pass, RunState, TankfulState

NEEDED: tuple[BathKind, ...] = ("develop", "fix", "wash")
"""Baths that are still owed when a later one was poured first; the others are let go."""

OutOfOrder = Literal["before-developer", "image-gone", "unfixed", "unwashed"]


@dataclass(frozen=True, slots=True)
class Misorder:
    """A bath poured before one that was owed; `settled` once the plan was changed after it."""

    kind: OutOfOrder
    bath: str
    owed: str
    at_us: int
    settled: bool


@dataclass(frozen=True, slots=True)
class Counted:
    """A pass that counts, and the bath that it really was."""

    bath: str
    there: Pass


@dataclass(frozen=True, slots=True)
class Standing:
    """`counted` are the passes that count; `coming` is what is left to pour, in order.

    `stray` is a bath in the tank that does not count, or was noted under another name: it has to come out.
    """

    counted: tuple[Counted, ...]
    coming: tuple[PlannedBath, ...]
    stray: Pass | None
    misorder: Misorder | None
    image_gone: bool

    @property
    def next(self) -> PlannedBath | None:
        """The bath to pour next, None when none is left."""
        return self.coming[0] if self.coming else None

    def pass_of(self, bath: str) -> Pass | None:
        """The pass by which that bath was had where it belongs, None if it was not."""
        return next((one.there for one in self.counted if one.bath == bath), None)

    def counts(self, there: Pass) -> bool:
        """Whether that pass counts."""
        return any(one.there is there for one in self.counted)


def standing(state: RunState, tankful: TankfulState) -> Standing:
    """Walk the passes of a tankful along its plan.

    A bath poured again is had again, and so is all that follows it; one poured before a needed bath does not
    count, save that fixer before developer ends the matter.
    """
    order = tankful.plan.baths
    places = {bath.id: at for at, bath in enumerate(order)}
    skipped = {one.bath for one in tankful.skipped}
    at, counted, misorder, gone = 0, list[Counted](), None, False
    for there in tankful.passes:
        bath = really(state, tankful, there)
        if bath not in places:
            continue
        here = places[bath]
        owed = next((one for one in order[at:here] if one.kind in NEEDED and one.id not in skipped), None)
        if owed is not None:
            kind = _kind(order[here].kind, owed.kind)
            misorder = Misorder(kind, bath, owed.id, there.poured.at_us, there.plan_no < state.plan_no)
            gone = gone or kind == "image-gone"
            if kind != "image-gone":
                at = places[owed.id]
                continue
        else:
            misorder = None
        at = here + 1
        counted = [*(one for one in counted if places[one.bath] < here), Counted(bath, there)]
    coming = tuple(one for one in order[at:] if one.id not in skipped)
    return Standing(tuple(counted), coming, _stray(tankful, counted), misorder, gone)


def _stray(tankful: TankfulState, counted: list[Counted]) -> Pass | None:
    there = tankful.in_tank
    fits = any(one.there is there and there is not None and one.bath == there.bath for one in counted)
    return None if fits else there


def really(state: RunState, tankful: TankfulState, one: Pass) -> str:
    """The bath that a pass was, by the bottle that was poured: a fixer poured as developer is the fix."""
    if one.bottle is None:
        return one.bath
    wanted = bottle_for(state, tankful, one.bath)
    if one.bottle == wanted:
        return one.bath
    for bath in tankful.plan.baths:
        if bath.liquid is not None and bottle_for(state, tankful, bath.id) == one.bottle:
            return bath.id
    return _by_kind(state, tankful, one)


def bottle_for(state: RunState, tankful: TankfulState, bath: str) -> str | None:
    """The bottle that a bath is to be measured from, None for water and for a jug of no bottle."""
    key = tankful.bath(bath).liquid
    liquid = next((one for one in state.plan.liquids if one.key == key), None)
    return planned_bottle(state, liquid)


def _by_kind(state: RunState, tankful: TankfulState, one: Pass) -> str:
    bottle = state.bench_bottle(one.bottle or "")
    if bottle is None:
        return one.bath
    kinds = {liquid.key: liquid.kind for liquid in state.plan.liquids}
    if kinds.get(tankful.bath(one.bath).liquid or "") == bottle.kind:
        return one.bath
    alike = [bath.id for bath in tankful.plan.baths if kinds.get(bath.liquid or "") == bottle.kind]
    return alike[0] if alike else one.bath


def _kind(poured: BathKind, owed: BathKind) -> OutOfOrder:
    if owed == "develop":
        return "image-gone" if poured == "fix" else "before-developer"
    return "unfixed" if owed == "fix" else "unwashed"
