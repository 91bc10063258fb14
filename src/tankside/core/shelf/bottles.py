"""Batches, the bottles they live in, and the things that stand around them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal
from uuid import UUID

from tankside.core.solutions.kinds import SolutionKind

Strength = Literal["concentrate", "stock", "working"]


@dataclass(frozen=True, slots=True)
class Batch:
    """One mixed lot of a solution: when, how much, from what (`parts` as the person reads it, '1+4')."""

    key: UUID
    kind: SolutionKind
    name: str
    strength: Strength
    parts: str
    made: datetime
    made_ml: float
    reusable: bool


@dataclass(frozen=True, slots=True)
class Bottle:
    """One container: its code and its colour word are the person's signs, neither says the kind."""

    key: UUID
    code: str
    batch: UUID
    holds_ml: float
    cap: str = ""
    place: str = ""
    opened: datetime | None = None
