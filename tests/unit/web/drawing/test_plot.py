"""A plot of a why: scales, lines, and names that do not touch."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tankside.core.planning.why import Mark, Plot
from tankside.web.drawing.plot import FIELD_HEIGHT_PX, FIELD_WIDTH_PX, NAME_LINE_PX, Names, drawn_plot
from tankside.web.drawing.tens import by_tens

FALLING = Plot(
    "wash", "fills", "g/m2", (0.0, 1.0, 2.0, 3.0), (4.0, 0.09, None, None), (4.0, 0.4, 0.03, 0.009),
    level=0.014, by_tens=True, rows=(0, 1, 2, 3),
)  # fmt: skip
RISING = Plot(
    "contrast", "s", "contrast index", (0.0, 600.0), (0.0, 0.55), (0.0, 0.57), (0.0, 0.56),
    level=0.56, marks=(Mark("tonight", 300.0, 0.3),),
)  # fmt: skip
NAMES = Names("low", "high", "told", "limit", ())


def say(value: float) -> str:
    """A value as it is."""
    return f"{value:g}"


def test_tens_stand_evenly() -> None:
    """Each ten takes as much of the scale as the next; a value beyond has no place on it."""
    scale = by_tens(low=0.01, high=10.0, length_px=300)

    assert [0.0, 100.0, 200.0, 300.0] == [scale.at(one) for one in (10.0, 1.0, 0.1, 0.01)]
    with pytest.raises(ValueError, match="above zero"):
        by_tens(low=0.0, high=1.0, length_px=100)


def test_what_is_told_no_further_runs_out_at_the_foot() -> None:
    """The line of the quick source ends at the foot of the scale, the slow one goes on."""
    drawn = drawn_plot(FALLING, NAMES, say_up=say, say_across=say)
    low, high = drawn.edges

    assert low.endswith(f"{FIELD_HEIGHT_PX:g}")
    assert 3 == low.count("L") + 1
    assert high.split("L")[-1].startswith(f"{FIELD_WIDTH_PX:g} ")
    assert "" == drawn.middle


def test_names_stand_a_line_apart() -> None:
    """Three lines that end within a few pixels, and the aim, can all be read."""
    drawn = drawn_plot(RISING, Names("low", "high", "told", "aim", ("tonight",)), say_up=say, say_across=say)
    column = sorted(name.y for name in drawn.names if name.words != "tonight")

    assert 4 == len(column)
    assert all(lower - upper >= NAME_LINE_PX for upper, lower in pairwise(column))
    assert ["told", "tonight"] == sorted(name.words for name in drawn.names if name.told)
