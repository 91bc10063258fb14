"""The family of curves of one combination, and contrast against time, as values that templates draw."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

import numpy as np

from tankside.core.development.belief import Belief, contrast_after
from tankside.core.sensitometry.curve import Curve, half_width
from tankside.core.sensitometry.shape import SPEED_POINT_D
from tankside.web.drawing.field import Field, Points, Sign
from tankside.web.drawing.graduation import Graduation, graduation
from tankside.web.drawing.leaders import Words, spread

NAME_PX = 20.0
EVERY = 25
"""Curves are tabled every 0.002; every 25th of these is enough for a drawn line."""

LEAST_DENSITY, LEAST_TIME_MIN, LINES = 1.2, 4.0, 40


@dataclass(frozen=True, slots=True)
class Layout:
    """Where a plot stands, in pixels; the numerals of its side stand left of `left`.

    Along its foot every `long`-th mark is a long one.
    """

    width_px: float
    left: float
    top: float
    field_px: tuple[float, float]
    grow: float
    sign_px: float
    kind: str
    long: int = 10


LAPTOP = Layout(620.0, 84.0, 16.0, (470.0, 500.0), 1.0, 9.0, "laptop")
PHONE = Layout(288.0, 52.0, 16.0, (190.0, 330.0), 0.6, 6.0, "phone", long=20)
TIMES_LAPTOP = Layout(400.0, 52.0, 12.0, (330.0, 150.0), 0.6, 9.0, "laptop")
TIMES_PHONE = Layout(288.0, 52.0, 12.0, (220.0, 150.0), 0.6, 8.0, "phone")


@dataclass(frozen=True, slots=True)
class Wish:
    """One curve to draw: its fit, its readings above base and fog, and the words at its end."""

    curve: Curve
    readings: Points
    sign: Sign
    name: str
    chosen: bool
    shift: float = 0.0


@dataclass(frozen=True, slots=True)
class DrawnCurve:
    """One curve: its line, the signs of its readings, the band of the chosen one, its name if it has room."""

    line: str
    signs: str
    sign: Sign
    band: str
    name: str
    name_y: float | None
    chosen: bool


@dataclass(frozen=True, slots=True)
class Family:
    """All curves on one field; `speed` is where the chosen one has 0.10 above base and fog."""

    layout: Layout
    field: Field
    curves: tuple[DrawnCurve, ...]
    speed: tuple[float, float] | None
    counts: str
    height_px: float


@dataclass(frozen=True, slots=True)
class AgainstTime:
    """Contrast against time as it is believed, what was read, and the time for the wanted contrast."""

    layout: Layout
    field: Field
    line: str
    band: str
    signs: tuple[tuple[Sign, str], ...]
    wanted: tuple[float, float] | None
    height_px: float


def family(wishes: Sequence[Wish], *, layout: Layout, counts: str) -> Family:
    """Draw the curves, each named at its end; names that would touch are pushed apart."""
    field = _field(wishes, layout)
    ends = sorted(wishes, key=lambda one: -float(one.curve.shape.net[-1]))
    placed = spread(
        [Words(field.y(min(float(one.curve.shape.net[-1]), field.up.high)), NAME_PX) for one in ends],
        top_px=0, bottom_px=field.bottom,
    )  # fmt: skip
    names = {id(one): leader.words_px for one, leader in zip(ends, placed, strict=True)}
    chosen = next((one for one in wishes if one.chosen), None)
    return Family(
        layout,
        field,
        tuple(
            _drawn(one, field, layout, names[id(one)]) for one in sorted(wishes, key=lambda one: one.chosen)
        ),
        _speed(chosen, field),
        counts,
        field.bottom + 62,
    )


def against_time(
    belief: Belief,
    read: Sequence[tuple[float, float, Sign]],
    *,
    wanted: tuple[float, float] | None,
    layout: Layout,
) -> AgainstTime:
    """Contrast index against minutes; `read` are times in s and contrasts, `wanted` one contrast and time."""
    times = [time_s / 60 for time_s, _, _ in read] + ([wanted[1] / 60] if wanted else [])
    low, high = max(1, floor(min(times) * 0.7)), ceil(max(max(times) * 1.2, min(times) + LEAST_TIME_MIN))
    minutes = np.linspace(low, high, LINES)
    told = [contrast_after(belief, 60 * float(one)) for one in minutes]
    seen = [one.low for one in told] + [one.high for one in told] + [contrast for _, contrast, _ in read]
    up = _scale(
        (0.1 * floor(min(seen) / 0.1), 0.1 * ceil(max(seen) / 0.1)),
        0.02,
        layout.field_px[1],
        long=5,
        upward=True,
    )
    along = graduation(
        low=low, high=high, unit=0.5 if high - low < 16 else 1, middle=2, long=4, length_px=layout.field_px[0]
    )
    field = Field(layout.left, layout.top, up, along, layout.grow)
    at = [float(one) for one in minutes]
    return AgainstTime(
        layout,
        field,
        field.line([(x, one.value) for x, one in zip(at, told, strict=True)]),
        field.band(
            [(x, one.low) for x, one in zip(at, told, strict=True)],
            [(x, one.high) for x, one in zip(at, told, strict=True)],
        ),
        tuple((sign, field.mark(sign, t / 60, c, size_px=layout.sign_px)) for t, c, sign in read),
        (field.x(wanted[1] / 60), field.y(wanted[0])) if wanted else None,
        field.bottom + 56,
    )


def _field(wishes: Sequence[Wish], layout: Layout) -> Field:
    """Scales that hold every curve: densities from 0 by tenths, log exposure by halves."""
    lows = [one.shift + min(x for x, _ in one.readings) for one in wishes]
    highs = [one.shift + max(x for x, _ in one.readings) for one in wishes]
    top = max(LEAST_DENSITY, *(float(one.curve.shape.net[-1]) for one in wishes))
    across = (floor((min(lows) - 0.1) * 5) / 5, ceil((max(highs) + 0.05) * 10) / 10)
    along = _scale(across, 0.05, layout.field_px[0], long=layout.long)
    up = _scale((0.0, ceil((top + 0.1) * 5) / 5), 0.02, layout.field_px[1], upward=True)
    return Field(layout.left, layout.top, up, along, layout.grow)


def _scale(
    ends: tuple[float, float], unit: float, length_px: float, *, long: int = 10, upward: bool = False
) -> Graduation:
    """A scale with one decimal at its long marks."""
    return graduation(
        low=ends[0], high=ends[1], unit=unit, length_px=length_px, middle=5, long=long, upward=upward,
        words=lambda value: f"{value:.1f}".replace("-0.0", "0.0").replace("-", "\u2212"),
    )  # fmt: skip


def _drawn(one: Wish, field: Field, layout: Layout, name_y: float | None) -> DrawnCurve:
    """One curve of the family."""
    shape, half = one.curve.shape, half_width(one.curve)
    first = min(x for x, _ in one.readings)
    places = [n for n in range(0, len(shape.log_h), EVERY) if shape.log_h[n] >= first - 0.1]
    places += [len(shape.log_h) - 1]
    at = [(float(shape.log_h[n]) + one.shift, float(shape.net[n]), float(half[n])) for n in places]
    return DrawnCurve(
        field.line([(x, y) for x, y, _ in at]),
        " ".join(
            field.mark(one.sign, x + one.shift, max(y, 0.0), size_px=layout.sign_px)
            for x, y in one.readings
            if y <= field.up.high
        ),
        one.sign,
        field.band([(x, y - w) for x, y, w in at], [(x, y + w) for x, y, w in at]) if one.chosen else "",
        one.name,
        name_y,
        one.chosen,
    )


def _speed(chosen: Wish | None, field: Field) -> tuple[float, float] | None:
    """Where the chosen curve crosses 0.10 above base and fog."""
    if chosen is None or not chosen.curve.shape.net[0] <= SPEED_POINT_D <= chosen.curve.shape.net[-1]:
        return None
    x = chosen.curve.shape.log_h_at(SPEED_POINT_D) + chosen.shift
    return (field.x(x), field.y(SPEED_POINT_D)) if x >= field.along.low else None
