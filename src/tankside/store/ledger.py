"""The ledger in the database: lines are added, never changed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any
from uuid import UUID

from sqlalchemy import ColumnElement, Row, insert, literal_column, select

from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.ledger import BathTest, LedgerLine
from tankside.store.conflicts import conflict_if_taken
from tankside.store.connection import Database
from tankside.store.frozen_json import from_json, to_json
from tankside.store.tables.shelf import LEDGER


def _row(booking: Booking) -> dict[str, Any]:
    line = booking.line
    return {
        "key": booking.key,
        "bottle": line.bottle,
        "kind": line.kind,
        "ml": line.ml,
        "area_units": line.area_units,
        "counted_units": line.counted_units,
        "because": line.because,
        "words": line.words,
        "reverses": line.reverses,
        "test": None if line.test is None else to_json(BathTest, line.test),
        "run": booking.run,
        "event": booking.event,
        "line": booking.number,
        "place": booking.place,
        "recorded": booking.recorded,
    }


def _booking(row: Row[Any]) -> Booking:
    return Booking(
        key=row.key,
        line=LedgerLine(
            bottle=row.bottle,
            kind=row.kind,
            ml=row.ml,
            area_units=row.area_units,
            because=row.because,
            words=row.words,
            reverses=row.reverses,
            counted_units=row.counted_units,
            test=None if row.test is None else from_json(BathTest, row.test),
        ),
        event=row.event,
        number=row.line,
        recorded=row.recorded,
        run=row.run,
        place=row.place,
    )


class StoredLedger:
    """The append-only account of the bottles."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def append(self, bookings: Sequence[Booking]) -> None:
        """Book lines; raises `Conflict` where a line of that event stands already."""
        if not bookings:
            return
        with self._database.writing() as connection, conflict_if_taken("booked already"):
            connection.execute(insert(LEDGER), [_row(one) for one in bookings])

    def of_bottle(self, code: str) -> tuple[Booking, ...]:
        """What was booked on one bottle, in order."""
        return self._found(LEDGER.c.bottle == code)

    def of_run(self, run: UUID) -> tuple[Booking, ...]:
        """What one run has booked, in order."""
        return self._found(LEDGER.c.run == run)

    def all(self) -> tuple[Booking, ...]:
        """Everything, in order."""
        return self._found()

    def _found(self, *which: ColumnElement[bool]) -> tuple[Booking, ...]:
        with self._database.reading() as connection:
            found = select(LEDGER).where(*which).order_by(literal_column("rowid"))
            return tuple(_booking(row) for row in connection.execute(found))
