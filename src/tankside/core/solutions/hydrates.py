"""The same salt with more or less water in its crystals, weighed in place of one another."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.refusals import refuse
from tankside.core.solutions.molar_mass import molar_mass


@dataclass(frozen=True, slots=True)
class Form:
    """One form in which a substance is sold: `name` ('anhydrous', 'decahydrate') and its `formula`.

    `works_as` is what it does in a bath; forms may stand in for each other only if that is the same. `active`
    says how many such parts one formula holds: two in (K2CO3)2 . 3H2O.
    """

    works_as: str
    name: str
    formula: str
    active: int = 1

    @property
    def g_per_mol_active(self) -> float:
        """Grams that bring one mole of the active part."""
        return molar_mass(self.formula) / self.active


def substituted_g(mass_g: float, *, called_for: Form, have: Form) -> float:
    """Grams of the form one has that bring as much of the active part as `mass_g` of the form called for.

    Arguments: `mass_g` in g, 0 or more. Result: g.
    Source: equal moles, by molar mass. Doubt: under 0.1 % for a pure salt; crystals that dried or took up
    water in their jar may be off by several percent.

    >>> ten = Form("borax", "decahydrate", "Na2B4O7 . 10H2O")
    >>> five = Form("borax", "pentahydrate", "Na2B4O7 . 5H2O")
    >>> round(substituted_g(1.2, called_for=ten, have=five), 2)
    0.92
    """
    if called_for.works_as != have.works_as:
        raise refuse("not-the-same-salt", called_for=called_for.works_as, have=have.works_as)
    return mass_g * have.g_per_mol_active / called_for.g_per_mol_active
