"""The run log in the database: (run, seq) is its key, and nothing in it changes."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from typing import Any, cast
from uuid import UUID

from sqlalchemy import Connection, Row, case, func, insert, select

from tankside.core.run.envelope import Event
from tankside.core.run.events import NoteWithdrawn, RunClosed, RunOpened
from tankside.core.run.instants import Instant
from tankside.core.run.settle import taken_back
from tankside.store.columns import EPOCH
from tankside.store.conflicts import conflict_if_taken
from tankside.store.connection import Database
from tankside.store.event_json import body_from_json, body_to_json
from tankside.store.tables.run import RUN_LOG
from tankside.workflows.records import RunHeading


def _row(event: Event) -> dict[str, Any]:
    return {
        "run": event.run,
        "seq": event.seq,
        "event": event.id,
        "kind": event.kind,
        "version": event.version,
        "tankful": event.tankful,
        "happened_wall_us": event.happened.wall_us,
        "happened_elapsed_us": event.happened.elapsed_us,
        "happened_boot": event.happened.boot,
        "recorded_wall_us": event.recorded.wall_us,
        "recorded_elapsed_us": event.recorded.elapsed_us,
        "recorded_boot": event.recorded.boot,
        "device": event.device,
        "how": event.how,
        "within_s": event.within_s,
        "body": body_to_json(event.body),
    }


def _event(row: Row[Any]) -> Event:
    return Event(
        run=row.run,
        seq=row.seq,
        id=row.event,
        tankful=row.tankful,
        happened=Instant(row.happened_wall_us, row.happened_elapsed_us, row.happened_boot),
        recorded=Instant(row.recorded_wall_us, row.recorded_elapsed_us, row.recorded_boot),
        device=row.device,
        how=row.how,
        within_s=row.within_s,
        body=body_from_json(row.kind, row.version, row.body),
    )


class StoredRunLog:
    """What happened in every run."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def append(self, events: Sequence[Event]) -> None:
        """Add events; raises `Conflict` where a number of the run, or the id of an event, is taken."""
        if not events:
            return
        with (
            self._database.writing() as connection,
            conflict_if_taken(f"{events[0].run} from {events[0].seq}"),
        ):
            connection.execute(insert(RUN_LOG), [_row(event) for event in events])

    def after(self, run: UUID, seq: int = 0) -> tuple[Event, ...]:
        """The events of `run` whose number is above `seq`, in order."""
        which = (RUN_LOG.c.run == run) & (RUN_LOG.c.seq > seq)
        with self._database.reading() as connection:
            found = connection.execute(select(RUN_LOG).where(which).order_by(RUN_LOG.c.seq)).all()
        return tuple(_event(row) for row in found)

    def headings(self) -> tuple[RunHeading, ...]:
        """All runs, the latest first."""
        opened = func.max(case((RUN_LOG.c.kind == RunOpened.kind, RUN_LOG.c.happened_wall_us)))
        found = (
            select(
                RUN_LOG.c.run,
                opened.label("opened_us"),
                func.max(RUN_LOG.c.seq).label("last_seq"),
            )
            .group_by(RUN_LOG.c.run)
            .order_by(opened.desc())
        )
        with self._database.reading() as connection:
            closed = _closed(connection)
            return tuple(_heading(row, closed) for row in connection.execute(found))


def _heading(row: Any, closed: set[UUID]) -> RunHeading:
    opened = EPOCH + timedelta(microseconds=cast(int, row.opened_us))
    return RunHeading(row.run, opened, row.last_seq, row.run in closed)


def _closed(connection: Connection) -> set[UUID]:
    """Runs with a closing that was not taken back."""
    ever = select(RUN_LOG.c.run).where(RUN_LOG.c.kind == RunClosed.kind)
    which = RUN_LOG.c.kind.in_((RunClosed.kind, NoteWithdrawn.kind)) & RUN_LOG.c.run.in_(ever)
    events = [_event(row) for row in connection.execute(select(RUN_LOG).where(which))]
    gone = taken_back(events)
    return {one.run for one in events if isinstance(one.body, RunClosed) and one.id not in gone}
