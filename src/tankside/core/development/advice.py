"""What to say of a development: when it ends, whether that is worth saying, and what it made."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, assert_never

import numpy as np

from tankside.core.development.contrast import C_INF_OVER_CI, contrast_deviation
from tankside.core.development.equivalent_time import equivalent_time, time_needed
from tankside.core.development.rate import TimeRule
from tankside.core.doubt.distributions import FloatArray
from tankside.core.doubt.estimate import Estimate
from tankside.core.rates import DEFAULT_RATE, BelievedRate, RateLaw

Size = Literal["too small to see", "just", "will show"]

WORTH_TELLING_S = 10.0
WORTH_TELLING_SHARE = 0.03


@dataclass(frozen=True, slots=True)
class Made:
    """What a development was worth: time counted at the reference, and the miss of contrast in percent."""

    counted_s: float
    deviation: Estimate
    size: Size


def end_of_development(
    needed_s: float,
    *,
    times_s: FloatArray,
    temps_c: FloatArray,
    drawn_temps_c: FloatArray,
    uniforms: FloatArray,
    rate: BelievedRate = DEFAULT_RATE,
) -> Estimate:
    """When to pour out, in s after the pour, so that `needed_s` at `rate.ref_c` have counted; its interval.

    Arguments: `needed_s` above 0; the path told (`times_s` from 0, `temps_c`) and drawn paths (draws by
    times) from thermal; `uniforms` (draws) for the rate, as it is believed. Result: s, 5-95 %.
    Own model: docs/science/rate-and-equivalent-time. Doubt: the interval holds reading and factor, not the
    leaflet's time.

    >>> times, temps = np.array([0.0, 900.0]), np.array([19.1, 19.1])
    >>> drawn, uniforms = np.tile(temps, (999, 1)), (np.arange(999) + 0.5) / 999
    >>> end = end_of_development(570, times_s=times, temps_c=temps, drawn_temps_c=drawn, uniforms=uniforms)
    >>> round(end.value), round(end.low), round(end.high)
    (612, 591, 627)
    """
    told = float(time_needed(needed_s, times_s, temps_c, rate.law))
    drawn = time_needed(needed_s, times_s, drawn_temps_c, rate.drawn(uniforms))
    low, high = np.quantile(drawn, [0.05, 0.95])
    return Estimate(told, min(float(low), told), max(float(high), told), "s", rate.q10.source)


def reading_moves_the_end(rule: TimeRule) -> bool:
    """Whether a temperature read in the tank may move the end at all, by the method's time rule.

    Own model: docs/science/rate-and-equivalent-time. Doubt: none.

    >>> reading_moves_the_end("rate"), reading_moves_the_end("completion")
    (True, False)
    """
    match rule:
        case "rate":
            return True
        case "table only" | "completion":
            return False
        case _:
            assert_never(rule)


def worth_telling(
    found_s: float,
    *,
    told_s: float,
    least_s: float = WORTH_TELLING_S,
    least_share: float = WORTH_TELLING_SHARE,
) -> bool:
    """Whether a new end differs from the one last told by both 10 s and 3 %.

    Own model: docs/science/rate-and-equivalent-time. Doubt: none.

    >>> worth_telling(618, told_s=613), worth_telling(645, told_s=613)
    (False, True)
    """
    moved = abs(found_s - told_s)
    return moved >= least_s and moved >= least_share * told_s


def made_by(
    times_s: FloatArray,
    temps_c: FloatArray,
    *,
    due_s: float,
    rate: BelievedRate = DEFAULT_RATE,
    law: RateLaw | None = None,
    c_inf_over_ci: Estimate = C_INF_OVER_CI,
    induction_s: float = 30.0,
) -> Made:
    """What a development that is over was worth, from its recorded path (to the moment of pouring out).

    Arguments: path in s and C; `due_s` the time that was due at the rate's reference; `law` another than the
    one told, to see what its doubt does; the rest as in `contrast_deviation`.
    Result: s at the reference, percent of contrast.
    Own model: docs/science/contrast-and-time. Doubt: the interval.

    >>> made = made_by(np.array([0.0, 570.0]), np.array([21.0, 21.0]), due_s=570)
    >>> round(made.deviation.value), made.size
    (5, 'just')
    """
    counted_s = float(equivalent_time(times_s, temps_c, rate.law if law is None else law))
    deviation = contrast_deviation(
        counted_s, due_s=due_s, c_inf_over_ci=c_inf_over_ci, induction_s=induction_s
    )
    return Made(counted_s, deviation, size_of(deviation.value))


def size_of(percent: float) -> Size:
    """How a miss of contrast by `percent` looks: under 3 too small to see, to 9 just, over 9 it will show.

    Own model: docs/science/contrast-and-time. Doubt: eyes differ.

    >>> size_of(-2.9), size_of(9.0), size_of(9.1)
    ('too small to see', 'just', 'will show')
    """
    if abs(percent) < 3:
        return "too small to see"
    return "just" if abs(percent) <= 9 else "will show"
