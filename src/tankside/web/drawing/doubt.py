"""Doubt as a length: an interval on the same scale as its value."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.web.drawing.graduation import Graduation
from tankside.web.drawing.shapes import Box

LEAST_PX = 2.0


@dataclass(frozen=True, slots=True)
class DoubtLength:
    """A hatched length from low to high, cut at the ends of its scale; `at_px` is the value's own line."""

    box: Box
    at_px: float | None
    open_above: bool
    open_below: bool


def doubt_length(
    scale: Graduation,
    *,
    low: float,
    high: float,
    value: float | None = None,
    x: float,
    width_px: float = 11.0,
) -> DoubtLength:
    """The interval `low` to `high` along `scale`; an end that lies off it is left open."""
    if high < low:
        raise ValueError("an interval rises from low to high")
    ends = sorted((scale.at(low), scale.at(high)))
    top, bottom = max(ends[0], 0.0), min(ends[1], scale.length_px)
    height = max(bottom - top, LEAST_PX)
    inside = value is not None and scale.low <= value <= scale.high
    return DoubtLength(
        Box(x, top, width_px, height),
        scale.at(value) if value is not None and inside else None,
        ends[0] < 0,
        ends[1] > scale.length_px,
    )


def lengths(parts: dict[str, float], *, longest_px: float) -> tuple[tuple[str, float, float], ...]:
    """Parts of a doubt as lengths, largest first: name, value, pixels.

    >>> lengths({"rate": 8, "strips": 20}, longest_px=80)
    (('strips', 20, 80.0), ('rate', 8, 32.0))
    """
    largest = max(parts.values(), default=0.0)
    order = sorted(parts.items(), key=lambda part: -part[1])
    return tuple((name, value, longest_px * value / largest if largest else 0.0) for name, value in order)
