"""Ways to make a development count as it is meant: temper first, correct second."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from tankside.core.development.equivalent_time import start_that_makes_it_right
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.known_time import KnownTime
from tankside.core.planning.development import Setting, combined, mix_to, part, time_for, told
from tankside.core.planning.one_tankful import timed
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.wish import Wish
from tankside.core.rates import RateLaw
from tankside.core.refusals import Refused, refuse
from tankside.core.thermal.tank import BATHED_TAU_MIN

BATHED_TAU_SHARES = (0.5, 2.0)
"""How far the time constant in a water bath may be off: how still the water is, and how high it stands."""

WORTH_TEMPERING_S = 10.0


@dataclass(frozen=True, slots=True)
class WaysToTemper:
    """What would make `time_s` count as printed for a developer that reads `reads_c` in the jug.

    `jug` is what the jug must read instead, `bath` the water that the tank stands in from the pour on, `time`
    how long it takes as it is; each in C or s with its interval, and None where it cannot be.
    """

    time_s: float
    reads_c: float
    jug: Estimate | None
    bath: Estimate | None
    time: Estimate | None

    @property
    def cannot(self) -> bool:
        """Whether nothing makes it count."""
        return self.jug is None and self.bath is None and self.time is None


def ways_to_temper(
    known: KnownTime, setting: Setting, reads_c: float, *, thermometer_step_c: float
) -> WaysToTemper:
    """The three ways for a developer that reads `reads_c` (C) in the jug.

    Arguments: `known` by a rate; `thermometer_step_c` its finest mark (K).
    Own model: docs/science/tempering. Doubt: the interval of each.
    """
    time_s = known.rate.time_s.value

    def as_it_is() -> Estimate:
        return told(time_for(known, setting, reads_c, thermometer_step_c=thermometer_step_c).estimate)

    return WaysToTemper(
        time_s,
        reads_c,
        jug=_if_it_can(lambda: _jug(known, setting, time_s)),
        bath=_if_it_can(lambda: water_bath(known, setting, reads_c)),
        time=_if_it_can(as_it_is),
    )


def ways_of(tankful: PlannedTankful, wish: Wish) -> WaysToTemper | None:
    """The ways for a planned tankful whose jug was read; None where nothing need or can be tempered."""
    development = tankful.development
    read = wish.reads_c is not None and tankful.baths[0].liquid == "develop-A"
    if (
        not read
        or development.time_rule != "rate"
        or development.jug_c is None
        or wish.own_time_s is not None
    ):
        return None
    if (
        development.end_s is None
        or abs(development.end_s.value - development.time_s.value) < WORTH_TEMPERING_S
    ):
        return None
    found = timed(tankful, wish)
    return ways_to_temper(
        found.known, found.setting, development.jug_c, thermometer_step_c=wish.thermometer.step_c
    )


def water_bath(known: KnownTime, setting: Setting, reads_c: float) -> Estimate:
    """How warm the water must be that the tank stands in, so that the printed time counts as itself, in C.

    Arguments: `reads_c` (C) in the jug at the pour. Result: C, 5-95 %; refused where no water does it, or
    the tank would leave what times are known for.
    Own model: docs/science/tempering: the drift of a bathed tank. Doubt: its time constant (half to double),
    and hardly any from the factor per 10 K.
    """
    rate, start_c = known.rate, setting.start_c(reads_c)
    bathed_min = BATHED_TAU_MIN[setting.material]

    def at(law: RateLaw = rate.believed.law, tau_min: float = bathed_min) -> float:
        return start_that_makes_it_right(
            lambda bath_c: replace(setting, room_c=bath_c, tau_min=tau_min).path(start_c, rate.time_s.value),
            time_s=rate.time_s.value,
            needed_s=rate.time_s.value,
            law=law,
        )

    bath_c = at()
    last_c = float(
        replace(setting, room_c=bath_c, tau_min=bathed_min).path(start_c, rate.time_s.value)[1][-1]
    )
    if not (rate.believed.knows(start_c) and rate.believed.knows(last_c)):
        raise refuse(
            "no-water-bath-does-it", ways_on=("another-time",),
            bath_c=bath_c, least_c=rate.least_c, most_c=rate.most_c,
        )  # fmt: skip
    slow, fast = (at(tau_min=share * bathed_min) for share in reversed(BATHED_TAU_SHARES))
    parts = (
        part("drift", bath_c, slow, fast),
        part("factor", bath_c, *(at(law) for law in rate.believed.ends)),
    )
    return combined(bath_c, parts, unit="C", source=known.source).estimate


def _jug(known: KnownTime, setting: Setting, time_s: float) -> Estimate:
    """What the jug must read, if the tank then starts where times are known."""
    jug = mix_to(known, setting, time_s).estimate
    start_c = setting.start_c(jug.value)
    if not known.rate.believed.knows(start_c):
        raise refuse("no-start-makes-it-right", ways_on=("another-time",), time_s=time_s, needed_s=time_s,
                     least_c=known.rate.least_c, most_c=known.rate.most_c)  # fmt: skip
    return jug


def _if_it_can(way: Callable[[], Estimate]) -> Estimate | None:
    """A way, or None where it is refused."""
    try:
        return way()
    except Refused:
        return None
