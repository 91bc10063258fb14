"""Published formulas per litre, worked out for the volume and the salts that one has."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from tankside.core.refusals import refuse
from tankside.core.solutions.hydrates import Form, substituted_g
from tankside.core.solutions.kinds import SolutionKind
from tankside.core.sources import Provenance

Measured = Literal["g", "mL"]
LEAST_ML = 50.0
MOST_ML = 20_000.0


@dataclass(frozen=True, slots=True)
class Constituent:
    """One line of a formula: `per_litre` g or mL of `substance`, in the form called for where it has one."""

    substance: str
    per_litre: float
    unit: Measured = "g"
    called_for: Form | None = None


@dataclass(frozen=True, slots=True)
class Formula:
    """A formula for raw chemicals: the water to start with (mL per L) and its lines in their order.

    A whole litre to start with is not filled up afterwards. `start_c` is that water's temperature, if told.
    """

    name: str
    kind: SolutionKind
    start_ml_per_l: float
    constituents: tuple[Constituent, ...]
    provenance: Provenance
    start_c: float | None = None

    @property
    def filled_up(self) -> bool:
        """Whether water is added at the end, up to the mark."""
        return self.start_ml_per_l < 1000


@dataclass(frozen=True, slots=True)
class Part:
    """One line for the volume asked: `amount` in `unit`, of `form` as it stands in the jar."""

    substance: str
    form: str
    amount: float
    unit: Measured
    substituted: bool = False


@dataclass(frozen=True, slots=True)
class Recipe:
    """What to measure for `volume_ml`: start with `start_ml` of water, then the parts, then fill up."""

    formula: Formula
    volume_ml: float
    start_ml: float
    parts: tuple[Part, ...]


def recipe_for(formula: Formula, *, volume_ml: float, have: Mapping[str, Form] | None = None) -> Recipe:
    """The formula for `volume_ml` (50 to 20,000 mL); `have` names the forms that one has instead.

    Source: proportion by volume; other forms by molar mass. Doubt: that of the scale, see `weighing`.

    >>> from tankside.core.sources import OWN
    >>> plain = Formula("plain", "fixer", 750, (Constituent("salt", 10.0),), OWN)
    >>> made = recipe_for(plain, volume_ml=600)
    >>> made.start_ml, made.parts[0].amount
    (450.0, 6.0)
    """
    if not LEAST_ML <= volume_ml <= MOST_ML:
        raise refuse(
            "recipe-volume-out-of-range",
            at="volume_ml",
            volume_ml=volume_ml,
            least_ml=LEAST_ML,
            most_ml=MOST_ML,
        )
    had = have or {}
    strangers = sorted(set(had) - {one.substance for one in formula.constituents})
    if strangers:
        raise refuse("not-in-the-formula", substance=strangers[0], formula=formula.name)
    litres = volume_ml / 1000
    parts = tuple(_part(one, litres, had.get(one.substance)) for one in formula.constituents)
    return Recipe(formula, volume_ml, formula.start_ml_per_l * litres, parts)


def _part(line: Constituent, litres: float, have: Form | None) -> Part:
    """One line, substituted where another form stands in the jar."""
    amount = line.per_litre * litres
    called = line.called_for.name if line.called_for else ""
    if have is None or have == line.called_for:
        return Part(line.substance, called, amount, line.unit)
    if line.called_for is None:
        raise refuse("form-not-known", substance=line.substance)
    swapped_g = substituted_g(amount, called_for=line.called_for, have=have)
    return Part(line.substance, have.name, swapped_g, line.unit, substituted=True)
