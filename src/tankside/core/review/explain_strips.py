"""Why a time from step strips is what it is: what was believed, what each strip says alone, all of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tankside.core.development.belief import Belief, time_for
from tankside.core.development.contrast import INDUCTION_S
from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.explain_contrast import CONTRAST_PAGE, KINETICS_PAGE, ROWS, contrast_plot
from tankside.core.planning.why import Figure, Length, Mark, Narrowing, PartOfDoubt, Plot, Why
from tankside.core.quantities.display import to_step
from tankside.core.refusals import Refused
from tankside.core.review.strips import Aimed, JudgedAnswer, JudgedStrip, belief_of, best_next

REVIEW_PAGE = "docs/science/review"


def why_strip_time(
    aimed: Aimed, wanted: float, strips: Sequence[JudgedStrip], answers: Sequence[JudgedAnswer] = ()
) -> Why:
    """The time for a `wanted` contrast out of strips and answers, and what each of them adds.

    Result: s at the reference temperature; refused where the contrast is out of reach.
    Own model: docs/science/kinetics. Doubt: the reading errors, and what is believed of film and rolls.
    """
    belief = belief_of(aimed, strips, answers)
    answer = time_for(belief, wanted)
    best = best_next(belief, wanted)
    ends = belief.quantiles(belief.c_inf)
    return Why(
        "strip-time",
        None,
        answer,
        (*_alone(aimed, wanted, strips), Length("all-strips", answer, (_figure("strips", len(strips)),))),
        _parts(aimed, wanted, strips, answers),
        (
            Narrowing(
                "next-strip",
                (
                    Figure("strip_s", best.time_s, "s", KINETICS_PAGE),
                    Figure("left_s", best.half_left_s, "s", KINETICS_PAGE),
                    Figure("now_s", (answer.high - answer.low) / 2, "s", answer.source),
                ),
            ),
        ),
        (
            Figure("wanted", wanted, "contrast index", "asked"),
            Figure("first_s", aimed.first_s, "s", "believed before"),
            Figure("strips", float(len(strips)), "", "yours"),
            Figure("answers", float(len(answers)), "", "yours"),
            Figure("c_inf", float(ends[1]), "contrast index", "believed with the strips"),
            Figure("induction_s", INDUCTION_S.value, "s", INDUCTION_S.source),
        ),
        "contrast = c_inf (1 - exp(-k (t - t_i))), t counted at the reference temperature; all three drawn, "
        "and each draw weighed by how well it foretells every strip and answer",
        (KINETICS_PAGE, CONTRAST_PAGE, REVIEW_PAGE, "sheppard-mees-1907", "nietz-1922"),
        plot=_plot(belief, strips, wanted),
    )


def _alone(aimed: Aimed, wanted: float, strips: Sequence[JudgedStrip]) -> list[Length]:
    """What was believed before, and what the strip next to the wanted contrast makes of it alone."""
    told: list[Length] = []
    before = _time(aimed, wanted, ())
    if before is not None:
        first = (_figure("time_s", aimed.first_s, "s"), _figure("contrast", aimed.contrast))
        told.append(Length("before-strips", before, first))
    if len(strips) > 1:
        number = min(range(len(strips)), key=lambda n: abs(strips[n].contrast.value - wanted))
        one = strips[number]
        alone = _time(aimed, wanted, (one,))
        figures = (
            _figure("number", number + 1), _figure("counted_s", one.counted_s, "s"),
            _figure("contrast", one.contrast.value),
        )  # fmt: skip
        told += [] if alone is None else [Length("one-strip", alone, figures)]
    return told


def _time(aimed: Aimed, wanted: float, strips: Sequence[JudgedStrip]) -> Estimate | None:
    """The time that some of the strips tell, None where it is out of their reach."""
    try:
        return time_for(belief_of(aimed, strips), wanted)
    except Refused:
        return None


def _parts(
    aimed: Aimed, wanted: float, strips: Sequence[JudgedStrip], answers: Sequence[JudgedAnswer]
) -> tuple[PartOfDoubt, ...]:
    """What the reading errors add, and what would be left if nobody misread."""
    exact = [
        replace(one, contrast=replace(one.contrast, low=one.contrast.value, high=one.contrast.value))
        for one in strips
    ]
    whole, left = (
        (told.high - told.low) / 2
        for told in (time_for(belief_of(aimed, read, answers), wanted) for read in (strips, exact))
    )
    parts = [PartOfDoubt("film-and-rolls", min(left, whole)),
             PartOfDoubt("readings", max(whole**2 - left**2, 0.0) ** 0.5)]  # fmt: skip
    return tuple(sorted(parts, key=lambda part: -part.half_width))


def _plot(belief: Belief, strips: Sequence[JudgedStrip], wanted: float) -> Plot:
    """Contrast against time, the contrast wanted, and every strip where it was read."""
    last_s = 1.2 * max([one.counted_s for one in strips], default=600.0)
    marks = [Mark("strip", one.counted_s, one.contrast.value) for one in strips]
    step_s = max(30.0, to_step(last_s / ROWS, 30.0))
    return contrast_plot("strips", belief, marks, step_s=step_s, level=wanted)


def _figure(code: str, value: float, unit: str = "") -> Figure:
    return Figure(code, float(value), unit, "yours")
