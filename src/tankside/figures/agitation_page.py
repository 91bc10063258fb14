"""The plot of docs/science/agitation: what three patterns ask of the hands in one development."""

from __future__ import annotations

from matplotlib.axes import Axes

from tankside.core.agitation.hands import hand_movements
from tankside.core.agitation.patterns import ROTARY, STAND, Agitation
from tankside.figures.plain import DEVELOPER, INK, SECOND, field, name_end, rows_alone

END_S, POUR_S = 570.0, 15.0
PATTERNS = (
    ("10 s each\nminute", Agitation("inversion")),
    ("5 s each\nhalf minute", Agitation("inversion", 30.0, 5.0, 30.0, 5.0)),
    ("continuous", ROTARY),
    ("stand", STAND),
)


def agitation() -> Axes:
    """Hand movements of four patterns in 9:30; a thin line is how far each may slip."""
    axes = field(across="min after the pour", up="", across_range=(0, 9.5), up_range=(-0.6, 3.6), high_in=2.6)
    for row, (name, pattern) in enumerate(reversed(PATTERNS)):
        for one in hand_movements(pattern, pour_s=POUR_S, end_s=END_S):
            axes.plot(
                [one.earliest_s / 60, (one.latest_s + one.lasts_s) / 60],
                [row, row],
                color=SECOND,
                linewidth=1.2,
            )
            axes.plot(
                [one.start_s / 60, one.end_s / 60], [row, row],
                color=DEVELOPER if row == len(PATTERNS) - 1 else INK, linewidth=9, solid_capstyle="butt",
            )  # fmt: skip
        name_end(axes, 9.5, row, name)
    rows_alone(axes)
    return axes
