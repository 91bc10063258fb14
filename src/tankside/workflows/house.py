"""Everything that a face stands on: the desk, the runs that are live, clock and dice."""

from __future__ import annotations

from collections.abc import AsyncIterator, Callable
from dataclasses import dataclass
from typing import Protocol
from uuid import UUID
from zoneinfo import ZoneInfo

from tankside.core.run.instants import Instant
from tankside.workflows.note_at_sink import Sink
from tankside.workflows.ports import Clock, Desk, Dice


class Following(Protocol):
    """Whatever wakes the screens of a run."""

    def follow(self, number: Callable[[], int], run: UUID | None = None) -> AsyncIterator[int]:
        """The number of the view now, and again when it or who watches `run` has changed, until closed."""

    def watching(self, run: UUID) -> int:
        """How many screens follow this run."""

    def close(self) -> None:
        """End every stream."""


@dataclass(frozen=True, slots=True)
class House:
    """A whole Tankside behind its ports; `zone` is where its clock hangs, by name.

    `pace` is how many times as fast as the machine's its clock runs: 1 but in the demo.
    `began` is when this program opened the house.
    """

    desk: Desk
    live_runs: Sink
    broadcast: Following
    clock: Clock
    dice: Dice
    zone: str = "UTC"
    pace: float = 1.0
    began: Instant | None = None

    @property
    def there(self) -> ZoneInfo:
        """The zone itself."""
        return ZoneInfo(self.zone)
