"""How fast the sciences are, as ratios within one run: python benchmarks/speed.py

1. A million draws of a development time with drifting temperature (start, room, time constant, factor, needed
   time all uncertain; sampling included) against a loop of quadrature and roots, timed over fewer draws.
2. An hour's log at 1 Hz turned into time that counts, against the plain array expression.
3. A note at the sink and the start of a second tankful, as evening_speed.py says.

Settings are fixed here: blocks of 8,192 draws, paths of 30 s to 20 minutes; the loop's tolerances are those
that scipy's quad and brentq have by themselves.
"""

from __future__ import annotations

from collections.abc import Callable
from time import perf_counter

import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq

from tankside.core.development.equivalent_time import counted_so_far, time_needed
from tankside.core.doubt.distributions import FloatArray, LogNormal, Normal, Uniform
from tankside.core.doubt.groups import alone, draws_for
from tankside.core.rates import Q10, Q10_BELIEF
from tankside.core.thermal.drift import temp_at

GROUPS = (
    alone("start", Normal(20.0, 0.2)),
    alone("room", Uniform(15.0, 19.0)),
    alone("tau", LogNormal(60.0, 180.0)),
    alone("factor", Q10_BELIEF),
    alone("needed", LogNormal(513.0, 627.0)),
)
DRAWS, BLOCK, LOOPED = 1_000_000, 8192, 300
TIMES_S = np.arange(0.0, 1201.0, 30.0)
HOUR_S = np.arange(0.0, 3600.0)


def sampled(count: int, seed: int) -> dict[str, FloatArray]:
    """Draws of the five inputs."""
    uniforms = draws_for(GROUPS, seed=seed, count=count)
    values: dict[str, FloatArray] = {}
    for column, group in enumerate(GROUPS):
        values |= group.at(uniforms[:, column : column + 1])
    return values


def by_blocks(count: int) -> FloatArray:
    """Development times of `count` draws, in blocks."""
    blocks = []
    for seed, first in enumerate(range(0, count, BLOCK)):
        one = sampled(min(BLOCK, count - first), seed)
        paths = temp_at(
            TIMES_S[None, :],
            start_c=one["start"][:, None], room_c=one["room"][:, None], tau_min=one["tau"][:, None],
        )  # fmt: skip
        blocks.append(time_needed(one["needed"][:, None], TIMES_S, paths, Q10(one["factor"])))
    return np.concatenate(blocks)


def by_loop(one: dict[str, FloatArray], count: int) -> FloatArray:
    """The same by a root of a quadrature for each draw."""
    return np.array([_looped({name: float(values[i]) for name, values in one.items()}) for i in range(count)])


def _looped(one: dict[str, float]) -> float:
    """One draw."""
    law = Q10(one["factor"])

    def rate(time_s: float) -> float:
        return float(
            law.factor(temp_at(time_s, start_c=one["start"], room_c=one["room"], tau_min=one["tau"]))
        )

    return float(brentq(lambda end: quad(rate, 0.0, end)[0] - one["needed"], 10.0, 6000.0))


def seconds(work: Callable[[], object], *, times: int) -> float:
    """The shortest of several runs."""
    found = []
    for _ in range(times):
        began = perf_counter()
        work()
        found.append(perf_counter() - began)
    return min(found)


def draws_ratio(draws: int = DRAWS, looped: int = LOOPED) -> tuple[float, float]:
    """How many times faster a draw is than in the loop, and the worst relative difference of the two."""
    first = sampled(min(BLOCK, draws), 0)
    loop_s = seconds(lambda: by_loop(first, looped), times=1) / looped
    block_s = seconds(lambda: by_blocks(draws), times=1) / draws
    worst = np.max(np.abs(by_blocks(min(BLOCK, draws))[:looped] / by_loop(first, looped) - 1))
    return loop_s / block_s, float(worst)


def log_ratio() -> float:
    """Time of an hour's log at 1 Hz over that of the plain array expression."""
    temps_c = 20.0 - HOUR_S / 3600 + 0.1 * np.sin(HOUR_S / 30)
    law = Q10(2.2)
    plain_s = seconds(lambda: np.cumsum(np.exp(np.log(2.2) * (temps_c - 20.0) / 10)), times=200)
    return seconds(lambda: counted_so_far(HOUR_S, temps_c, law), times=200) / plain_s


if __name__ == "__main__":
    ratio, worst = draws_ratio()
    print(f"{DRAWS:,} draws of a development time: {ratio:,.0f} x faster than the loop, apart by {worst:.1e}")
    print(f"an hour's log at 1 Hz: {log_ratio():.1f} x the plain array expression")
    from evening_speed import told

    told()
