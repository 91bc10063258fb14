"""What a step strip tells, in words."""

from __future__ import annotations

from tankside.core.quantities.display import number_and_band
from tankside.core.refusals import Refusal
from tankside.core.sensitometry.findings import Finding, Findings
from tankside.core.sensitometry.speed import ARITHMETIC, Speed, degrees_of
from tankside.wording.refusals import say

NAMES = {
    "contrast_index": "Contrast index",
    "average_gradient": "Average gradient",
    "gamma": "Gamma",
    "speed_point": "Speed point, log H",
    "rise": "Rise over 1.30",
    "useful_log_h": "Useful range, log H",
}
_STEPS = ((0.006, 0.001), (0.12, 0.01), (0.6, 0.05))


def step_of(doubt: float) -> float:
    """The step that a density, gradient or log exposure is shown to, for the width of its interval.

    >>> step_of(0.05), step_of(0.3), step_of(2.0)
    (0.01, 0.05, 0.1)
    """
    return next((step for width, step in _STEPS if doubt < width), 0.1)


def finding_text(found: Finding) -> str:
    """A finding with its interval, or why there is none.

    >>> from tankside.core.doubt.estimate import Estimate
    >>> finding_text(Estimate(0.6123, 0.5951, 0.6349, ""))
    '0.61 (0.59 to 0.64)'
    """
    if isinstance(found, Refusal):
        return say(found)
    return number_and_band(found, step_of(found.high - found.low))


def standard_index(index: float) -> float:
    """The standard speed next to an index, which is not known better than a third of a stop."""
    return ARITHMETIC[degrees_of(index)]


def speed_text(speed: Speed) -> str:
    """A speed with its standard pair and its interval in standard steps.

    >>> from tankside.core.doubt.estimate import Estimate
    >>> speed_text(Speed("exposure index", Estimate(96.0, 80.0, 124.0, ""), 100, 21, "straddles"))
    'Exposure index 100/21 (80 to 125): the condition of ISO 6 is met or not within the reading error.'
    """
    low, high = standard_index(speed.value.low), standard_index(speed.value.high)
    name = speed.kind[0].upper() + speed.kind[1:]
    said = {
        "met": "its contrast is that of ISO 6",
        "straddles": "the condition of ISO 6 is met or not within the reading error",
        "not met": "its contrast is not that of ISO 6",
    }[speed.condition]
    return f"{name} {speed.arithmetic:g}/{speed.degrees} ({low:g} to {high:g}): {said}."


def curve_lines(found: Findings) -> list[str]:
    """One line for each finding, base and fog first, the scatter last."""
    rows = [("Base and fog", finding_text(found.curve.base_fog))]
    rows += [(name, finding_text(getattr(found, key))) for key, name in NAMES.items()]
    width = max(len(name) for name, _ in rows)
    scatter = f"The readings lie {found.curve.scatter:.3f} about the curve (one standard deviation)."
    return [*(f"{name:<{width}}  {told}" for name, told in rows), "", scatter]
