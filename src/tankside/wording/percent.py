"""Percentages with their sign and their interval."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.display import to_step

LEAST_PERCENT = 0.5
MINUS = "\N{MINUS SIGN}"


def percent_band(of: Estimate) -> str:
    """A percentage with its interval, left out where it has no width.

    >>> percent_band(Estimate(-8.1, -10.5, -6.5, "%")), percent_band(Estimate(5.0, 5.0, 5.0, "%"))
    ('−8 % (−10 to −6)', '+5 %')
    """
    if of.high - of.low < LEAST_PERCENT:
        return f"{signed(of.value)} %"
    value, low, high = whole_percent(of)
    return f"{signed(value)} % ({signed(low)} to {signed(high)})"


def whole_percent(of: Estimate) -> tuple[float, float, float]:
    """Value, low and high of a percentage as they are told: each to the nearest whole percent.

    >>> whole_percent(Estimate(13.2, 9.8, 17.1, "%"))
    (13.0, 10.0, 17.0)
    """
    return to_step(of.value, 1.0), to_step(of.low, 1.0), to_step(of.high, 1.0)


def signed(percent: float) -> str:
    """Whole percent with its sign, a real minus and no hyphen; nothing has none.

    >>> signed(9.6), signed(-8.1), signed(-0.2)
    ('+10', '−8', '0')
    """
    return f"{percent:+.0f}".replace("-", MINUS) if abs(percent) >= LEAST_PERCENT else "0"
