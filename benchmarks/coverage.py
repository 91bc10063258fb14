"""How often a stated 90 % interval holds the truth: python benchmarks/coverage.py [RUNS]

The truth of each run is drawn from the prior that the interval states, so nine in ten should be held (88
to 92 % of 10,000); runs that are refused an answer count neither way. Beside it stands the worst of the fixed
truths at the 4, 50 and 96 % points of every input: a belief is right on the average over it, not
at every truth. The last case breaks what the intervals assume, and is printed whatever it says.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import partial
from itertools import product
from typing import Any

import numpy as np

from tankside.core.development.advice import end_of_development
from tankside.core.development.belief import (
    ANSWER_SHARE,
    INPUTS,
    ROLL_SHARE,
    Answer,
    Evidence,
    believed,
    contrast_after,
    of_answer,
    of_strip,
    time_for,
)
from tankside.core.development.contrast import C_INF_BELIEF, INDUCTION_BELIEF, LEAFLET_TIME_SHARE, contrast_at
from tankside.core.development.equivalent_time import time_needed
from tankside.core.development.printed_rows import Row
from tankside.core.development.rate import rate_of, time_at
from tankside.core.doubt.distributions import Z95, LogNormal
from tankside.core.doubt.estimate import Estimate
from tankside.core.doubt.groups import uniform_draws
from tankside.core.rates import Q10, Q10_BELIEF
from tankside.core.refusals import Refused
from tankside.core.sensitometry.contrast import contrast_index
from tankside.core.sensitometry.curve import Strip, curve_of, measured
from tankside.core.sensitometry.shape import Shape
from tankside.core.sensitometry.speed import speed_point
from tankside.core.thermal.drift import Reading, temp_at
from tankside.core.thermal.expected_path import expected_path

Dice = np.random.Generator
AIM, DUE_S = 0.56, 570.0
ROOM_C = 16.0
OWN_TIME = LogNormal(1 - LEAFLET_TIME_SHARE, 1 + LEAFLET_TIME_SHARE)
TAU = LogNormal(60.0, 180.0)
STRIP_SD = 0.01
BELIEF_DRAWS = uniform_draws(1, count=2000, columns=INPUTS)
PATH_DRAWS = uniform_draws(2, count=1000, columns=3)
LEVELS = (0.04, 0.5, 0.96)


@dataclass(frozen=True)
class Case:
    """One kind of interval: does a run hold the truth, told by its shares of the prior (one an input)?"""

    name: str
    inputs: int
    holds: Callable[[Sequence[float], Dice], bool]
    promised: bool = True

    def coverage(self, runs: int, seed: int = 20260101) -> float:
        """Share of runs that held the truth, each truth drawn from the prior."""
        dice = np.random.default_rng(seed)
        return self._held((dice.uniform(size=self.inputs), dice) for _ in range(runs))

    def worst(self, runs: int, seed: int = 20260102) -> tuple[float, tuple[float, ...]]:
        """Least share over the fixed truths, and which that was."""
        found = []
        for truth in product(LEVELS, repeat=self.inputs):
            dice = np.random.default_rng(seed)
            found.append((self._held((truth, dice) for _ in range(runs)), truth))
        return min(found)

    def _held(self, tries: Iterable[tuple[Sequence[float], Dice]]) -> float:
        """Share held of those that were answered."""
        held = []
        for truth, dice in tries:
            with suppress(Refused):
                held.append(self.holds(truth, dice))
        return float(np.mean(held)) if held else float("nan")


def film(shares: Sequence[float]) -> dict[str, float]:
    """A film in a developer, as the belief of contrast and time has them."""
    c_inf, induction_s = float(C_INF_BELIEF.at(shares[0])), float(INDUCTION_BELIEF.at(shares[1]))
    own_s = DUE_S * float(OWN_TIME.at(shares[2]))
    k = -np.log1p(-min(AIM / c_inf, 0.999)) / (own_s - induction_s)
    return {"c_inf": c_inf, "k_per_s": float(k), "induction_s": induction_s}


def time_held(
    shares: Sequence[float], dice: Dice, *, seen: Callable[..., list[Evidence]], wanted: float
) -> bool:
    """Whether the time told for a wanted contrast holds the film's own."""
    told = time_for(
        believed(AIM, time_s=DUE_S, uniforms=BELIEF_DRAWS, evidence=seen(film(shares), dice)), wanted
    )
    makes = [float(contrast_at(end, **film(shares))) for end in (told.low, told.high)]
    return makes[0] <= wanted <= makes[1]


