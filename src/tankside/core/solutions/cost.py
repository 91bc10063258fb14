"""Money in whole minor units (cents, pence): what a bath costs, shared out without a cent lost."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from tankside.core.refusals import refuse


@dataclass(frozen=True, slots=True)
class Price:
    """`minor` (whole minor units of the person's currency) for `amount` g or mL as bought."""

    minor: int
    amount: float

    def __post_init__(self) -> None:
        if self.minor < 0 or self.amount <= 0:
            raise refuse("price-out-of-range", minor=self.minor, amount=self.amount)


def cost_of(used: Sequence[tuple[float, Price]]) -> int:
    """What the amounts used cost together, in whole minor units, halves upwards.

    Own model: docs/science/formulas: rounded once, at the end. Doubt: none.

    >>> cost_of([(100.0, Price(1250, 1000.0)), (2.0, Price(900, 100.0))])
    143
    """
    exact = sum(
        (Fraction(amount) * price.minor / Fraction(price.amount) for amount, price in used), Fraction(0)
    )
    return int((exact + Fraction(1, 2)) // 1)


def shared_out(minor: int, shares: Sequence[float]) -> tuple[int, ...]:
    """`minor` units over rolls in proportion to `shares` (film area), so that the sum is exact.

    Own model: docs/science/formulas: the largest remainders get the odd units. Doubt: none.

    >>> shared_out(100, [1.0, 1.0, 1.0])
    (34, 33, 33)
    """
    total = sum(map(Fraction, shares), Fraction(0))
    if total <= 0 or min(shares) < 0:
        raise refuse("nothing-to-share-over")
    exact = [minor * Fraction(one) / total for one in shares]
    whole = [int(one // 1) for one in exact]
    odd = minor - sum(whole)
    by_remainder = sorted(range(len(shares)), key=lambda at: (whole[at] - exact[at], at))
    more = set(by_remainder[:odd])
    return tuple(one + (at in more) for at, one in enumerate(whole))
