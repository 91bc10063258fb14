"""From what the negatives say to what the next run should do: half a correction, or the true cause.

A proposal never blames the time for what the log explains by temperature, nor for what the exposure did.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor
from typing import Literal

from tankside.core.development.contrast import C_INF, time_correction
from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.display import to_step
from tankside.core.rates import DEFAULT_RATE, BelievedRate

What = Literal["time", "index", "temper", "keep"]

TOO_SMALL_PERCENT = 3.0
"""A miss of contrast below this is too small to see, so nothing is changed for it."""

SHARE_ACCEPTED = 0.5
MOST_STEP_PERCENT = 10.0
"""Half a correction, and at most this much of the time in one step. Own model: docs/science/review.md."""

TYPICAL_CONTRAST = 0.56
BEYOND = 1.1
"""A contrast that was reached leaves at least this much above it to go. Own model: docs/science/review.md."""

KNOWN_S = 5.0
"""A corrected time is not known better than this, in s."""

SPEEDS = (
    *(6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 32.0, 40.0, 50.0, 64.0, 80.0),
    *(100.0, 125.0, 160.0, 200.0, 250.0, 320.0, 400.0, 500.0, 640.0, 800.0),
    *(1000.0, 1250.0, 1600.0, 2000.0, 2500.0, 3200.0, 4000.0, 5000.0, 6400.0),
)
"""Exposure indices as cameras carry them, a third of a stop apart (common practice)."""


@dataclass(frozen=True, slots=True)
class Developed:
    """What the log says of the development that is judged.

    `aimed_s` is the time that was to count where `rate` has its reference, `mean_c` the mean temperature in
    the tank, and `explained_percent` how far the log alone predicts the contrast to miss its aim.
    """

    aimed_s: float
    mean_c: float
    explained_percent: Estimate
    rate: BelievedRate = DEFAULT_RATE
    contrast: float | None = None
    c_inf: Estimate = C_INF
    induction_s: float = 30.0


@dataclass(frozen=True, slots=True)
class Proposal:
    """One change, or none: `full_percent` is the whole correction of time with its band, shown beside it.

    `old` and `new` are seconds for 'time' and 'temper' (the same minutes at the reference, or `new` at
    `at_c`), exposure indices for 'index'. `seen_percent` is what was measured, `explained_percent` what the
    temperatures explain of it, both in contrast.
    """

    what: What
    old: float
    new: float
    full_percent: Estimate | None
    seen_percent: Estimate
    explained_percent: Estimate
    at_c: float | None = None
    stops: float = 0.0


def propose_time(seen: Estimate, developed: Developed) -> Proposal:
    """What to do about a contrast that missed its aim by `seen` percent.

    What the log explains is taken off first; what is left is corrected by half, at most 10 % a step. Where
    temperature explains it, the way on is to temper, or the time that makes it right at that temperature.
    Own model: docs/science/review.md. Doubt: the band of the full correction over that of c_inf.
    """
    explained = developed.explained_percent
    left = seen.value - explained.value
    if abs(left) < TOO_SMALL_PERCENT:
        return _blame_temperature(seen, developed)
    aim = developed.contrast or TYPICAL_CONTRAST
    made = aim * (1 + left / 100)
    full = time_correction(
        made,
        wanted=aim,
        time_s=developed.aimed_s,
        c_inf=_reaching(developed.c_inf, max(made, aim)),
        induction_s=developed.induction_s,
    )
    step = max(-MOST_STEP_PERCENT, min(MOST_STEP_PERCENT, SHARE_ACCEPTED * full.value))
    new = to_step(developed.aimed_s * (1 + step / 100), KNOWN_S)
    return Proposal("time", developed.aimed_s, new, full, seen, explained)


def propose_index(stops_over: float, *, index: float, seen: Estimate, explained: Estimate) -> Proposal | None:
    """What to do about shadows that are `stops_over` above the aim: half of it, in thirds of a stop.

    Too little exposure asks for a lower index. None where a third of a stop would be too much.
    Own model: docs/science/review.md. Doubt: about half a stop for an answer by eye.

    >>> nothing = Estimate(0.0, 0.0, 0.0, "%")
    >>> propose_index(-1.13, index=200, seen=nothing, explained=nothing).new
    125.0
    """
    thirds = round(SHARE_ACCEPTED * abs(stops_over) * 3)
    if thirds == 0:
        return None
    stops = thirds / 3 if stops_over > 0 else -thirds / 3
    wanted = index * 2**stops
    new = min(SPEEDS, key=lambda speed: abs(speed / wanted - 1))
    return Proposal("index", index, new, None, seen, explained, stops=stops)


def _reaching(c_inf: Estimate, contrast: float) -> Estimate:
    """The belief in `c_inf` once a contrast was reached: it cannot lie below that."""
    least = BEYOND * contrast
    return Estimate(
        max(c_inf.value, least), max(c_inf.low, least), max(c_inf.high, least), c_inf.unit, c_inf.source
    )


def _blame_temperature(seen: Estimate, developed: Developed) -> Proposal:
    """Nothing is left for the time: keep it, and temper if the log itself was off."""
    explained = developed.explained_percent
    if abs(explained.value) < TOO_SMALL_PERCENT:
        return Proposal("keep", developed.aimed_s, developed.aimed_s, None, seen, explained)
    rate = developed.rate
    at_c = max(ceil(rate.least_c), min(floor(rate.most_c), round(developed.mean_c)))
    there = developed.aimed_s / float(rate.law.factor(at_c))
    return Proposal(
        "temper", developed.aimed_s, to_step(there, KNOWN_S), None, seen, explained, at_c=float(at_c)
    )
