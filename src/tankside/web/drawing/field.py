"""A field between two engraved scales, both outside it: one up its left side, one along its foot."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from tankside.web.drawing.graduation import Graduation, Mark

Sign = Literal["open square", "filled square", "cross", "open ring", "filled ring", "plus"]
SIGNS: tuple[Sign, ...] = ("open square", "filled square", "cross", "open ring", "filled ring", "plus")

Points = Sequence[tuple[float, float]]
SHAPES: dict[Sign, str] = {
    "open square": "M{l} {t}h{w}v{w}h-{w}z",
    "filled square": "M{l} {t}h{w}v{w}h-{w}z",
    "cross": "M{l} {t}l{w} {w}M{l} {b}l{w} -{w}",
    "open ring": "M{l} {y}a{r} {r} 0 1 0 {w} 0a{r} {r} 0 1 0 -{w} 0z",
    "filled ring": "M{l} {y}a{r} {r} 0 1 0 {w} 0a{r} {r} 0 1 0 -{w} 0z",
    "plus": "M{l} {y}h{w}M{x} {t}v{w}",
}


@dataclass(frozen=True, slots=True)
class Field:
    """The field itself, its top left corner and its two scales."""

    left: float
    top: float
    up: Graduation
    along: Graduation
    grow: float = 1.0

    @property
    def right(self) -> float:
        """Its right side."""
        return self.left + self.along.length_px

    @property
    def bottom(self) -> float:
        """Its foot."""
        return self.top + self.up.length_px

    def x(self, value: float) -> float:
        """Where a value lies along the foot."""
        return self.left + self.along.at(value)

    def y(self, value: float) -> float:
        """Where a value lies up the side."""
        return self.top + self.up.at(value)

    def length(self, mark: Mark) -> float:
        """How long a mark of either scale is here."""
        return round(self.grow * mark.length_px, 1)

    def line(self, points: Points) -> str:
        """A path through points, cut where they leave the field."""
        inside = [
            (x, y)
            for x, y in points
            if self.along.low <= x <= self.along.high and self.up.low <= y <= self.up.high
        ]
        return "M" + "L".join(f"{self.x(x):.1f} {self.y(y):.1f}" for x, y in inside) if inside else ""

    def band(self, low: Points, high: Points) -> str:
        """The area between two lines that share their places along the foot, cut at head and foot."""
        whole = [*_between(low, self), *reversed(_between(high, self))]
        return "M" + "L".join(f"{self.x(x):.1f} {self.y(y):.1f}" for x, y in whole) + "Z" if whole else ""

    def mark(self, sign: Sign, x: float, y: float, *, size_px: float = 9.0) -> str:
        """The path of a sign at a value."""
        at_x, at_y, half = self.x(x), self.y(y), size_px / 2
        return SHAPES[sign].format(
            l=f"{at_x - half:.1f}", t=f"{at_y - half:.1f}", b=f"{at_y + half:.1f}", w=f"{size_px:g}",
            x=f"{at_x:.1f}", y=f"{at_y:.1f}", r=f"{half:g}",
        )  # fmt: skip


def _between(points: Points, field: Field) -> list[tuple[float, float]]:
    """Points along the field, each held between its head and foot."""
    return [
        (x, min(max(y, field.up.low), field.up.high))
        for x, y in points
        if field.along.low <= x <= field.along.high
    ]
