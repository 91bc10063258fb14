"""Push and pull: what development can give back of an exposure, and what it cannot."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

import numpy as np

from tankside.core.development.contrast import C_INF, contrast_at, rate_constant
from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import Refused, refuse

STOP = float(np.log10(2))
MIDTONE_LOG_H = 1.0
"""Log exposure of a metered mid-tone above the speed point: 10 times it (ISO 2720 constants, from memory)."""

SHADOW_STOPS_PER_DOUBLING = Estimate(0.67, 0.50, 0.85, "stops", "common practice")
"""Shadows gain 1/3 to 2/3 stop for 40 to 100 % more time (common practice, no source)."""

LEAST_TIMES, MOST_TIMES = 0.2, 4.0
"""Times looked at, as multiples of the usual one; longer ones mostly make fog."""

_SEARCHED = 6001


@dataclass(frozen=True, slots=True)
class Pushed:
    """Time that brings the mid-tones back, the contrast it ends at, and how far the shadows stay behind.

    Where `sure` is false the film may not reach that contrast at all: then the bands hold only what can.
    """

    stops: float
    time: Estimate
    contrast: Estimate
    shadows_short_stops: Estimate
    sure: bool


def push(
    stops: float,
    *,
    time_s: float,
    contrast: float = 0.56,
    c_inf: Estimate = C_INF,
    induction_s: float = 30.0,
) -> Pushed:
    """Development of a roll exposed `stops` less than its index asks (below 0: more, a pull).

    Arguments: `stops` -2 to 3; `time_s` at the reference temperature makes `contrast` (below `c_inf.low`).
    Result: s, contrast, stops. Mid-tones return, shadows stay behind; refused where `c_inf` cannot reach it.
    Own model: docs/science/kinetics (mid-tones 1.0 above the speed point keep their density).
    Doubt: bands of `c_inf` and of the shadows' gain, 0.67 (0.50-0.85) stop for a doubled time.

    >>> one = push(1, time_s=570)
    >>> f"{one.contrast.value:.2f} in {one.time.value / 570:.1f} x the time"
    '0.69 in 1.4 x the time'
    """
    if not -2 <= stops <= 3:
        raise refuse("push-out-of-range", at="stops", stops=stops)
    film = partial(_developed, stops, time_s=time_s, contrast=contrast, induction_s=induction_s)
    told = film(c_inf=c_inf.value, gain=SHADOW_STOPS_PER_DOUBLING.value)
    if told is None:
        raise _out_of_reach(stops, c_inf.value)
    ends = [
        film(c_inf=top, gain=gain)
        for top in (c_inf.low, c_inf.high)
        for gain in (SHADOW_STOPS_PER_DOUBLING.low, SHADOW_STOPS_PER_DOUBLING.high)
    ]
    reached = np.array([told, *(one for one in ends if one is not None)])
    time, made, short = (
        Estimate(float(told[i]), float(reached[:, i].min()), float(reached[:, i].max()), unit, "ours")
        for i, unit in enumerate(("s", "contrast index", "stops"))
    )
    return Pushed(stops, time, made, short, sure=None not in ends)


def _developed(
    stops: float, *, time_s: float, contrast: float, c_inf: float, induction_s: float, gain: float
) -> tuple[float, float, float] | None:
    """Time in s, contrast and shadows short for one set of assumptions; none where no time is long enough.

    More time gains shadows, so the mid-tones need less contrast and so less time: the two meet once.
    """
    k = float(rate_constant(contrast, time_s=time_s, c_inf=c_inf, induction_s=induction_s))
    longer = np.geomspace(LEAST_TIMES, MOST_TIMES, _SEARCHED)
    short = stops - gain * np.log2(longer)
    room = MIDTONE_LOG_H - STOP * short
    needed = np.where(room > 0, contrast * MIDTONE_LOG_H / np.where(room > 0, room, 1.0), np.inf)
    made = contrast_at(longer * time_s, c_inf=c_inf, k_per_s=k, induction_s=induction_s)
    enough = np.flatnonzero(made >= needed)
    if not len(enough) or enough[0] == 0:
        return None
    first = int(enough[0])
    return float(longer[first] * time_s), float(made[first]), float(short[first])


def _out_of_reach(stops: float, c_inf: float) -> Refused:
    """The refusal of a push that this film cannot follow."""
    return refuse(
        "push-out-of-reach", at="stops", ways_on=("push-less", "another-developer"), stops=stops, c_inf=c_inf
    )
