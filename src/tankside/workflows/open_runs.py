"""The runs that nobody has closed yet, with the rolls they lead."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from tankside.core.run.roll_standing import roll_standings
from tankside.workflows.note_at_sink import Sink
from tankside.workflows.ports import Desk


@dataclass(frozen=True, slots=True)
class OpenAtSink:
    """One of them: `hung` once every roll of it hangs or is lost, so that only closing it is left."""

    run: UUID
    opened: datetime
    rolls: frozenset[UUID]
    hung: bool


def open_runs(desk: Desk, sink: Sink) -> tuple[OpenAtSink, ...]:
    """All of them, the latest first."""
    found = []
    for heading in desk.run_log.headings():
        run = None if heading.closed else sink.look(heading.run)
        if run is not None:
            stand = roll_standings(run.state)
            hung = all(one in ("done", "lost") for one in stand.values())
            found.append(OpenAtSink(heading.run, heading.opened, frozenset(stand), hung))
    return tuple(found)
