"""What is believed of one combination's contrast: before any roll, and after step strips and answers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from tankside.core.development.contrast import (
    C_INF_BELIEF,
    INDUCTION_BELIEF,
    LEAFLET_TIME_SHARE,
    contrast_at,
)
from tankside.core.doubt.distributions import Z95, FloatArray, LogNormal, standard_normal
from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import refuse

Answer = Literal["flat", "right", "harsh"]

ANSWER_SHARE = 0.10
"""What 'flat' or 'harsh' stands for in contrast, and half the 5-95 % interval of any answer (ours)."""

ROLL_SHARE = 0.03
"""Standard deviation from roll to roll at like time and temperature, as a share (ours; none published)."""

INPUTS = 3
_MOST_ROUNDS = 12
_POWERS = (*(0.5**i for i in range(30)), 0.0)
_ENOUGH, _PLENTY = 0.1, 0.4
_WIDENED = 1.3


@dataclass(frozen=True, slots=True)
class Evidence:
    """A contrast made in `time_s` at the reference temperature, with its standard deviation."""

    time_s: float
    contrast: float
    sd: float


@dataclass(frozen=True, slots=True, eq=False)
class Belief:
    """Weighted draws of what contrast may do; `weight` sums to one."""

    c_inf: FloatArray
    k_per_s: FloatArray
    induction_s: FloatArray
    weight: FloatArray

    @property
    def effective(self) -> float:
        """How many equally weighted draws these are worth."""
        return float(1 / np.sum(self.weight**2))

    def quantiles(self, values: FloatArray, shares: Sequence[float] = (0.05, 0.5, 0.95)) -> FloatArray:
        """Weighted quantiles of values that go with the draws."""
        order = np.argsort(values)
        reached = np.cumsum(self.weight[order]) - self.weight[order] / 2
        at = np.searchsorted(reached, shares).clip(0, len(values) - 1)
        return np.asarray(values[order][at])


def of_strip(contrast: float, *, sd: float, time_s: float) -> Evidence:
    """A contrast index read off a step strip, made in `time_s` that counted at the reference temperature.

    Arguments: contrast 0.1-3 with the reading error's `sd`; the spread from roll to roll is added.
    Own model: docs/science/kinetics. Doubt: 3 % from roll to roll is our guess.

    >>> round(of_strip(0.56, sd=0.01, time_s=570).sd, 4)
    0.0196
    """
    return Evidence(time_s, contrast, float(np.hypot(sd, ROLL_SHARE * contrast)))


def of_answer(answer: Answer, *, aim: float, time_s: float) -> Evidence:
    """A three-way answer on a roll that should have `aim`: flat or harsh stands for -/+10 %, good to 10 %.

    Arguments: `aim` 0.3-1.2; `time_s` that counted at the reference temperature, so that what the run's own
    temperatures explain is not blamed on the time. Own model: docs/science/kinetics. Doubt: as told.

    >>> round(of_answer("harsh", aim=0.56, time_s=570).contrast, 3)
    0.616
    """
    off = {"flat": -ANSWER_SHARE, "right": 0.0, "harsh": ANSWER_SHARE}[answer]
    return Evidence(time_s, aim * (1 + off), aim * ANSWER_SHARE / Z95)


def believed(aim: float, *, time_s: float, uniforms: FloatArray, evidence: Sequence[Evidence] = ()) -> Belief:
    """Belief about contrast and time of one combination, from a printed or own time and all evidence since.

    Arguments: `aim` the contrast (0.3-0.7) that `time_s` at the reference temperature is said to make;
    `uniforms` draws by three inputs. Result: draws weighted by how well they foretell the evidence; they are
    moved to where the weight lies, so that sharp evidence keeps enough of them.
    Own model: docs/science/kinetics: `c_inf` lognormal 0.75-1.30, induction 0-60 s, time +-10 %.
    Source of the weighting: Bayes; importance sampling (Cappe et al. 2004, from memory).
    Doubt: of an end of an interval about 3 % of its width with 4,000 draws.

    >>> from tankside.core.doubt.groups import uniform_draws
    >>> from tankside.core.doubt.groups import uniform_draws
    >>> draws = uniform_draws(1, count=4000, columns=INPUTS)
    >>> before = believed(0.56, time_s=570, uniforms=draws)
    >>> after = believed(0.56, time_s=570, uniforms=draws, evidence=[of_strip(0.62, sd=0.01, time_s=570)])
    >>> round(time_for(before, 0.56).value / 15) * 15, round(time_for(after, 0.56).value / 15) * 15
    (570, 525)
    """
    start = standard_normal(uniforms)
    middle: FloatArray = np.zeros(INPUTS)
    root: FloatArray = np.eye(INPUTS)
    for _ in range(_MOST_ROUNDS if evidence else 1):
        scores = middle + start @ root.T
        drawn = _drawn(scores, start, aim, time_s, evidence)
        power = next(one for one in _POWERS if drawn.belief(one).effective >= _ENOUGH * len(start))
        belief = drawn.belief(power)
        if power == 1.0 and belief.effective >= _PLENTY * len(start):
            break
        middle = belief.weight @ scores
        away = (scores - middle) * np.sqrt(belief.weight)[:, None]
        root = np.asarray(_WIDENED * np.linalg.cholesky(away.T @ away + 1e-6 * np.eye(INPUTS)))
    return drawn.belief(1.0)


def time_for(belief: Belief, wanted: float) -> Estimate:
    """Time in s at the reference temperature that makes `wanted`, with its interval.

    Arguments: `wanted` contrast, refused where one draw in twenty or more could never reach it.
    Own model: docs/science/contrast-and-time: `contrast_at` inverted. Doubt: the interval.

    >>> from tankside.core.doubt.groups import uniform_draws
    >>> draws = uniform_draws(1, count=2000, columns=INPUTS)
    >>> round(time_for(believed(0.56, time_s=570, uniforms=draws), 0.56).value, -1)
    570.0
    """
    if not wanted > 0 or np.sum(belief.weight[belief.c_inf <= wanted]) >= 0.05:
        raise refuse(
            "contrast-out-of-reach", at="contrast", ways_on=("lower-contrast", "another-developer"),
            contrast=round(wanted, 2), c_inf=round(float(belief.quantiles(belief.c_inf)[0]), 2),
        )  # fmt: skip
    low, value, high = belief.quantiles(times_for(belief, wanted))
    return Estimate(float(value), float(low), float(high), "s", "belief and evidence")


def contrast_after(belief: Belief, time_s: float) -> Estimate:
    """Contrast made in `time_s` (above 0) that count at the reference temperature, with its interval.

    Own model: docs/science/contrast-and-time.
    Doubt: the interval is that of the mean; a single roll varies by 3 % more.

    >>> from tankside.core.doubt.groups import uniform_draws
    >>> draws = uniform_draws(1, count=2000, columns=INPUTS)
    >>> round(contrast_after(believed(0.56, time_s=570, uniforms=draws), 570).value, 2)
    0.56
    """
    made = contrast_at(time_s, c_inf=belief.c_inf, k_per_s=belief.k_per_s, induction_s=belief.induction_s)
    low, value, high = belief.quantiles(made)
    return Estimate(float(value), float(low), float(high), "contrast index", "belief and evidence")


def times_for(belief: Belief, wanted: float) -> FloatArray:
    """Times in s for `wanted`, one a draw; without end where a draw never reaches it.

    Own model: docs/science/contrast-and-time. Doubt: that of the belief.

    >>> from tankside.core.doubt.groups import uniform_draws
    >>> belief = believed(0.56, time_s=570, uniforms=uniform_draws(1, count=2000, columns=INPUTS))
    >>> bool(np.isinf(times_for(belief, 0.9)).any()), bool(np.isinf(times_for(belief, 0.4)).any())
    (True, False)
    """
    share = np.minimum(wanted / belief.c_inf, 1.0)
    with np.errstate(divide="ignore"):
        return np.asarray(belief.induction_s - np.log1p(-share) / belief.k_per_s)


@dataclass(frozen=True, slots=True, eq=False)
class _Drawn:
    """Draws with what moves them from where they were drawn to the belief, and what the evidence says."""

    c_inf: FloatArray
    k_per_s: FloatArray
    induction_s: FloatArray
    log_moved: FloatArray
    log_likelihood: FloatArray

    def belief(self, power: float) -> Belief:
        """Belief with the evidence taken to a power: little of it first, so that no draw outweighs all."""
        log_weight = self.log_moved + power * self.log_likelihood
        weight = np.exp(log_weight - np.max(log_weight))
        return Belief(self.c_inf, self.k_per_s, self.induction_s, weight / np.sum(weight))


def _drawn(
    scores: FloatArray, start: FloatArray, aim: float, time_s: float, evidence: Sequence[Evidence]
) -> _Drawn:
    """Draws of the belief at normal `scores` that were made from `start`."""
    from scipy.special import ndtr  # noqa: PLC0415 - scipy is loaded only where it is used

    uniforms = np.clip(ndtr(scores), 1e-12, 1 - 1e-12)
    c_inf = C_INF_BELIEF.at(uniforms[:, 0])
    induction_s = INDUCTION_BELIEF.at(uniforms[:, 1])
    own_s = time_s * LogNormal(1 - LEAFLET_TIME_SHARE, 1 + LEAFLET_TIME_SHARE).at(uniforms[:, 2])
    possible = (c_inf > aim) & (own_s > induction_s)
    share = np.where(possible, aim / c_inf, 0.5)
    k_per_s = -np.log1p(-share) / np.where(possible, own_s - induction_s, time_s)
    log_moved = np.where(possible, 0.5 * np.sum(start**2 - scores**2, axis=1), -np.inf)
    log_likelihood = np.zeros(len(scores))
    for one in evidence:
        made = contrast_at(one.time_s, c_inf=c_inf, k_per_s=k_per_s, induction_s=induction_s)
        log_likelihood -= 0.5 * ((made - one.contrast) / one.sd) ** 2
    return _Drawn(c_inf, k_per_s, induction_s, log_moved, log_likelihood)
