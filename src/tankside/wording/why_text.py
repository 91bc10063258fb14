"""A whole why as lines of text, for the terminal."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tankside.core.planning.why import Plot, Why
from tankside.core.quantities.preferences import Preferences
from tankside.core.sources import Source
from tankside.wording.permanence import WELL_BELOW
from tankside.wording.why import (
    PLOTS,
    answer_sentence,
    doubt_text,
    figure_words,
    leaves_out_sentences,
    length_words,
    narrows_sentences,
    part_words,
    title,
)
from tankside.wording.whys.amounts import value_text


def why_lines(why: Why, preferences: Preferences, known: Mapping[str, Source]) -> Iterator[str]:
    """Everything that its page says, in the same words; `known` is the bibliography."""
    half = doubt_text(why, preferences)
    yield title(why, preferences)
    yield answer_sentence(why, preferences)
    for one in why.lengths:
        yield "  {}: {}".format(*length_words(one, preferences))
    if why.parts:
        yield f"Where the ± {half} comes from:" if half else "Where its doubt comes from:"
        yield from (f"  {part_words(part, why, preferences)}" for part in why.parts)
    yield from _list("What would narrow it:", narrows_sentences(why, preferences))
    yield from _list("What it leaves out:", leaves_out_sentences(why))
    if why.plot is not None:
        yield from plot_lines(why.plot, preferences)
    yield from _list("Worked out from:", (figure_words(one, preferences) for one in why.inputs))
    yield from _list("Formula:", (why.formula,))
    yield from _list("Sources:", (str(known.get(one, one)) for one in why.references))


def plot_lines(plot: Plot, preferences: Preferences) -> Iterator[str]:
    """What the page draws, as a table."""
    words = PLOTS[plot.code]

    def bare(value: float | None) -> str:
        return WELL_BELOW if value is None else value_text(value, plot.up_unit, preferences)

    columns = [(words.low, plot.low), (words.middle, plot.middle), (words.high, plot.high)]
    shown = [(name, values) for name, values in columns if values]
    rows = [[words.across, *(name for name, _ in shown)]]
    rows += [
        [
            value_text(plot.across[at], plot.across_unit, preferences),
            *(bare(values[at]) for _, values in shown),
        ]
        for at in plot.rows
    ]
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    yield f"{words.heading}:"
    for row in rows:
        yield "  " + "  ".join(f"{one:>{width}}" for one, width in zip(row, widths, strict=True))


def _list(heading: str, lines: Iterator[str] | tuple[str, ...]) -> Iterator[str]:
    """Lines under a heading; nothing where there are none."""
    told = tuple(lines)
    if told:
        yield heading
        yield from (f"  {one}" for one in told)
