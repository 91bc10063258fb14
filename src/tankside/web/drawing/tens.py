"""A scale engraved by tens, for values that fall through several of them."""

from __future__ import annotations

from math import ceil, floor, log10

from tankside.web.drawing.graduation import Graduation, Mark, Numeral, Size, plain

LONG, MIDDLE = (1,), (2, 5)


class Tens(Graduation):
    """A graduation whose values stand by their logarithm."""

    __slots__ = ()

    def at(self, value: float) -> float:
        """Where a value above 0 stands, in pixels from the top.

        >>> by_tens(low=0.01, high=1.0, length_px=200).at(0.1)
        100.0
        """
        along = log10(value / self.low) / log10(self.high / self.low) * self.length_px
        return round(self.length_px - along if self.upward else along, 3)


def by_tens(*, low: float, high: float, length_px: float) -> Tens:
    """Engrave `low` to `high` (above 0) upwards: long marks and numerals at the tens, middle ones at 2 and 5.

    >>> [one.text for one in by_tens(low=0.002, high=4.0, length_px=200).numerals]
    ['1', '0.1', '0.01']
    """
    if not 0 < low < high or length_px <= 0:
        raise ValueError("a scale by tens needs a length and a range above zero that rises")
    bare = Tens(low, high, length_px, upward=True, marks=(), numerals=())
    values = [
        (digit, digit * 10.0**power)
        for power in range(floor(log10(low)), ceil(log10(high)) + 1)
        for digit in range(1, 10)
    ]
    marks = [
        Mark(bare.at(value), value, _size(digit))
        for digit, value in values
        if low * (1 - 1e-9) <= value <= high * (1 + 1e-9)
    ]
    ordered = tuple(sorted(marks, key=lambda mark: mark.at_px))
    numerals = tuple(Numeral(one.at_px, plain(one.value)) for one in ordered if one.size == "long")
    return Tens(low, high, length_px, upward=True, marks=ordered, numerals=numerals)


def _size(digit: int) -> Size:
    """Which mark a digit gets."""
    if digit in LONG:
        return "long"
    return "middle" if digit in MIDDLE else "short"
