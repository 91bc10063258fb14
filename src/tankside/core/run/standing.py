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
class Standing:
    """`counted` are the passes that count; `next` is the bath to pour next, None when none is left."""

    counted: tuple[Pass, ...]
    next: PlannedBath | None
    misorder: Misorder | None
    image_gone: bool

    def counts(self, bath: str) -> bool:
        """Whether that bath has been had where it belongs."""
        return any(one.bath == bath for one in self.counted)


def standing(state: RunState, tankful: TankfulState) -> Standing:
    """Walk the passes of a tankful along its plan."""
    order = tankful.plan.baths
    skipped = {one.bath for one in tankful.skipped}
    at, counted, misorder, gone = 0, [], None, False
    for one in tankful.passes:
        here = _place(order, really(state, tankful, one))
        if here is None:
            continue
        owed = next((bath for bath in order[at:here] if bath.kind in NEEDED and bath.id not in skipped), None)
        if owed is None:
            at, misorder = here + 1, None
            counted.append(one)
            continue
        kind = _kind(order[here].kind, owed.kind)
        misorder = Misorder(kind, order[here].id, owed.id, one.poured.at_us, one.plan_no < state.plan_no)
        at = order.index(owed)
        if kind == "image-gone":
            gone, at = True, here + 1
            counted.append(one)
    coming = next((bath for bath in order[at:] if bath.id not in skipped), None)
    return Standing(tuple(counted), coming, misorder, gone)


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


def _place(order: tuple[PlannedBath, ...], bath: str) -> int | None:
    return next((at for at, one in enumerate(order) if one.id == bath), None)


def _kind(poured: BathKind, owed: BathKind) -> OutOfOrder:
    if owed == "develop":
        return "image-gone" if poured == "fix" else "before-developer"
    return "unfixed" if owed == "fix" else "unwashed"
