"""What all step strips of one combination say of its time: what is believed, and what is left to correct."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tankside.core.development.belief import (
    INPUTS,
    Belief,
    Evidence,
    believed,
    contrast_after,
    of_answer,
    of_strip,
    time_for,
)
from tankside.core.development.narrowing import NextStrip, next_strips
from tankside.core.doubt.distributions import Z95
from tankside.core.doubt.estimate import Estimate
from tankside.core.doubt.groups import seed_of, uniform_draws
from tankside.core.refusals import refuse
from tankside.core.review.evidence import NextMorning, Strips

DRAWS = 4000
TRIED_SHARES = (0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.15, 1.3, 1.5, 1.75, 2.0)
"""Times, as shares of the time in use, at which a next step strip is tried."""

KNOWN_STEP_S = 30.0


@dataclass(frozen=True, slots=True)
class Aimed:
    """The time in use, `time_s` at the reference, is to make `contrast`; `first_s` was the time at first."""

    time_s: float
    contrast: float
    first_s: float


@dataclass(frozen=True, slots=True)
class JudgedStrip:
    """A contrast index read off a strip; `counted_s` the time it had, `aimed_s` that it was to have.

    Both count at the reference temperature, in s; they differ where a log shows that a tank was warm or late.
    """

    contrast: Estimate
    counted_s: float
    aimed_s: float


@dataclass(frozen=True, slots=True)
class JudgedAnswer:
    """A three-way answer on a tankful that has no step strip, and the time in s that counted."""

    said: NextMorning
    counted_s: float


def belief_of(aimed: Aimed, strips: Sequence[JudgedStrip], answers: Sequence[JudgedAnswer] = ()) -> Belief:
    """What is believed of contrast and time after all strips, and the answers of tankfuls without one.

    Own model: docs/science/kinetics. Doubt: its draws; the same question gives the same digits.
    """
    evidence = evidence_of(aimed, strips, answers)
    draws = uniform_draws(seed_of("strips", aimed, evidence), count=DRAWS, columns=INPUTS)
    return believed(aimed.contrast, time_s=aimed.first_s, uniforms=draws, evidence=evidence)


def evidence_of(
    aimed: Aimed, strips: Sequence[JudgedStrip], answers: Sequence[JudgedAnswer] = ()
) -> tuple[Evidence, ...]:
    """Strips and answers as evidence of contrast and time.

    Own model: docs/science/kinetics. Doubt: reading error and 3 % from roll to roll; 10 % for an answer.
    """
    told = [of_strip(one.contrast.value, sd=_sd(one.contrast), time_s=one.counted_s) for one in strips]
    told += [of_answer(one.said.contrast, aim=aimed.contrast, time_s=one.counted_s) for one in answers]
    return tuple(told)


def best_next(belief: Belief, wanted: float) -> NextStrip:
    """The time of the next step strip that would narrow the time for `wanted` most, to the half minute.

    Own model: docs/science/kinetics. Doubt: a tenth of the half interval told.
    """
    middle = time_for(belief, wanted).value
    tried = sorted({max(KNOWN_STEP_S, round(share * middle / KNOWN_STEP_S) * KNOWN_STEP_S)
                    for share in TRIED_SHARES})  # fmt: skip
    return next_strips(belief, wanted, times_s=tried)[0]


def as_in_use(aimed: Aimed, strips: Sequence[JudgedStrip], belief: Belief) -> Strips:
    """The strips as evidence about the time in use: each brought to it along the curve that is believed.

    A strip that was aimed at that very time stays as it was read; its own warmth is left in it, for the log
    tells that apart. Own model: docs/science/review.md. Doubt: 2 % for a strip at half or twice the time.
    """
    if not strips:
        raise refuse("no-strip-to-judge", ways_on=("read-a-strip",))
    there = contrast_after(belief, aimed.time_s).value
    measured = tuple(
        one.contrast.value * (1.0 if one.aimed_s == aimed.time_s
                              else there / contrast_after(belief, one.aimed_s).value)
        for one in strips
    )  # fmt: skip
    sd = (sum(_sd(one.contrast) ** 2 for one in strips) / len(strips)) ** 0.5
    return Strips(measured, aimed.contrast, sd)


def _sd(contrast: Estimate) -> float:
    """The standard deviation of a reading told by its interval."""
    return max((contrast.high - contrast.low) / (2 * Z95), 1e-4)
