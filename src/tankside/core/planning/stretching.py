"""Longer stops, fixes and soaks, within their most, so that a change of bath misses the other tank's work."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from tankside.core.agitation.hands import hands_free_s
from tankside.core.methods.baths import HandWork, Times
from tankside.core.methods.default_method import HANG_S_PER_ROLL
from tankside.core.planning.acts import Act
from tankside.core.planning.plan import PlannedBath, PlannedTankful

STEP_S = 15.0
LONGEST_EXTRA_S = 120.0
"""A bath without a most time is stretched by at most this much for each filling."""

VARIED = ("presoak", "develop", "stop")
"""Up to here every way on is tried; from the fix on the first that misses the firm acts is taken."""

Busy = Sequence[tuple[float, float]]


def with_aim(bath: PlannedBath, aim_s: float) -> PlannedBath:
    """The same bath, meant to last `aim_s`."""
    times = bath.times
    return replace(bath, times=Times(times.least_s, aim_s, None if times.most_s is None else times.most_s))


def stretched(
    tankful: PlannedTankful, hands: HandWork, *, at_s: float, firm: Sequence[Act]
) -> Iterator[PlannedTankful]:
    """Variants of a tankful poured at `at_s` whose changes of bath miss all `firm` acts, shortest first.

    The developer keeps its time. Soft acts are not looked at here.
    """
    busy = [(one.start_s - hands.between_tankfuls_s, one.end_s + hands.between_tankfuls_s) for one in firm]
    for baths in _from(tankful, hands, at_s, busy, 0):
        yield replace(tankful, baths=baths)


def _from(
    tankful: PlannedTankful, hands: HandWork, now_s: float, busy: Busy, number: int
) -> Iterator[tuple[PlannedBath, ...]]:
    """The ways on from bath `number`, which is poured at `now_s` after the one before has drained."""
    if number == len(tankful.baths):
        hang_s = HANG_S_PER_ROLL * len(tankful.rolls)
        if _fits(now_s - hands.drain_s, now_s + hang_s, busy):
            yield ()
        return
    bath = tankful.baths[number]
    drained_s = hands.drain_s if number else 0.0
    free_s = hands_free_s(bath.agitation, pour_s=hands.pour_s)
    if not _fits(now_s - drained_s, now_s + free_s, busy):
        return
    for aim_s in aims(bath):
        turn_s = aim_s + hands.drain_s
        refills = [now_s + turn_s * fill for fill in range(1, bath.fills)]
        if not all(_fits(one - hands.drain_s, one + hands.pour_s, busy) for one in refills):
            continue
        for rest in _from(tankful, hands, now_s + turn_s * bath.fills, busy, number + 1):
            yield (with_aim(bath, aim_s), *rest)
            if bath.kind not in VARIED:
                return


def aims(bath: PlannedBath) -> Iterator[float]:
    """What a bath may be meant to last, from its own aim upward."""
    most_s = bath.times.most_s if bath.times.most_s is not None else bath.times.aim_s + LONGEST_EXTRA_S
    aim_s = bath.times.aim_s
    while aim_s <= most_s:
        yield aim_s
        aim_s += STEP_S


def _fits(start_s: float, end_s: float, busy: Busy) -> bool:
    """Whether one unbroken piece of hand work misses everything that is busy."""
    return all(end_s <= taken_s or free_s <= start_s for taken_s, free_s in busy)
