"""A control chart: single values in their order, limits as engraved lines, odd points by their number."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor

from tankside.core.sensitometry.control_strips import ControlChart
from tankside.web.drawing.family import Layout
from tankside.web.drawing.field import Field
from tankside.web.drawing.graduation import graduation

LAPTOP = Layout(640.0, 60.0, 26.0, (560.0, 240.0), 0.6, 9.0, "laptop")
PHONE = Layout(288.0, 52.0, 26.0, (226.0, 220.0), 0.6, 7.0, "phone")
ABOVE_PX = 14.0


@dataclass(frozen=True, slots=True)
class Named:
    """The number of an odd point, joined to it."""

    name: str
    x: float
    y: float
    path: str


@dataclass(frozen=True, slots=True)
class DrawnChart:
    """The chart as paths; without limits the mean alone."""

    layout: Layout
    field: Field
    counts: str
    mean_y: float
    limits_y: tuple[float, ...]
    line: str
    weighted: str
    within: str
    outside: str
    named: tuple[Named, ...]
    height_px: float


def drawn_chart(chart: ControlChart, *, layout: Layout) -> DrawnChart:
    """Draw it; the scale holds every point and both limits."""
    values = chart.values
    ends = [*values, *((chart.limits.lower, chart.limits.upper) if chart.limits else ())]
    low, high = floor(min(ends) / 0.05 - 0.4) * 0.05, ceil(max(ends) / 0.05 + 0.4) * 0.05
    up = graduation(
        low=low, high=high, unit=0.01, middle=5, long=5, upward=True, length_px=layout.field_px[1],
        words=lambda value: f"{value:.2f}",
    )  # fmt: skip
    along = graduation(
        low=0, high=len(values) + 1, unit=1, middle=1, long=1, length_px=layout.field_px[0],
        words=lambda value: f"{value:.0f}" if 1 <= value <= len(values) else "",
    )  # fmt: skip
    field = Field(layout.left, layout.top, up, along, layout.grow)
    mean = chart.limits.mean if chart.limits else sum(values) / len(values)
    return DrawnChart(
        layout,
        field,
        "density difference",
        field.y(mean),
        (field.y(chart.limits.lower), field.y(chart.limits.upper)) if chart.limits else (),
        field.line([(n + 1, one) for n, one in enumerate(values)]),
        field.line([(n + 1, one) for n, one in chart.weighted]),
        _signs(chart, field, layout, odd=False),
        _signs(chart, field, layout, odd=True),
        tuple(_named(field, n, values[n]) for n in chart.outside),
        field.bottom + 64,
    )


def _signs(chart: ControlChart, field: Field, layout: Layout, *, odd: bool) -> str:
    """Open squares, or filled ones for odd points."""
    return " ".join(
        field.mark("open square", n + 1, value, size_px=layout.sign_px)
        for n, value in enumerate(chart.values)
        if (n in chart.outside) is odd
    )


def _named(field: Field, at: int, value: float) -> Named:
    """Its number above the point."""
    x, y = field.x(at + 1), field.y(value) - ABOVE_PX
    return Named(str(at + 1), x, y - 3, f"M{x:.1f} {y:.1f}v{ABOVE_PX - 6:g}")
