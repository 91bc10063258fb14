"""The words of a bath as it fills the page: what it is left of, how long it may stay, where it ends."""

from __future__ import annotations

from tankside.core.permanence.wash_plan import told_residual
from tankside.core.permanence.washing import FLOOR_G_M2
from tankside.core.quantities.display import time_and_doubt
from tankside.core.run.advise_wash import Left


def minutes(seconds: float) -> str:
    """Minutes and seconds as a clock reads.

    >>> minutes(560.4)
    '9:20'
    """
    whole, rest = divmod(round(max(seconds, 0.0)), 60)
    return f"{whole}:{rest:02d}"


def left_of(end_s: float, half_width_s: float | None, temp_c: float | None) -> str:
    """'left of 9:20 ± 0:25, tank at 19.2 °C'; time and doubt in steps of five seconds."""
    time = minutes(end_s) if half_width_s is None else time_and_doubt(end_s, doubt_s=half_width_s)
    tank = "" if temp_c is None else f", tank at {temp_c:.1f} °C"
    return f"left of {time}{tank}"


def at_least(least_s: float, aim_s: float) -> str:
    """What a bath that may stay longer is left of."""
    return f"left of {minutes(aim_s)}" if least_s < aim_s else f"at least {minutes(aim_s)}"


def residual(value: float | None) -> str:
    """A residual in g/m2 with no more digits than its doubt allows.

    >>> residual(4.64), residual(0.0371), residual(None)
    ('4.6', '0.037', 'well below 0.002')
    """
    told = None if value is None else told_residual(value)
    return f"well below {FLOOR_G_M2:g}" if told is None else f"{told:g}"


def after_fill(n: int, value: float | None) -> str:
    """What one fill came to."""
    return f"{residual(value)} after fill {n}"


def last_doubt(last: Left) -> str:
    """From the quick to the slow end of what sources say, and that nothing is tested yet."""
    quick, slow = residual(last.quick_g_m2), residual(last.slow_g_m2)
    return "A plan, not a test." if quick == slow else f"{quick} to {slow}; a plan, not a test."
