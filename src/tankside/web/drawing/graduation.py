"""The engraved scale: marks, and numerals at the long ones, thinned so that they can be read."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil, floor
from typing import Literal

LEAST_BETWEEN_MARKS_PX = 4.0
LEAST_BETWEEN_NUMERALS_PX = 22.0
THINNING = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)

Size = Literal["short", "middle", "long"]
LENGTHS_PX: dict[Size, int] = {"short": 12, "middle": 21, "long": 30}
WIDTHS_PX: dict[Size, float] = {"short": 1.0, "middle": 1.25, "long": 2.0}


@dataclass(frozen=True, slots=True)
class Mark:
    """One engraved line: where it stands along the scale, what it stands for, how long it is."""

    at_px: float
    value: float
    size: Size

    @property
    def length_px(self) -> int:
        """Length of the line at the size of a phone page."""
        return LENGTHS_PX[self.size]

    @property
    def width_px(self) -> float:
        """Width of the line."""
        return WIDTHS_PX[self.size]


@dataclass(frozen=True, slots=True)
class Numeral:
    """Words at a long mark."""

    at_px: float
    text: str


@dataclass(frozen=True, slots=True)
class Graduation:
    """A scale from `low` to `high` over `length_px`; values grow down the page, or up it as in glass."""

    low: float
    high: float
    length_px: float
    upward: bool
    marks: tuple[Mark, ...]
    numerals: tuple[Numeral, ...]

    def at(self, value: float) -> float:
        """Where a value stands, in pixels from the top.

        >>> graduation(low=0, high=300, unit=20, length_px=150, upward=True).at(60)
        120.0
        """
        return _position(value, self.low, self.high, self.length_px, self.upward)


def plain(value: float) -> str:
    """A value as a whole number where it is one, with thousands set apart.

    >>> plain(1000.0), plain(0.5)
    ('1,000', '0.5')
    """
    return f"{value:,.10g}".replace("-", "\u2212")


def graduation(
    *,
    low: float,
    high: float,
    unit: float,
    length_px: float,
    middle: int = 5,
    long: int = 10,
    upward: bool = False,
    words: Callable[[float], str] = plain,
) -> Graduation:
    """Engrave `low` to `high` by `unit`; every `middle`-th and `long`-th unit has a longer mark.

    Short marks go first where the scale is too short for them, then middle ones, then the long ones are
    thinned by 2, 5, 10; numerals are thinned likewise. Marks are counted from zero, so that a scale that
    begins at 3 still has its long mark at 10.
    """
    if not (high > low and unit > 0 and length_px > 0):
        raise ValueError("a scale needs a length and a range that rises")
    unit_px = unit * length_px / (high - low)
    every = _engraved_every(unit_px, middle, long)
    numbered = long * _thinned(unit_px * long, LEAST_BETWEEN_NUMERALS_PX)
    marks, numerals = [], []
    for count in range(ceil(low / unit - 1e-9), floor(high / unit + 1e-9) + 1):
        if count % every:
            continue
        value = count * unit
        at_px = _position(value, low, high, length_px, upward)
        marks.append(Mark(at_px, value, _size(count, middle, long)))
        if count % numbered == 0:
            numerals.append(Numeral(at_px, words(value)))
    order = sorted(marks, key=lambda mark: mark.at_px)
    return Graduation(
        low, high, length_px, upward, tuple(order), tuple(sorted(numerals, key=lambda one: one.at_px))
    )


def _position(value: float, low: float, high: float, length_px: float, upward: bool) -> float:
    """Pixels from the top."""
    along = round((value - low) / (high - low) * length_px, 3)
    return round(length_px - along, 3) if upward else along


def _size(count: int, middle: int, long: int) -> Size:
    """Which mark the `count`-th unit gets."""
    if count % long == 0:
        return "long"
    return "middle" if count % middle == 0 else "short"


def _engraved_every(unit_px: float, middle: int, long: int) -> int:
    """How many units lie between two marks that still stand apart."""
    if unit_px >= LEAST_BETWEEN_MARKS_PX:
        return 1
    if long % middle == 0 and unit_px * middle >= LEAST_BETWEEN_MARKS_PX:
        return middle
    return long * _thinned(unit_px * long, LEAST_BETWEEN_MARKS_PX)


def _thinned(step_px: float, least_px: float) -> int:
    """The smallest thinning that keeps steps of `step_px` at least `least_px` apart."""
    for factor in THINNING:
        if step_px * factor >= least_px:
            return factor
    return ceil(least_px / step_px)
