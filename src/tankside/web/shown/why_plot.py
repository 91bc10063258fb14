"""A plot of a why as its page shows it, and the same figures as a table."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.planning.why import Plot
from tankside.core.quantities.preferences import Preferences
from tankside.web.drawing.plot import DrawnPlot, Names, drawn_plot
from tankside.wording.permanence import WELL_BELOW
from tankside.wording.why import PLOTS
from tankside.wording.whys.amounts import UNIT_WORDS, value_text


@dataclass(frozen=True, slots=True)
class ShownPlot:
    """The drawing with its words, then the table: each of its rows begins with the value across."""

    heading: str
    across: str
    counts: str
    drawn: DrawnPlot
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def shown_plot(plot: Plot, preferences: Preferences) -> ShownPlot:
    """A plot ready for its template."""
    words = PLOTS[plot.code]

    def up(value: float) -> str:
        return value_text(value, plot.up_unit, preferences)

    def bare(value: float | None) -> str:
        return WELL_BELOW if value is None else up(value).split()[0]

    def across(value: float) -> str:
        return value_text(value, plot.across_unit, preferences)

    marks = tuple(words.marks[one.code] for one in plot.marks)
    lines = ((words.low, plot.low), (words.middle, plot.middle), (words.high, plot.high))
    shown = [(name, values) for name, values in lines if values]
    return ShownPlot(
        words.heading,
        words.across,
        UNIT_WORDS.get(plot.up_unit) or up(1.0).split()[-1],
        drawn_plot(
            plot,
            Names(words.low, words.high, words.middle, words.level, marks),
            say_up=bare,
            say_across=across,
        ),
        (words.across, *(name for name, _ in shown)),
        tuple((across(plot.across[row]), *(bare(values[row]) for _, values in shown)) for row in plot.rows),
    )
