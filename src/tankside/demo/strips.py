"""Invented step strips of the season: an invented truth, read with invented errors and typed by hand."""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, log, log1p
from random import Random

from tankside.core.methods.step_strips import Exposed, even_tablet
from tankside.workflows.read_step_strip import Typed

BASE_FOG, SHARPNESS = 0.24, 5.0
TOP_SLOPE, RATE_PER_S, BEGINS_S = 1.09, 0.00172, 35.0
"""The truth: the straight part's slope rises to 1.09 at this rate, from 35 s on (all of it invented)."""

TOE_LOG_H, FOG_PER_MIN, FASTER_PER_DOUBLING = -2.26, 0.004, 0.10
CLEAR_LOG_H, READING_SD, READ_BY = -0.05, 0.010, "flatbed scanner"
USUAL = "21 steps of 0.15"


@dataclass(frozen=True, slots=True)
class Invented:
    """A strip developed for `time_s` that counted at 20 C; `days_ago` it was read, `words` what was noted."""

    time_s: float
    days_ago: int
    words: str = ""
    control: bool = False


ALONE = (
    Invented(360.0, 30, "short, for the curve of times"),
    Invented(780.0, 29, "long, for the curve of times"),
)
"""Strips of no run: time at 20 C."""

NOTED = {12: "the other thermometer, it read low"}
CONTROL = tuple(
    Invented(time_s, 62 - 4 * n, NOTED.get(n, ""), control=True)
    for n, time_s in enumerate((570, 562, 576, 568, 581, 566, 572, 560, 574, 569, 578, 565, 790, 571))
)
"""A control strip every fourth day; the thirteenth had a tank four degrees warmer than it read."""


def density(log_h: float, time_s: float) -> float:
    """The invented truth: a toe that runs into a straight part, steeper and a little faster with time."""
    slope = TOP_SLOPE * (1 - exp(-RATE_PER_S * (time_s - BEGINS_S)))
    toe = TOE_LOG_H - FASTER_PER_DOUBLING * log(time_s / 570.0) / log(2.0)
    fog = BASE_FOG + FOG_PER_MIN * time_s / 60
    return fog + slope / SHARPNESS * log1p(exp(SHARPNESS * (log_h - toe)))


def typed(one: Invented, *, seed: int) -> Typed:
    """What was typed of it: every patch and the clear film, each with its own error, to a hundredth."""
    dice, patches = Random(seed), even_tablet()
    read = [density(CLEAR_LOG_H - patch, one.time_s) + dice.gauss(0.0, READING_SD) for patch in patches]
    clear = density(-9.0, one.time_s) + dice.gauss(0.0, READING_SD)
    return Typed(
        " ".join(f"{value:.2f}" for value in read),
        USUAL,
        patches,
        round(clear, 2),
        READING_SD,
        READ_BY,
        Exposed(CLEAR_LOG_H),
        one.control,
        one.words,
    )
