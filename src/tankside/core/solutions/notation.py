"""Dilutions as exact parts."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Dilution:
    """`stock` parts and `water` parts, whole numbers: 1+4 is Dilution(1, 4), stock is Dilution(1, 0)."""

    stock: int
    water: int

    def __post_init__(self) -> None:
        if self.stock < 1 or self.water < 0:
            raise ValueError("a dilution has at least one part of stock and no negative water")

    @property
    def stock_fraction(self) -> float:
        """Share of stock in the working strength.

        >>> Dilution(1, 4).stock_fraction
        0.2
        """
        return self.stock / (self.stock + self.water)