def contrast_held(shares: Sequence[float], dice: Dice) -> bool:
    """Whether the contrast foretold for a push after one strip holds what the film makes."""
    after = believed(
        AIM, time_s=DUE_S, uniforms=BELIEF_DRAWS, evidence=strips(film(shares), dice, times_s=(DUE_S,))
    )
    told = contrast_after(after, 800.0)
    return told.low <= float(contrast_at(800.0, **film(shares))) <= told.high


def nothing(own: dict[str, float], dice: Dice) -> list[Evidence]:
    """No evidence yet."""
    del own, dice
    return []


def strips(own: dict[str, float], dice: Dice, *, times_s: Sequence[float]) -> list[Evidence]:
    """Step strips with their reading error and the spread from roll to roll."""
    made = [float(contrast_at(time_s, **own)) for time_s in times_s]
    read = [one * (1 + ROLL_SHARE * dice.normal()) + STRIP_SD * dice.normal() for one in made]
    return [of_strip(one, sd=STRIP_SD, time_s=time_s) for one, time_s in zip(read, times_s, strict=True)]


def answers(own: dict[str, float], dice: Dice) -> list[Evidence]:
    """Three answers of a person who sees contrast to a little less than the doubt of an answer."""
    seen_sd = np.sqrt((ANSWER_SHARE / Z95) ** 2 - ANSWER_SHARE**2 / 12)
    told: list[Evidence] = []
    for _ in range(3):
        off = float(contrast_at(DUE_S, **own)) / AIM - 1 + seen_sd * dice.normal()
        word: Answer = "right" if abs(off) < ANSWER_SHARE / 2 else "harsh" if off > 0 else "flat"
        told.append(of_answer(word, aim=AIM, time_s=DUE_S))
    return told


def one_row_held(shares: Sequence[float], dice: Dice) -> bool:
    """Whether the time at 22 C from one row holds that of the developer's own factor."""
    del dice
    told = time_at(rate_of([Row(20.0, DUE_S)]), 22.0)
    return told.low <= DUE_S / float(Q10(float(Q10_BELIEF.at(shares[0]))).factor(22.0)) <= told.high


def table_held(shares: Sequence[float], dice: Dice) -> bool:
    """Whether the factor fitted to four printed rows, rounded to half minutes, holds the developer's own."""
    own = float(Q10_BELIEF.at(shares[0]))
    exact_s = dice.uniform(400, 900) / Q10(own).factor(np.array([18.0, 20.0, 22.0, 24.0]))
    rows = [
        Row(float(t), float(30 * np.round(s / 30))) for t, s in zip((18, 20, 22, 24), exact_s, strict=True)
    ]
    told = rate_of(rows).q10
    return told.low <= own <= told.high


