"""The append-only account of each bottle, as arithmetic."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal
from uuid import UUID

LineKind = Literal[
    "mixed", "decanted", "drawn", "returned", "charged", "topped up", "tested", "contaminated", "discarded"
]


@dataclass(frozen=True, slots=True)
class LedgerLine:
    """One row: `ml` and `area_units` are changes (signed); `because` names the event or act it follows.

    `reverses` is the line that this one takes back: nothing is edited or deleted.
    """

    bottle: str
    kind: LineKind
    ml: float = 0.0
    area_units: float = 0.0
    because: str = ""
    words: str = ""
    reverses: UUID | None = None
