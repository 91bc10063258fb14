"""A plain field for the plots of the science pages: scales outside, no grid, no box, no legend."""

from __future__ import annotations

from io import StringIO

import matplotlib as mpl
from matplotlib.axes import Axes
from matplotlib.figure import Figure

GROUND = "#EFF2EC"
INK = "#13201D"
SECOND = "#44514C"
DEVELOPER = "#592607"
LIQUIDS = {"develop": DEVELOPER, "stop": "#8F720B", "fix": "#671D8B", "wash": "#008576", "wetting": "#2B425C"}
"""Baths in the colours that the pages give them (web/static/css/tokens.css)."""


def field(
    *,
    across: str,
    up: str,
    across_range: tuple[float, float],
    up_range: tuple[float, float],
    high_in: float = 3.7,
) -> Axes:
    """An empty field whose scales stand outside it, named with their units.

    It is narrow, so that on a phone 360 px wide its letters are still ten px high.
    """
    figure = Figure(figsize=(5.2, high_in), facecolor=GROUND)
    axes = figure.add_axes((0.155, 0.65 / high_in, 0.56, 1 - 0.85 / high_in), facecolor=GROUND)
    for side, spine in axes.spines.items():
        spine.set_visible(side in ("left", "bottom"))
        spine.set_position(("outward", 6))
        spine.set_color(SECOND)
    axes.tick_params(colors=SECOND, labelsize=10, direction="out")
    axes.set_xlabel(across, color=INK, fontsize=11)
    axes.set_ylabel(up, color=INK, fontsize=11, labelpad=2)
    axes.set_xlim(across_range)
    axes.set_ylim(up_range)
    return axes


def rows_alone(axes: Axes) -> None:
    """Take the upright scale away, where rows are named and not measured."""
    axes.set_yticks([])
    axes.spines["left"].set_visible(False)


def name_end(axes: Axes, x: float, y: float, words: str, *, colour: str = INK) -> None:
    """Write a curve's name where it ends."""
    axes.annotate(
        words, (x, y), xytext=(8, 0), textcoords="offset points", va="center", fontsize=10, color=colour,
        annotation_clip=False, linespacing=1.15,
    )  # fmt: skip


def svg_of(axes: Axes, *, title: str) -> str:
    """The figure as SVG with text as text, alike each time it is drawn.

    matplotlib takes both settings only from its rc, so they are set for this one drawing and put back.
    """
    figure = axes.get_figure()
    if not isinstance(figure, Figure):
        raise TypeError("an axes of a plot belongs to a figure")
    written = StringIO()
    with mpl.rc_context({"svg.hashsalt": title, "svg.fonttype": "none"}):
        figure.savefig(written, format="svg", metadata={"Date": None, "Creator": None, "Title": title})
    return "\n".join(line.rstrip() for line in written.getvalue().splitlines()) + "\n"