def end_held(
    shares: Sequence[float],
    dice: Dice,
    *,
    offset_sd_k: float = 0.0,
    printed_half_s: float = 0.0,
    wall_k: float = 0.0,
) -> bool:
    """Whether the end told after readings at 1:00 and 4:00 holds the one of the real temperatures."""
    tau_min, q10 = float(TAU.at(shares[0])), float(Q10_BELIEF.at(shares[1]))
    times_s = np.arange(0.0, 1201.0, 15.0)
    start_c, offset_k = 19.2 + 0.4 * dice.normal(), offset_sd_k * dice.normal()
    real_c = temp_at(times_s, start_c=start_c, room_c=ROOM_C, tau_min=tau_min) + wall_k * np.exp(
        -times_s / 90
    )
    needed_s = DUE_S + printed_half_s * dice.uniform(-1, 1)
    readings = [
        Reading(at_s, float(np.interp(at_s, times_s, real_c)) + offset_k + 0.1 * dice.normal())
        for at_s in (60.0, 240.0)
    ]
    path = expected_path(
        readings, room_c=ROOM_C, tau_min=Estimate(TAU.median, TAU.low, TAU.high, "min"), until_s=900,
        uniforms=PATH_DRAWS[:, :2],
    )  # fmt: skip
    told = end_of_development(
        DUE_S,
        times_s=path.times_s,
        temps_c=path.temps_c,
        drawn_temps_c=path.drawn_c,
        uniforms=PATH_DRAWS[:, 2],
    )
    return told.low <= float(time_needed(needed_s, times_s, real_c, Q10(q10))) <= told.high


def curve_held(
    shares: Sequence[float], dice: Dice, *, measure: Callable[[Shape], float], reading_sd: float
) -> bool:
    """Whether what is told of a curve from 21 readings holds what its exact shape gives."""
    slope, softness, shoulder = 0.4 + 0.4 * shares[0], 3 + 5 * shares[1], 1.6 + 1.4 * shares[2]

    def net(log_h: Any) -> Any:
        rise = slope / softness * np.log1p(np.exp(softness * (log_h + 2.2)))
        return rise - slope / 4 * np.log1p(np.exp(4 * (log_h + 2.2 - shoulder - 0.8)))

    steps, fine = -3.05 + 0.15 * np.arange(21), np.linspace(-3.05, -0.05, 1501)
    read = np.maximum(0.0, 0.28 + net(steps) + reading_sd * dice.normal(size=21))
    strip = Strip(steps, read, 0.28 + reading_sd * dice.normal(), reading_sd)
    told = measured(curve_of(strip), measure)
    return told.low <= measure(Shape(fine, net(fine))) <= told.high


STRANGE = {"offset_sd_k": 0.3, "printed_half_s": 15.0, "wall_k": 0.5}
CASES = (
    Case("time for 0.65, leaflet alone", INPUTS, partial(time_held, seen=nothing, wanted=0.65)),
    Case(
        "time for 0.56, one strip",
        INPUTS,
        partial(time_held, seen=partial(strips, times_s=(DUE_S,)), wanted=AIM),
    ),
    Case(
        "time for 0.62, three strips",
        INPUTS,
        partial(time_held, seen=partial(strips, times_s=(400.0, 570.0, 900.0)), wanted=0.62),
    ),
    Case("time for 0.56, three answers", INPUTS, partial(time_held, seen=answers, wanted=AIM)),
    Case("contrast after 13:20, one strip", INPUTS, contrast_held),
    Case("time at 22 C, one row", 1, one_row_held),
    Case("factor per 10 K, four rows", 1, table_held),
    Case("end after two readings", 2, end_held),
    Case("speed point, readings to 0.02", 3, partial(curve_held, measure=speed_point, reading_sd=0.02)),
    Case("contrast index, readings to 0.02", 3, partial(curve_held, measure=contrast_index, reading_sd=0.02)),
    Case(
        "end: offset 0.3 K, printed half minutes, late wall", 2, partial(end_held, **STRANGE), promised=False
    ),
)


def main(runs: int) -> None:
    """Print every case."""
    print(
        f"{runs} runs a case; 90 % is stated\n{'interval':<52} held   worst fixed truth (shares of the prior)"
    )
    for case in CASES:
        share, (least, truth) = case.coverage(runs), case.worst(100)
        print(
            f"{case.name:<52} {100 * share:4.1f} %  {100 * least:4.1f} % at {', '.join(map(str, truth))}",
            flush=True,
        )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
