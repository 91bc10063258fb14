"""The append-only account of each bottle, as arithmetic."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal
from uuid import UUID

LineKind = Literal[
    "mixed",
    "decanted",
    "drawn",
    "returned",
    "charged",
    "topped up",
    "filtered",
    "tested",
    "contaminated",
    "discarded",
]


BathTestKind = Literal["clearing", "leader", "indicator", "look"]


@dataclass(frozen=True, slots=True)
class BathTest:
    """A test piece of `film` that took `seconds` at `temp_c`, or what an indicator, a strip or a look said.

    `fresh` is one taken while the bath was new: later ones are judged by it. `ph` is what a strip showed;
    `spent` an indicator that has turned, or sulfur or cloud in the bath.
    """

    kind: BathTestKind
    film: str = ""
    seconds: float | None = None
    temp_c: float | None = None
    fresh: bool = False
    ph: float | None = None
    spent: bool = False


@dataclass(frozen=True, slots=True)
class LedgerLine:
    """One row: `ml`, `area_units` and `counted_units` are changes (signed); `because` names what it follows.

    `counted_units` is the film as this bath counts it. `reverses` is the line that this one takes back:
    nothing is edited or deleted. A line of kind 'tested' without a `test` takes back the test before it.
    """

    bottle: str
    kind: LineKind
    ml: float = 0.0
    area_units: float = 0.0
    because: str = ""
    words: str = ""
    reverses: UUID | None = None
    counted_units: float = 0.0
    test: BathTest | None = None
