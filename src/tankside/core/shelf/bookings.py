"""Lines as they stand in the ledger."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from uuid import UUID

from tankside.core.shelf.ledger import LedgerLine


@dataclass(frozen=True, slots=True)
class Booking:
    """A line in the ledger under its `key`, booked once as number `number` of `event`.

    `event` is the id of the event of a run, or of the act at the shelf, that made us book. The line's own
    `because` says what it is owed for, which may be an older event that was put right since, and `place`
    which of the lines owed for that one it is.
    """

    key: UUID
    line: LedgerLine
    event: str
    number: int
    recorded: datetime
    run: UUID | None = None
    place: int = 0


def opposite(booking: Booking) -> LedgerLine:
    """The line that takes `booking` back: a mistake is a new row that names the old one."""
    line = booking.line
    return replace(
        line,
        ml=-line.ml,
        area_units=-line.area_units,
        counted_units=-line.counted_units,
        test=None,
        reverses=booking.key,
    )
