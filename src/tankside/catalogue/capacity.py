"""What has been printed on capacity, keeping, replenishing and limits."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from tankside.catalogue.rows import provenance_of, table
from tankside.core.sources import Provenance


@dataclass(frozen=True, slots=True)
class Printed:
    """One printed value: of what (`item`, `solution`), under which condition, and where it comes from."""

    item: str
    solution: str
    value: float
    unit: str
    condition: str
    provenance: Provenance


@cache
def printed() -> tuple[Printed, ...]:
    """Every printed row, in the order of the file."""
    return tuple(
        Printed(
            row["item"],
            row["solution"],
            float(row["value"]),
            row["unit"],
            row["condition"],
            provenance_of(row),
        )
        for row in table("capacity")["rows"]
    )


def printed_of(item: str, solution: str = "") -> tuple[Printed, ...]:
    """The rows of one item, of one solution if it is named."""
    return tuple(one for one in printed() if one.item == item and solution in ("", one.solution))
