"""What contrast a tankful will get, and which step strip would tell more of it."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from tankside.core.development.belief import (
    INPUTS,
    ROLL_SHARE,
    Belief,
    Evidence,
    believed,
    contrast_after,
    time_for,
)
from tankside.core.development.contrast import C_INF, INDUCTION_S
from tankside.core.development.equivalent_time import equivalent_time
from tankside.core.development.narrowing import next_strips
from tankside.core.doubt.distributions import Z95
from tankside.core.doubt.estimate import Estimate
from tankside.core.doubt.groups import seed_of, uniform_draws
from tankside.core.methods.known_time import KnownTime
from tankside.core.planning.one_tankful import TimedTankful, timed
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.why import Figure, Length, Mark, Narrowing, PartOfDoubt, Plot, Why, rule
from tankside.core.planning.wish import Wish
from tankside.core.quantities.display import to_step
from tankside.core.rates import RateLaw
from tankside.core.thermal.drift import READING_SD_K

ASSUMED_AIM = 0.56
"""Contrast that a printed time is taken to mean where none is told (docs/science/contrast-and-time)."""

DRAWS = 4000
STRIP_SHARES = (0.5, 0.7, 1.0, 1.4, 2.0)
"""Times of the next strip that are looked at, as multiples of the known one."""

ROWS, BETWEEN_ROWS = 8, 3
CONTRAST_PAGE, KINETICS_PAGE = "docs/science/contrast-and-time", "docs/science/kinetics"


def contrast_of(tankful: PlannedTankful, wish: Wish, evidence: Sequence[Evidence] = ()) -> Why:
    """What contrast a tankful of a plan will get; `evidence` is what its combination has made before."""
    development = tankful.development
    end = development.end_s or development.time_s
    return why_contrast(
        timed(tankful, wish),
        start_c=development.start_c,
        end_s=end.value,
        by_rate=development.time_rule == "rate",
        evidence=evidence,
        tankful=tankful.letter,
    )


def why_contrast(
    found: TimedTankful,
    *,
    start_c: float,
    end_s: float,
    by_rate: bool = True,
    evidence: Sequence[Evidence] = (),
    tankful: str | None = None,
) -> Why:
    """What contrast a developer that starts at `start_c` makes until it is poured out after `end_s`.

    Arguments: C in the tank, s. Result: contrast index with its 5-95 % interval for one roll.
    Own model: docs/science/contrast-and-time. Doubt: belief, roll to roll, factor and thermometer as squares.
    """
    known, aim = found.known, aim_of(found.known)
    belief = belief_of(known, evidence)

    believed_rate = known.rate.believed

    def counted_s(law: RateLaw = believed_rate.law, by_k: float = 0.0) -> float:
        times, temps = found.setting.path(start_c + by_k, end_s)
        return float(equivalent_time(times, temps, law))

    told_s = counted_s() if by_rate else end_s
    made = contrast_after(belief, told_s)
    parts = [
        PartOfDoubt("belief", (made.high - made.low) / 2),
        PartOfDoubt("roll-to-roll", Z95 * ROLL_SHARE * made.value),
    ]
    if by_rate:
        by_k = Z95 * READING_SD_K
        moved = {
            "factor": tuple(counted_s(law) for law in believed_rate.ends),
            "thermometer": (counted_s(by_k=-by_k), counted_s(by_k=by_k)),
        }
        parts += [PartOfDoubt(code, _half(belief, *ends)) for code, ends in moved.items()]
    others = hypot(*(part.half_width for part in parts[1:]))
    answer = Estimate(
        made.value,
        made.value - hypot(made.value - made.low, others),
        made.value + hypot(made.high - made.value, others),
        "contrast index",
        made.source,
    )
    strip = next_strip(known, evidence)
    return Why(
        "contrast",
        tankful,
        answer,
        (
            Length(
                "aimed",
                rule(aim, "contrast index", "assumed" if known.row.contrast is None else known.source),
                (
                    Figure("time_s", known.rate.time_s.value, "s", known.source),
                    Figure("temp_c", known.rate.ref_c, "C", known.source),
                    Figure("told", float(known.row.contrast is not None), "", known.source),
                ),
            ),
            Length("believed", made, (Figure("counted_s", told_s, "s", "computed"),)),
        ),
        tuple(sorted(parts, key=lambda part: -part.half_width)),
        (strip or Narrowing("step-strip"),),
        (
            Figure("counted_s", told_s, "s", "computed"),
            Figure("printed_s", known.row.time_s, "s", known.row.words),
            Figure("printed_c", known.row.temp_c, "C", known.row.words),
            Figure("c_inf", C_INF.value, "contrast index", C_INF.source),
            Figure("induction_s", INDUCTION_S.value, "s", INDUCTION_S.source),
            Figure("strips", float(len(evidence)), "", "yours"),
        ),
        "contrast = c_inf (1 - exp(-k (t - t_i))), t counted at the printed temperature; "
        "k from the printed time, all three drawn and weighed by what was measured",
        (CONTRAST_PAGE, KINETICS_PAGE, "sheppard-mees-1907", "nietz-1922"),
        plot=contrast_plot(
            "contrast",
            belief,
            (Mark("tonight", told_s, answer.value),),
            step_s=max(30.0, to_step(known.rate.time_s.value / 4, 30.0)),
            level=aim,
        ),
    )


def aim_of(known: KnownTime) -> float:
    """The contrast that a known time is said to make."""
    return ASSUMED_AIM if known.row.contrast is None else known.row.contrast


def belief_of(known: KnownTime, evidence: Sequence[Evidence] = ()) -> Belief:
    """What is believed of a combination by its known time and by what was measured since."""
    time_s = known.rate.time_s.value
    draws = uniform_draws(seed_of("contrast", time_s, aim_of(known)), count=DRAWS, columns=INPUTS)
    return believed(aim_of(known), time_s=time_s, uniforms=draws, evidence=evidence)


def next_strip(known: KnownTime, evidence: Sequence[Evidence] = ()) -> Narrowing | None:
    """The step strip that would tell most of the time for the contrast aimed at; None out of reach.

    Figures: `time_s` of the strip, `left_s` and `now_s` half the interval with and without it.
    """
    aim, time_s = aim_of(known), known.rate.time_s.value
    if aim >= C_INF.low:
        return None
    belief = belief_of(known, evidence)
    now = time_for(belief, aim)
    times = sorted({to_step(max(share * time_s, 60.0), 30.0) for share in STRIP_SHARES})
    best = next_strips(belief, aim, times_s=times)[0]
    return Narrowing(
        "next-strip",
        (
            Figure("strip_s", best.time_s, "s", KINETICS_PAGE),
            Figure("left_s", best.half_left_s, "s", KINETICS_PAGE),
            Figure("now_s", (now.high - now.low) / 2, "s", now.source),
        ),
    )


def _half(belief: Belief, one_s: float, other_s: float) -> float:
    """Half of how far the middle of the contrast moves between two counted times."""
    return abs(contrast_after(belief, one_s).value - contrast_after(belief, other_s).value) / 2


def contrast_plot(code: str, belief: Belief, marks: Sequence[Mark], *, step_s: float, level: float) -> Plot:
    """Contrast against time at the reference temperature: a row each `step_s`, with band, level and marks."""
    times = [step_s / BETWEEN_ROWS * number for number in range(ROWS * BETWEEN_ROWS + 1)]
    made = [contrast_after(belief, time_s) for time_s in times]
    return Plot(
        code,
        "s",
        "contrast index",
        tuple(times),
        tuple(one.low for one in made),
        tuple(one.high for one in made),
        tuple(one.value for one in made),
        level=level,
        marks=tuple(marks),
        rows=tuple(range(0, len(times), BETWEEN_ROWS)),
    )
