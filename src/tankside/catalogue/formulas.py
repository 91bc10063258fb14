"""Published formulas for raw chemicals, each with where it comes from."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from tankside.catalogue.rows import provenance_of, table
from tankside.catalogue.substances import substance
from tankside.core.refusals import refuse
from tankside.core.solutions.formulas import Constituent, Formula

USUAL_START_ML = 750.0
"""Water to start with where a formula does not say (common practice: half to three quarters)."""


@cache
def formulas() -> Mapping[str, Formula]:
    """Every formula by its name."""
    return MappingProxyType({name: _formula(name, told) for name, told in table("formulas").items()})


def formula(name: str) -> Formula:
    """The formula of that name, however its letters are written."""
    found = {one.lower(): one for one in formulas()}.get(name.strip().lower())
    if found is None:
        raise refuse("formula-unknown", name=name, known=", ".join(formulas()))
    return formulas()[found]


def _formula(name: str, told: Mapping[str, Any]) -> Formula:
    """One entry of the file."""
    return Formula(
        name,
        told["kind"],
        float(told.get("start", USUAL_START_ML)),
        tuple(_constituent(row) for row in told["parts"]),
        provenance_of(told),
        float(told["start_c"]) if "start_c" in told else None,
    )


def _constituent(row: Mapping[str, Any]) -> Constituent:
    """One part; what is measured in mL, or does not say its form, has none that could be substituted."""
    forms = substance(row["substance"]).forms
    called_for = forms.get(row["form"]) if row["unit"] == "g" else None
    return Constituent(row["substance"], float(row["per_litre"]), row["unit"], called_for)
