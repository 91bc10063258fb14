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


def field(*, across: str, up: str, across_range: tuple[float, float], up_range: tuple[float, float]) -> Axes:
    """An empty field whose scales stand outside it, named with their units."""
    figure = Figure(figsize=(7.2, 3.8), facecolor=GROUND)
    axes = figure.add_axes((0.11, 0.16, 0.68, 0.78), facecolor=GROUND)
    for side, spine in axes.spines.items():
        spine.set_visible(side in ("left", "bottom"))
        spine.set_position(("outward", 6))
        spine.set_color(SECOND)
    axes.tick_params(colors=SECOND, labelsize=9, direction="out")
    axes.set_xlabel(across, color=INK, fontsize=10)
    axes.set_ylabel(up, color=INK, fontsize=10)
    axes.set_xlim(across_range)
    axes.set_ylim(up_range)
    return axes


def name_end(axes: Axes, x: float, y: float, words: str, *, colour: str = INK) -> None:
    """Write a curve's name where it ends."""
    axes.annotate(
        words, (x, y), xytext=(8, 0), textcoords="offset points", va="center", fontsize=9, color=colour,
        annotation_clip=False,
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
