"""Two films in one tank: they share one time, and each gets a contrast of its own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.development.advice import Size, size_of
from tankside.core.development.contrast import C_INF_OVER_CI, contrast_deviation, contrast_ratio
from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import refuse

_SEARCHED = 401


@dataclass(frozen=True, slots=True)
class Due:
    """One film's own time in s at the reference temperature, and how far its contrast could still go."""

    time_s: float
    c_inf_over_ci: Estimate = C_INF_OVER_CI
    induction_s: float = 30.0


@dataclass(frozen=True, slots=True)
class Together:
    """One time for all, and by how many percent each contrast misses its aim, in the order asked."""

    time_s: float
    deviations: tuple[Estimate, ...]
    sizes: tuple[Size, ...]


def made_together(films: Sequence[Due], *, time_s: float) -> Together:
    """What each film gets out of a shared time.

    Arguments: films with their own due times; `time_s` above 0, all at the reference temperature.
    Result: percent of contrast with the interval that `c_inf` leaves.
    Own model: docs/science/kinetics. Doubt: the intervals, and each leaflet's 10 % beside them.

    >>> both = made_together([Due(570.0), Due(480.0)], time_s=520)
    >>> [round(one.value) for one in both.deviations]
    [-6, 5]
    """
    found = tuple(
        contrast_deviation(
            time_s, due_s=one.time_s, c_inf_over_ci=one.c_inf_over_ci, induction_s=one.induction_s
        )
        for one in films
    )
    return Together(time_s, found, tuple(size_of(one.value) for one in found))


def fairest_together(films: Sequence[Due]) -> Together:
    """The shared time whose worst miss of contrast is least.

    Arguments: one film or more. Result: as `made_together`; the two worst miss alike, one over, one under.
    Own model: docs/science/kinetics. Doubt: the intervals.

    >>> both = fairest_together([Due(570.0), Due(480.0)])
    >>> round(both.time_s), [round(one.value, 1) for one in both.deviations]
    (523, [-5.7, 5.7])
    """
    if not films:
        raise refuse("no-time-known", ways_on=("enter-a-time",))
    times = np.linspace(min(one.time_s for one in films), max(one.time_s for one in films), _SEARCHED)
    worst = np.max(
        [
            np.abs(
                contrast_ratio(
                    times,
                    due_s=one.time_s,
                    c_inf_over_ci=one.c_inf_over_ci.value,
                    induction_s=one.induction_s,
                )
                - 1
            )
            for one in films
        ],
        axis=0,
    )
    return made_together(films, time_s=float(times[int(np.argmin(worst))]))
