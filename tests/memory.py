"""What the desk in memory remembers, and how it forgets a failed act."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, fields
from datetime import datetime
from typing import Any
from uuid import UUID

from tankside.core.methods.combinations import Combination
from tankside.core.methods.step_strips import StepStrip, Tablet
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.plan import Plan
from tankside.core.rolls.roll import Film, Roll
from tankside.core.run.envelope import Event
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.workflows.records import CodeTaken, KeptAnswer, KeptEvidence, KeptProposal, Photograph


@dataclass
class Memory:
    """Everything the fakes hold; a failed `together()` puts all of it back."""

    films: dict[str, Film] = field(default_factory=dict)
    rolls: dict[UUID, tuple[datetime, Roll]] = field(default_factory=dict)
    codes: set[str] = field(default_factory=set)
    combinations: dict[UUID, Combination] = field(default_factory=dict)
    plans: dict[tuple[UUID, int], Plan] = field(default_factory=dict)
    batches: dict[UUID, Batch] = field(default_factory=dict)
    bottles: dict[UUID, Bottle] = field(default_factory=dict)
    events: list[Event] = field(default_factory=list)
    ledger: list[Booking] = field(default_factory=list)
    answers: dict[str, KeptAnswer] = field(default_factory=dict)
    tanks: dict[UUID, Tank] = field(default_factory=dict)
    thermometers: dict[UUID, Thermometer] = field(default_factory=dict)
    places: dict[UUID, Place] = field(default_factory=dict)
    proposals: dict[UUID, KeptProposal] = field(default_factory=dict)
    evidence: dict[UUID, KeptEvidence] = field(default_factory=dict)
    tablets: dict[UUID, Tablet] = field(default_factory=dict)
    step_strips: dict[UUID, StepStrip] = field(default_factory=dict)
    photographs: dict[tuple[str, str, UUID], Photograph] = field(default_factory=dict)
    pictures: dict[str, bytes] = field(default_factory=dict)
    preferences: dict[str, str] = field(default_factory=dict)

    @contextmanager
    def together(self) -> Iterator[None]:
        """All or nothing."""
        before = {one.name: getattr(self, one.name).copy() for one in fields(self)}
        try:
            yield
        except BaseException:
            for name, value in before.items():
                held: Any = getattr(self, name)
                held.clear()
                held.extend(value) if isinstance(held, list) else held.update(value)
            raise

    def take_code(self, code: str) -> None:
        """One code on one thing."""
        if code in self.codes:
            raise CodeTaken(code)
        self.codes.add(code)


class InMemory:
    """One noun of a memory."""

    def __init__(self, memory: Memory) -> None:
        self._memory = memory
