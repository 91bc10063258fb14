"""Raw chemicals by name: what else they are called, the forms they come in, and what they can do."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any

from tankside.catalogue.rows import table
from tankside.core.refusals import refuse
from tankside.core.safety.hazards import Hazard
from tankside.core.solutions.hydrates import Form


@dataclass(frozen=True, slots=True)
class Substance:
    """One raw chemical; `forms` by every name they go by."""

    name: str
    aliases: tuple[str, ...]
    forms: Mapping[str, Form]
    hazards: tuple[Hazard, ...]


@cache
def substances() -> Mapping[str, Substance]:
    """Every substance by its name; what has no hazard row is not among them."""
    return MappingProxyType({name: _substance(name, told) for name, told in table("substances").items()})


def substance(name: str) -> Substance:
    """The substance that goes by `name`, its own or another."""
    found = next((one for one in substances().values() if name in (one.name, *one.aliases)), None)
    if found is None:
        raise refuse("substance-unknown", name=name)
    return found


def form_of(name: str, form: str) -> Form:
    """One form of a substance, by a name it goes by."""
    forms = substance(name).forms
    if form not in forms:
        known = ", ".join(dict.fromkeys(one.name for one in forms.values())) or "none"
        raise refuse("form-unknown", substance=name, form=form, known=known)
    return forms[form]


def _substance(name: str, told: Mapping[str, Any]) -> Substance:
    """One entry of the file."""
    forms: dict[str, Form] = {}
    for row in told.get("forms", ()):
        one = Form(name, row["name"], row["formula"], row.get("active", 1))
        forms |= dict.fromkeys((row["name"], *row["aliases"]), one)
    hazards = tuple(
        Hazard(
            name,
            row["codes"],
            float(row.get("from_percent", 0)),
            float(row.get("below_percent", 101)),
            "from memory" if "memory" in row["seen"] or not row["seen"] else "published",
            row["source"],
        )
        for row in told["hazards"]
    )
    return Substance(name, tuple(told["aliases"]), MappingProxyType(forms), hazards)
