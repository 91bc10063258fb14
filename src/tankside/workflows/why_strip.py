"""Why a number of a step strip is what it is, from its readings."""

from __future__ import annotations

from tankside.core.methods.step_strips import StepStrip
from tankside.core.planning.explain_curve import why_curve
from tankside.core.planning.explain_speed import why_speed
from tankside.core.planning.why import Why
from tankside.workflows.read_densities import found_on


def why_contrast_of(strip: StepStrip) -> Why:
    """Why a strip has its contrast index; refused where it has none."""
    return why_curve(found_on(strip), reading_sd=strip.reading_sd)


def why_speed_of(strip: StepStrip) -> Why:
    """Why a strip has its speed, index or speed point; refused where it has none."""
    return why_speed(found_on(strip), strip.exposed, reading_sd=strip.reading_sd)
