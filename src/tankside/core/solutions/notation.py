"""Dilutions as exact parts, and as people write them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from tankside.core.quantities.typed import NUMBER, plain, unreadable
from tankside.core.refusals import refuse

MOST_PARTS = 10_000
_UNDILUTED = ("stock", "undiluted", "straight", "neat", "full strength")
_PARTS = re.compile(rf"({NUMBER}) ?\+ ?({NUMBER})")
_ONE_IN = re.compile(rf"({NUMBER}) (?:part )?in ({NUMBER})")
_RATIO = re.compile(r"(\d+) ?(?::|/|to) ?(\d+)")
_TWO_STOCKS = re.compile(rf"{NUMBER}(?: ?\+ ?{NUMBER}){{2,}}")


@dataclass(frozen=True, slots=True)
class Dilution:
    """`stock` parts and `water` parts, whole numbers: 1+4 is Dilution(1, 4), stock is Dilution(1, 0)."""

    stock: int
    water: int

    def __post_init__(self) -> None:
        if self.stock < 1 or self.water < 0:
            raise ValueError("a dilution has at least one part of stock and no negative water")

    @property
    def exact_fraction(self) -> Fraction:
        """Share of stock in the working strength, exact.

        >>> Dilution(1, 4).exact_fraction
        Fraction(1, 5)
        """
        return Fraction(self.stock, self.stock + self.water)

    @property
    def stock_fraction(self) -> float:
        """Share of stock in the working strength.

        >>> Dilution(1, 4).stock_fraction
        0.2
        """
        return float(self.exact_fraction)

    @property
    def times(self) -> float:
        """How many times the volume of the stock the whole has: 5 for 1+4."""
        return float(1 / self.exact_fraction)

    def __str__(self) -> str:
        """The parts as leaflets write them, stock first: '1+4', or 'stock'.

        >>> str(Dilution(1, 4)), str(Dilution(1, 0))
        ('1+4', 'stock')
        """
        return f"{self.stock}+{self.water}" if self.water else "stock"

    @property
    def as_one_in(self) -> str:
        """The same as 'one part in': '1 in 5' for 1+4.

        >>> Dilution(1, 4).as_one_in, Dilution(2, 3).as_one_in
        ('1 in 5', '2 in 5')
        """
        return f"{self.stock} in {self.stock + self.water}"


def read_dilution(text: str) -> Dilution:
    """Exact parts of a dilution as typed: '1+4', 'stock', '1 in 50', '1+1.5'.

    '1:4' may be one part and four of water or one part in four: it is asked back, each reading a way on.
    Result: parts, at most 10,000. Own model: docs/how-to/amounts. Doubt: none.

    >>> read_dilution("1 + 4"), read_dilution("1 in 50"), read_dilution("1+1.5")
    (Dilution(stock=1, water=4), Dilution(stock=1, water=49), Dilution(stock=2, water=3))
    """
    typed = plain(text)
    if typed in _UNDILUTED:
        return Dilution(1, 0)
    if found := _PARTS.fullmatch(typed):
        return _parts(_exact(found[1]), _exact(found[2]), text)
    if found := _ONE_IN.fullmatch(typed):
        return _parts(_exact(found[1]), _exact(found[2]) - _exact(found[1]), text)
    if found := _RATIO.fullmatch(typed):
        raise _asked_back(int(found[1]), int(found[2]), text)
    if _TWO_STOCKS.fullmatch(typed):
        raise refuse("dilution-of-two-stocks", ways_on=("type-again",), typed=text.strip())
    raise unreadable("dilution-unreadable", text)


def _exact(text: str) -> Fraction:
    """A number with decimal comma or dot, exact."""
    return Fraction(text.replace(",", "."))


def _parts(stock: Fraction, water: Fraction, text: str) -> Dilution:
    """Whole parts in the same proportion; parts typed whole stay as typed."""
    if stock <= 0 or water < 0:
        raise refuse("dilution-without-stock", ways_on=("type-again",), typed=text.strip())
    each = lcm(stock.denominator, water.denominator)
    parts = (int(stock * each), int(water * each))
    if max(parts) > MOST_PARTS:
        raise refuse("dilution-too-weak", ways_on=("type-again",), typed=text.strip(), most=MOST_PARTS)
    return Dilution(*parts) if parts[1] else Dilution(1, 0)


def _asked_back(first: int, second: int, text: str) -> Exception:
    """Which of the two did you mean? Where only one makes sense it is still said before it is taken."""
    if not 0 < first <= second <= MOST_PARTS:
        return unreadable("dilution-unreadable", text)
    return refuse(
        "dilution-two-readings",
        ways_on=("read-as-first", "read-as-second"),
        typed=text.strip(),
        first=f"{first}+{second}",
        second=f"{first} in {second}",
        stock_parts=first,
        other=second,
        second_parts=f"{first}+{second - first}" if second > first else "undiluted",
    )
