"""What was tapped, said or scanned at the sink, one by one in the order it was done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Protocol
from uuid import UUID

from tankside.core.refusals import Refusal, Refused
from tankside.core.run.commands import Command
from tankside.core.run.instants import Instant
from tankside.core.run.state import Run
from tankside.workflows.records import KeptAnswer


class Sink(Protocol):
    """The live shell of the runs."""

    def look(self, run: UUID) -> Run | None:
        """The run as it now stands."""

    def note(self, run: UUID, command: Command, now: Instant) -> KeptAnswer:
        """Carry out a command once; raises `Refused` where the disk does not take it."""


@dataclass(frozen=True, slots=True)
class Noted:
    """One answer a command, in order, as far as it came; `trouble` is why it came no further.

    What has no answer was not kept: send it again, under the same id.
    """

    answers: tuple[KeptAnswer, ...]
    trouble: Refusal | None = None


def note_at_sink(sink: Sink, run: UUID, commands: Sequence[Command], now: Instant) -> Noted:
    """Carry out a queue of commands that arrived together at `now`.

    Each says how long before that it happened, by the clock of its own device. The first one that the disk
    does not take ends it, so that nothing is ever kept after something that was lost.
    """
    answers: list[KeptAnswer] = []
    for command in commands:
        try:
            answers.append(sink.note(run, replace(command, run=run), now))
        except Refused as refused:
            return Noted(tuple(answers), refused.refusal)
    return Noted(tuple(answers))
