"""The verdict on one development, in one sentence."""

from __future__ import annotations

from tankside.core.planning.plan import Development
from tankside.core.quantities.display import (
    FACTOR_STEP,
    number_and_band,
    temperature_text,
    time_text,
    to_step,
)
from tankside.core.quantities.preferences import Preferences
from tankside.core.review.differed import OfContrast
from tankside.core.review.predicted import Counted
from tankside.wording.deviations import say_contrast
from tankside.wording.percent import percent_band
from tankside.wording.refusals import PLAIN

COUNTED_STEP_S = 5.0
"""What a development counts as rests on a thermometer: it is not known better than this, in s."""


def verdict(counted: Counted | None, preferences: Preferences = PLAIN) -> str:
    """What a development counts as, beside what was meant, and what that asks for.

    Own model: docs/science/review.md. Doubt: that told.
    """
    if counted is None:
        return (
            "What it counts as cannot be said: it is not over, its time stands in a table only, "
            "or it was colder or warmer than its times are known for."
        )
    had, due = (_counted(one) for one in (counted.counted_s, counted.due_s))
    at = temperature_text(counted.ref_c, preferences)
    said = f"Counts as {had} of development at {at} where {due} was meant"
    if counted.size == "too small to see":
        inside = _inside(counted)
        return f"{said}{inside}. Nothing to correct."
    return f"{said}. {say_contrast(OfContrast(counted.percent, counted.size))}"


def why_counted(
    counted: Counted | None, planned: Development, preferences: Preferences = PLAIN
) -> tuple[tuple[str, str], ...]:
    """What the verdict was worked out from: names and figures, with their doubt."""
    if counted is None:
        return ()
    q10, miss = planned.rate.q10, counted.percent
    return (
        ("On the clock", time_text(counted.had_s)),
        ("Mean temperature", temperature_text(counted.mean_c, preferences)),
        ("Factor per 10 K", f"{number_and_band(q10, FACTOR_STEP)}, {q10.source}"),
        ("Counts as", f"{_counted(counted.counted_s)} at {temperature_text(counted.ref_c, preferences)}"),
        ("Meant", _counted(counted.due_s)),
        ("Contrast against the aim", percent_band(miss)),
    )


def read_words(counted: Counted | None) -> str:
    """How far the verdict rests on readings."""
    if counted is None:
        return ""
    if counted.readings == 0:
        return "Nobody read the tank: the temperature is the plan's."
    times = {1: "once", 2: "twice"}.get(counted.readings, f"{counted.readings} times")
    return f"The tank was read {times}."


def _counted(time_s: float) -> str:
    return time_text(to_step(time_s, COUNTED_STEP_S))


def _inside(counted: Counted) -> str:
    if counted.inside_s is None or not counted.inside:
        return ""
    return f", inside your ± {time_text(max(5.0, to_step(counted.inside_s, 5.0)))}"
