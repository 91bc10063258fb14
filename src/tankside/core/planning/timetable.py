"""The session on a clock: columns of baths, and the lane of the hands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import groupby, pairwise
from typing import Literal

from tankside.core.methods.baths import BathKind
from tankside.core.planning.acts import AGITATING, Act, acts_of, fillings, hung_s
from tankside.core.planning.order import acts_in_order
from tankside.core.planning.plan import Plan, PlannedTankful

GET_READY_S = 600.0
"""Mixing and tempering before the first pour."""

WORTH_SAYING_S = 120.0
"""A stretch without work is worth saying from here on."""


@dataclass(frozen=True, slots=True)
class Layer:
    """One bath of one tankful in its glass: from the start of pour-in to the start of pour-out.

    `fills_s` are the starts of the fills of a wash; all seconds count from the first pour.
    """

    bath: BathKind
    start_s: float
    end_s: float
    fills_s: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Column:
    """One tankful as a glass of layers; `hung_s` is when its last roll hangs."""

    letter: str
    layers: tuple[Layer, ...]
    hung_s: float


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch without work: 'free', or 'inversions' where some tank still wants inverting."""

    kind: Literal["free", "inversions"]
    start_s: float
    end_s: float


@dataclass(frozen=True, slots=True)
class Timetable:
    """The session on one clock that is 0 at the first pour, which is `poured`.

    `begins` is when getting ready begins, `ends` when the last roll hangs. `tightest` is the act with the
    least to spare before it, `spare_s`. `apart_s` is the least between acts of two tankfuls, so that either
    may run that late; None where only one is there. `clashes`: no timetable for two hands was found.
    """

    begins: datetime
    poured: datetime
    ends: datetime
    columns: tuple[Column, ...]
    acts: tuple[Act, ...]
    stretches: tuple[Stretch, ...]
    tightest: Act | None
    spare_s: float | None
    apart_s: float | None = None
    clashes: bool = False

    def clock(self, seconds: float) -> datetime:
        """The clock time of `seconds` after the first pour."""
        return self.poured + timedelta(seconds=seconds)


def timetable(plan: Plan) -> Timetable:
    """The timetable of a plan, from the plan alone.

    Source: the plan's own times. Doubt: the ends of development move with what the tanks read.
    """
    poured = plan.starts if plan.starts is not None else plan.made + timedelta(seconds=GET_READY_S)
    columns = tuple(_column(one, plan) for one in plan.tankfuls)
    mixes = frozenset(
        one.letter for one in plan.tankfuls[1:] if any(b.liquid == f"develop-{one.letter}" for b in one.baths)
    )
    reloads = frozenset(_reloaded(plan.tankfuls))
    acts = acts_in_order(plan.tankfuls, plan.hands, mixes=mixes, reloads=reloads)
    clashes = acts is None
    if acts is None:
        acts = tuple(act for one in plan.tankfuls for act in acts_of(one, plan.hands, at_s=one.starts_s))
    ready = Act("A", "develop", "mix", -GET_READY_S, GET_READY_S - 60.0, -GET_READY_S, -GET_READY_S)
    acts = tuple(sorted((ready, *acts), key=lambda act: act.start_s))
    tightest, spare_s = _tightest(acts)
    return Timetable(
        begins=poured + timedelta(seconds=min(-GET_READY_S, acts[0].start_s)),
        poured=poured,
        ends=poured + timedelta(seconds=max(one.hung_s for one in columns)),
        columns=columns,
        acts=acts,
        stretches=tuple(_stretches(acts)),
        tightest=tightest,
        spare_s=spare_s,
        apart_s=_apart_s(acts),
        clashes=clashes,
    )


def _column(tankful: PlannedTankful, plan: Plan) -> Column:
    """One tankful's baths as layers."""
    at_s = tankful.starts_s
    layers = []
    for bath, group in groupby(fillings(tankful, plan.hands), key=lambda one: one.bath):
        filled = list(group)
        starts = tuple(at_s + one.start_s for one in filled)
        layers.append(Layer(bath.kind, starts[0], at_s + filled[-1].end_s, starts if len(starts) > 1 else ()))
    return Column(tankful.letter, tuple(layers), at_s + hung_s(tankful, plan.hands))


def _reloaded(tankfuls: Sequence[PlannedTankful]) -> Iterator[str]:
    """Letters of the tankfuls whose tank was used before in this session."""
    seen = set()
    for one in tankfuls:
        if one.tank.key in seen:
            yield one.letter
        seen.add(one.tank.key)


def _stretches(acts: Sequence[Act]) -> Iterator[Stretch]:
    """The long gaps between pieces of work that are not inversions."""
    work = [act for act in acts if act.kind not in AGITATING]
    for earlier, later in pairwise(work):
        inverted = [
            act.end_s
            for act in acts
            if act.kind in AGITATING and earlier.end_s <= act.start_s < later.start_s
        ]
        from_s = max(inverted, default=earlier.end_s)
        if inverted and from_s - earlier.end_s >= WORTH_SAYING_S:
            yield Stretch("inversions", earlier.end_s, from_s)
        if later.start_s - from_s >= WORTH_SAYING_S:
            yield Stretch("free", from_s, later.start_s)


def _tightest(acts: Sequence[Act]) -> tuple[Act | None, float | None]:
    """The change of bath with the least to spare after the other work before it."""
    found: tuple[Act | None, float | None] = (None, None)
    for earlier, later in pairwise(acts):
        spare_s = later.start_s - earlier.end_s
        if later.kind == "drain" and (found[1] is None or spare_s < found[1]):
            found = (later, spare_s)
    return found


def _apart_s(acts: Sequence[Act]) -> float | None:
    """The least between two neighbours of different tankfuls, None where there are none."""
    return min(
        (
            later.start_s - earlier.end_s
            for earlier, later in pairwise(acts)
            if earlier.tankful != later.tankful
        ),
        default=None,
    )
