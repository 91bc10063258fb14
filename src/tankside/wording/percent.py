"""Percentages with their sign and their interval."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate

LEAST_PERCENT = 0.5


def percent_band(of: Estimate) -> str:
    """A percentage with its interval, left out where it has no width.

    >>> percent_band(Estimate(-8.1, -10.5, -6.5, "%")), percent_band(Estimate(5.0, 5.0, 5.0, "%"))
    ('-8 % (-10 to -6)', '+5 %')
    """
    if of.high - of.low < LEAST_PERCENT:
        return f"{signed(of.value)} %"
    return f"{signed(of.value)} % ({signed(of.low)} to {signed(of.high)})"


def signed(percent: float) -> str:
    """Whole percent with its sign; nothing has none.

    >>> signed(9.6), signed(-0.2)
    ('+10', '0')
    """
    return f"{percent:+.0f}" if abs(percent) >= LEAST_PERCENT else "0"
