"""Batches, the bottles they live in, and the things that stand around them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal
from uuid import UUID

from tankside.core.solutions.keeping import KeepingTime, printed_keeping
from tankside.core.solutions.kinds import SolutionKind
from tankside.core.solutions.notation import Dilution

Strength = Literal["concentrate", "stock", "working"]


@dataclass(frozen=True, slots=True)
class Batch:
    """One mixed lot of a solution: when, how much, from what (`parts` as the person reads it, '1+4').

    `keeping` is how long it keeps where somebody has typed that, `price_minor` what all of it cost, in whole
    minor units of the person's currency; None where nobody has said.
    """

    key: UUID
    kind: SolutionKind
    name: str
    strength: Strength
    parts: str
    made: datetime
    made_ml: float
    reusable: bool
    keeping: KeepingTime | None = None
    price_minor: int | None = None

    @property
    def keeps(self) -> KeepingTime | None:
        """How long it keeps: as typed, else as printed for its kind."""
        return self.keeping or printed_keeping(self.kind, working=self.strength == "working")

    @property
    def dilution(self) -> Dilution | None:
        """Its parts as numbers: None where a working strength was written down in words.

        >>> from datetime import UTC
        >>> made = datetime(2026, 3, 1, tzinfo=UTC)
        >>> str(Batch(UUID(int=1), "fixer", "Fixer", "working", "1+9", made, 1000.0, True).dilution)
        '1+9'
        """
        if self.strength != "working":
            return Dilution(1, 0)
        stock, plus, water = (part.strip() for part in self.parts.partition("+"))
        return Dilution(int(stock), int(water)) if plus and stock.isdigit() and water.isdigit() else None


@dataclass(frozen=True, slots=True)
class Bottle:
    """One container: its code and its colour word are the person's signs, neither says the kind.

    `rolls_per_l` is what its label says a litre takes, None where nobody has read it.
    """

    key: UUID
    code: str
    batch: UUID
    holds_ml: float
    cap: str = ""
    place: str = ""
    opened: datetime | None = None
    rolls_per_l: float | None = None
