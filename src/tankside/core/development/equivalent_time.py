"""Time that counts: what a changing temperature is worth in minutes at the reference temperature."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from tankside.core.doubt.distributions import FloatArray, Values
from tankside.core.rates import Q10, RateLaw, RateTable
from tankside.core.refusals import refuse

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(3)

_NEARLY_LEVEL = 1e-3

Path = tuple[FloatArray, FloatArray]
"""Times in s from 0 and temperatures in C there, straight in between."""


def counted_so_far(times_s: FloatArray, temps_c: FloatArray, law: RateLaw) -> FloatArray:
    """Equivalent time in s at `law.ref_c` up to each of `times_s`.

    Arguments: `times_s` rising from 0; `temps_c` (..., times), straight in between; `law` with a single
    factor, or one for each leading row. Result: same shape as `temps_c`.
    Source: integral of k(T(t))/k(ref) dt; a factor per 10 K and a table exactly in each piece, an activation
    energy by three-point Gauss-Legendre. Doubt: below 1e-6 of it for pieces of at most 10 K; that of the law
    is larger.

    >>> times, temps = np.array([0.0, 180, 360, 600]), np.array([20.4, 20.1, 19.8, 19.5])
    >>> round(float(counted_so_far(times, temps, Q10(2.5))[-1] / 60), 6)
    9.929869
    """
    pieces = _mean_factors(temps_c, law) * np.diff(times_s)
    start = np.zeros((*pieces.shape[:-1], 1))
    return np.asarray(np.concatenate([start, np.cumsum(pieces, axis=-1)], axis=-1), dtype=np.float64)


def equivalent_time(times_s: FloatArray, temps_c: FloatArray, law: RateLaw) -> FloatArray:
    """Equivalent time in s of the whole path; arguments as in `counted_so_far`.

    Source: the last of `counted_so_far`. Doubt: as there.

    >>> round(float(equivalent_time(np.array([0.0, 600]), np.array([20.0, 18.0]), Q10(2.5)) / 60), 6)
    9.137209
    """
    return np.asarray(counted_so_far(times_s, temps_c, law)[..., -1])


def time_needed(needed_s: Values, times_s: FloatArray, temps_c: FloatArray, law: RateLaw) -> FloatArray:
    """Time in s at which the path has counted `needed_s` at `law.ref_c`.

    Beyond the end of the path its last temperature holds.

    Arguments: `needed_s` above 0, one for all or (rows, 1); path as in `counted_so_far`.
    Result: one time for each leading row.
    Source: inverse of the integral, by Newton's steps in the piece. Doubt: 1e-6 of it.

    >>> round(float(time_needed(480, np.array([0.0, 600]), np.array([22.0, 22.0]), Q10(2.5)) / 60), 6)
    6.660426
    """
    counted = counted_so_far(times_s, temps_c, law)
    piece = np.minimum((counted[..., 1:] < needed_s).sum(axis=-1), len(times_s) - 2)[..., None]
    first, last, before = (
        np.take_along_axis(values, at, -1)
        for values, at in ((temps_c, piece), (temps_c, piece + 1), (counted, piece))
    )
    length = np.diff(times_s)[piece]
    inside = _inside_piece(needed_s - before, first, last, length, law)
    beyond = length + (needed_s - counted[..., -1:]) / _factors(law, temps_c[..., -1:, None])[..., 0]
    found = times_s[piece] + np.where(counted[..., -1:] < needed_s, beyond, inside)
    return np.asarray(found[..., 0], dtype=np.float64)


def equivalent_time_of_drift(
    time_s: float, *, start_c: float, room_c: float, tau_min: float, q10: float, ref_c: float = 20.0
) -> float:
    """Equivalent time in s of a drift towards the room, in closed form.

    Arguments: `time_s` above 0; temperatures 5-40 C, start not equal to room; `tau_min` above 0; `q10` 1.1-5.
    Source: tau e^{a(Tr-ref)} [Ei(a th) - Ei(a th e^{-t/tau})], a = ln(Q10)/10, th = T0 - Tr. Doubt: none.

    >>> got = equivalent_time_of_drift(600, start_c=20, room_c=15, tau_min=106, q10=2.5)
    >>> round(got / 60, 6)
    9.793405
    """
    from scipy.special import expi  # noqa: PLC0415 - scipy is loaded only where it is used

    a, above_k = np.log(q10) / 10, start_c - room_c
    left = np.exp(-time_s / (60 * tau_min))
    return float(60 * tau_min * np.exp(a * (room_c - ref_c)) * (expi(a * above_k) - expi(a * above_k * left)))


def start_that_makes_it_right(
    path_from: Callable[[float], Path],
    *,
    time_s: float,
    needed_s: float,
    law: RateLaw,
    least_c: float = 10.0,
    most_c: float = 35.0,
) -> float:
    """Temperature in C at the start for which `time_s` on the clock counts exactly `needed_s`: temper first.

    Arguments: `path_from` gives the path to `time_s` from a start temperature; `needed_s` at `law.ref_c`.
    Result: C, between `least_c` and `most_c`, else refused.
    Own model: docs/science/rate-and-equivalent-time. Doubt: hardly any from the factor per 10 K
    (0.05 K between 1.5 and 2.9); that of tau and room remains.

    >>> steady = lambda temp_c: (np.array([0.0, 570.0]), np.array([temp_c, temp_c]))
    >>> round(start_that_makes_it_right(steady, time_s=570, needed_s=570, law=Q10()), 6)
    20.0
    """
    from scipy.optimize import brentq  # noqa: PLC0415 - scipy is loaded only where it is used

    def short_by(start_c: float) -> float:
        return needed_s - float(equivalent_time(*path_from(start_c), law))

    if short_by(least_c) < 0 or short_by(most_c) > 0:
        raise refuse(
            "no-start-makes-it-right", ways_on=("another-time",),
            time_s=time_s, needed_s=needed_s, least_c=least_c, most_c=most_c,
        )  # fmt: skip
    return float(brentq(short_by, least_c, most_c))


def _mean_factors(temps_c: FloatArray, law: RateLaw) -> FloatArray:
    """Mean rate factor of each straight piece between temperatures (..., times)."""
    if isinstance(law, Q10):
        steepness = np.log(np.asarray(law.factor_per_10k)) / 10
        logs = (temps_c - law.ref_c) * (steepness[..., None] if steepness.ndim else steepness)
        return _logarithmic_mean(np.exp(logs), np.diff(logs, axis=-1))
    if isinstance(law, RateTable):
        return law.mean_factors(temps_c)
    first, last = temps_c[..., :-1, None], temps_c[..., 1:, None]
    return np.asarray(_factors(law, first + (last - first) * (_NODES + 1) / 2) @ _WEIGHTS / 2)


def _logarithmic_mean(factors: FloatArray, steps: FloatArray) -> FloatArray:
    """Mean of neighbours that an exponential joins, their logarithms `steps` apart; level ones too."""
    first, last = factors[..., :-1], factors[..., 1:]
    level = np.abs(steps) < _NEARLY_LEVEL
    if level.all():
        return np.asarray((first + last) * (0.5 - steps**2 / 24))
    steep = (last - first) / np.where(level, 1.0, steps)
    return np.asarray(np.where(level, (first + last) * (0.5 - steps**2 / 24), steep))


def _inside_piece(
    left_s: FloatArray, first_c: FloatArray, last_c: FloatArray, length_s: FloatArray, law: RateLaw
) -> FloatArray:
    """Seconds into a piece after which `left_s` have counted, by Newton's steps on its integral."""
    inside = np.clip(left_s, 0.0, length_s)
    for _ in range(4):
        here = first_c + (last_c - first_c) * inside / length_s
        nodes = first_c[..., None] + (here - first_c)[..., None] * (_NODES + 1) / 2
        counted = _factors(law, nodes) @ _WEIGHTS / 2 * inside
        step = (left_s - counted) / _factors(law, here[..., None])[..., 0]
        inside = np.clip(inside + step, 0.0, length_s)
    return np.asarray(inside, dtype=np.float64)


def _factors(law: RateLaw, temps_c: FloatArray) -> FloatArray:
    """Rate factors of temperatures (..., times, 1 or nodes), one law for each leading row."""
    if isinstance(law, RateTable):
        return law.factor(temps_c)
    parameter = law.factor_per_10k if isinstance(law, Q10) else law.energy_kj_mol
    if np.ndim(parameter) == 0:
        return law.factor(temps_c)
    return type(law)(np.asarray(parameter)[..., None, None], law.ref_c).factor(temps_c)
