"""How many rolls the stock in a bottle is still enough for: whole tankfuls, by volume alone."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.planning.why import Figure, Length, Why, rule
from tankside.core.shelf.accounts import LEAST_ML
from tankside.core.solutions.notation import Dilution

STOCK_PAGE = "docs/science/least-stock"


@dataclass(frozen=True, slots=True)
class Tankfuls:
    """How a developer is used: at what dilution, in a tank of what (mL), with how many rolls in it."""

    dilution: Dilution
    tank_ml: float
    rolls: int

    @property
    def stock_ml(self) -> float:
        """Stock in one tankful."""
        return self.tank_ml * self.dilution.stock_fraction


def rolls_left(stock_ml: float, use: Tankfuls) -> int:
    """Rolls that `stock_ml` in a bottle still makes whole tankfuls for, each as full of film as `use`.

    Source: parts by volume. Doubt: the mark of each measure; what the stock is worth is for its test to say.

    >>> use = Tankfuls(Dilution(1, 1), 300.0, 1)
    >>> rolls_left(780.0, use), rolls_left(140.0, use)
    (5, 0)
    """
    return int((stock_ml + LEAST_ML) // use.stock_ml) * use.rolls


def why_developer_left(stock_ml: float, use: Tankfuls) -> Why:
    """Why a bottle of stock is enough for so many rolls: volume binds, and nothing else is counted.

    Source: `rolls_left`. Doubt: as there.
    """
    left = float(rolls_left(stock_ml, use))
    figures = (
        Figure("a_tankful_ml", use.stock_ml, "mL", "dilution and tank"),
        Figure("rolls_a_tank", float(use.rolls), "rolls", "last plan"),
    )
    return Why(
        "developer-left",
        None,
        rule(left, "rolls", "volume"),
        (Length("by-volume", rule(left, "rolls", "volume"), figures),),
        (),
        (),
        (
            Figure("left_ml", stock_ml, "mL", "ledger"),
            Figure("tank_takes_ml", use.tank_ml, "mL", "tank"),
            *figures,
        ),
        "whole part of (left / stock of a tankful) x rolls in it",
        (STOCK_PAGE,),
        spread="rule",
        leaves_out=("leader-goes-before",),
    )
