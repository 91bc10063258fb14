"""What the hands do, and when: the acts of one tankful, in seconds after its developer is poured."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from tankside.core.agitation.hands import hand_movements
from tankside.core.methods.baths import BathKind, HandWork
from tankside.core.methods.default_method import DRY_REELS_S, HANG_S_PER_ROLL, LOAD_S_PER_ROLL
from tankside.core.planning.plan import PlannedBath, PlannedTankful

ActKind = Literal["mix", "pour", "invert", "rotate", "measure", "drain", "hang", "dry reels", "load"]

AGITATING: frozenset[ActKind] = frozenset({"invert", "rotate"})
"""Acts that are marks beside the others, not work of their own."""

MEASURE_AHEAD_S = 1200.0
"""A bath is measured out at most this long before it is poured, if need be before the first pour."""

LONG_BATH_S = 120.0
"""From here on a bath leaves time to measure out the next one."""

MIX_S, MIX_AHEAD_S = 180.0, 600.0
"""Mixing and tempering the developer of a later tankful, and how early it may be done."""


@dataclass(frozen=True, slots=True)
class Act:
    """`start_s` to `start_s + for_s` on one clock; it may begin anywhere from `earliest_s` to `latest_s`.

    `fill` counts the fills of a wash from 1, and is 0 elsewhere.
    """

    tankful: str
    bath: BathKind | None
    kind: ActKind
    start_s: float
    for_s: float
    earliest_s: float
    latest_s: float
    fill: int = 0

    @property
    def end_s(self) -> float:
        """When the hands are free again."""
        return self.start_s + self.for_s

    @property
    def soft(self) -> bool:
        """Whether it may slip at all."""
        return self.latest_s > self.earliest_s


@dataclass(frozen=True, slots=True)
class Filling:
    """One filling of the tank: from the start of pour-in to the start of pour-out, in seconds."""

    bath: PlannedBath
    fill: int
    start_s: float
    end_s: float


def fillings(tankful: PlannedTankful, hands: HandWork) -> tuple[Filling, ...]:
    """The fillings of a tankful in order, on a clock that is 0 when its developer is poured.

    Each bath takes its aim; the next is poured when the last has drained. Source: times of the method.
    Doubt: that of the end of development.
    """
    out: list[Filling] = []
    now_s = 0.0
    for bath in tankful.baths:
        for fill in range(1, bath.fills + 1):
            out.append(Filling(bath, fill, now_s, now_s + bath.times.aim_s))
            now_s += bath.times.aim_s + hands.drain_s
    poured = next((one.start_s for one in out if one.bath.kind == "develop"), 0.0)
    return tuple(Filling(one.bath, one.fill, one.start_s - poured, one.end_s - poured) for one in out)


def hung_s(tankful: PlannedTankful, hands: HandWork) -> float:
    """Seconds from the pour of its developer to the moment its last roll hangs."""
    drained = fillings(tankful, hands)[-1].end_s + hands.drain_s
    return drained + HANG_S_PER_ROLL * len(tankful.rolls)


def acts_of(
    tankful: PlannedTankful, hands: HandWork, *, at_s: float = 0.0, mixes: bool = False, reloads: bool = False
) -> tuple[Act, ...]:
    """All acts of one tankful whose developer is poured at `at_s`, each at its own best moment.

    `mixes` adds the mixing of its own developer, `reloads` the drying and loading of reels used before.
    Soft acts stand where they would be without other tankfuls; `placing` moves them.
    """
    filled = fillings(tankful, hands)
    acts = [act for one in filled for act in _in_filling(tankful.letter, one, hands, at_s)]
    acts += _measures(tankful.letter, filled, hands, at_s)
    acts.append(_fixed(tankful.letter, None, "hang", at_s + filled[-1].end_s + hands.drain_s,
                       HANG_S_PER_ROLL * len(tankful.rolls)))  # fmt: skip
    if mixes:
        acts.append(_mix(tankful.letter, at_s, hands))
    if reloads:
        load_s = LOAD_S_PER_ROLL * len(tankful.rolls)
        acts.append(_fixed(tankful.letter, None, "load", at_s - load_s - MIX_S - 60, load_s))
        acts.append(_fixed(tankful.letter, None, "dry reels", acts[-1].start_s - DRY_REELS_S, DRY_REELS_S))
    return tuple(sorted(acts, key=lambda act: act.start_s))


def reload_s(tankful: PlannedTankful) -> float:
    """Seconds between hanging one tankful and pouring the next from the same tank."""
    return DRY_REELS_S + LOAD_S_PER_ROLL * len(tankful.rolls) + MIX_S + 60.0


def _fixed(
    letter: str, bath: BathKind | None, kind: ActKind, start_s: float, for_s: float, *, fill: int = 0
) -> Act:
    """An act that may not slip."""
    return Act(letter, bath, kind, start_s, for_s, start_s, start_s, fill)


def _in_filling(letter: str, one: Filling, hands: HandWork, at_s: float) -> Iterator[Act]:
    """Pouring, agitating and draining of one filling; beyond a bath's least time nothing need be moved."""
    kind, start_s, end_s = one.bath.kind, at_s + one.start_s, at_s + one.end_s
    fill = one.fill if one.bath.fills > 1 else 0
    yield _fixed(letter, kind, "pour", start_s, hands.pour_s, fill=fill)
    pattern = one.bath.agitation
    moved: ActKind = "rotate" if pattern is not None and pattern.movement == "rotation" else "invert"
    lasts_s, needed_s = one.end_s - one.start_s, one.bath.times.least_s
    for each in hand_movements(pattern, pour_s=hands.pour_s, end_s=lasts_s, needed_s=needed_s):
        yield Act(
            letter, kind, moved, start_s + each.start_s, each.lasts_s,
            start_s + each.earliest_s, start_s + each.latest_s,
        )  # fmt: skip
    yield _fixed(letter, kind, "drain", end_s, hands.drain_s, fill=fill)


def _measures(letter: str, filled: tuple[Filling, ...], hands: HandWork, at_s: float) -> Iterator[Act]:
    """Measuring out each later bath from a bottle, best near the end of the last long bath before."""
    long_end_s = 0.0
    for earlier, one in pairwise(filled):
        if earlier.end_s - earlier.start_s >= LONG_BATH_S:
            long_end_s = earlier.end_s
        if one.bath.liquid is None or one.bath.kind == "develop":
            continue
        latest_s = at_s + one.start_s - hands.drain_s - hands.measure_s
        best_s = at_s + long_end_s - hands.measure_s - hands.drain_s
        kind = one.bath.kind
        yield Act(letter, kind, "measure", best_s, hands.measure_s, best_s - MEASURE_AHEAD_S, latest_s)


def _mix(letter: str, at_s: float, hands: HandWork) -> Act:
    """Mixing and tempering a developer of its own, before its pour."""
    latest_s = at_s - MIX_S - hands.between_tankfuls_s
    return Act(letter, "develop", "mix", latest_s, MIX_S, at_s - MIX_AHEAD_S, latest_s)
