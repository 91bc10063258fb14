"""The live shell of a run: one writer at a time, and what is on the disk before anybody believes it."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Literal
from uuid import UUID

from tankside.core.refusals import Refused, refuse
from tankside.core.run.charges import Charge, charges, difference
from tankside.core.run.commands import Command
from tankside.core.run.decide import Decision, decide
from tankside.core.run.instants import Instant
from tankside.core.run.replay import follow
from tankside.core.run.state import Run
from tankside.core.shelf.bookings import Booking
from tankside.workflows.follow_rolls import follow_rolls
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.records import Conflict, KeptAnswer

WritePoint = Literal[
    "before the event", "after the event", "after the ledger", "before the commit", "committed"
]
TRIES = 3


def _go_on(_point: WritePoint) -> None:
    """Nothing happens at a write point, but in tests."""


class Held:
    """A run as this process last saw it; trusted only after catching up."""

    def __init__(self) -> None:
        self.lock = threading.Lock()
        self.run: Run | None = None


class LiveRuns:
    """All runs that anybody looks at or writes to.

    Another process may write beside this one, so each decision begins with catching up; where the other was
    quicker, we catch up and decide again. `passing` is told each point of a write as it is passed.

    Never note inside `desk.together()`: whoever holds the pen of the file would then wait for the lock of a
    run whose holder waits for the pen. Note first, then write what follows from it. (A file that nobody else
    has open yet, as the demo in the making, is no danger.)
    """

    def __init__(
        self,
        desk: Desk,
        dice: Dice,
        *,
        written: Callable[[UUID], None],
        passing: Callable[[WritePoint], None] = _go_on,
    ) -> None:
        self._desk = desk
        self._dice = dice
        self._written = written
        self._passing = passing
        self._held: dict[UUID, Held] = {}
        self._holding = threading.Lock()

    def look(self, run: UUID) -> Run | None:
        """The run as it now stands on the disk; None if nothing is noted under that key."""
        with self._turn(run) as held:
            self._catch_up(held, run)
            return held.run

    def note(self, run: UUID, command: Command, now: Instant) -> KeptAnswer:
        """Carry out `command` once, whoever sends it how often: a repeat gets the answer of the first.

        What the run refuses is an answer and is kept. Raises `Refused` where the disk does not take it; then
        nothing is acknowledged and the same command may be sent again.
        """
        with self._turn(run) as held:
            for _ in range(TRIES):
                known = self._desk.answers.find(command.id)
                if known is not None:
                    return known
                self._catch_up(held, run)
                try:
                    return self._once(held, run, command, now)
                except Conflict:
                    continue
        raise refuse("run-busy", ways_on=("try-again",), tries=TRIES)

    @contextmanager
    def _turn(self, run: UUID) -> Iterator[Held]:
        with self._holding:
            held = self._held.setdefault(run, Held())
        with held.lock:
            yield held

    def _catch_up(self, held: Held, run: UUID) -> None:
        more = self._desk.run_log.after(run, held.run.last_seq if held.run else 0)
        if more:
            held.run = follow(held.run, more)

    def _once(self, held: Held, run: UUID, command: Command, now: Instant) -> KeptAnswer:
        try:
            decision = decide(held.run, command, now)
        except Refused as refused:
            answer = KeptAnswer(command.id, run, refused.refusal)
            self._desk.answers.keep(answer)
            return answer
        events = decision.events
        answer = KeptAnswer(command.id, run, decision.answer, events[0].seq, events[-1].seq)
        after = follow(held.run, events)
        self._write(held.run, after, decision, answer, now)
        held.run = after
        self._written(run)
        return answer

    def _write(
        self, before: Run | None, after: Run, decision: Decision, answer: KeptAnswer, now: Instant
    ) -> None:
        """Events, what they move in the ledger and of the rolls, and the answer: one transaction, synced."""
        with self._desk.together():
            self._passing("before the event")
            self._desk.run_log.append(decision.events)
            self._passing("after the event")
            self._desk.ledger.append(self._bookings(after, decision.events[-1].id, now))
            follow_rolls(self._desk, before, after)
            self._passing("after the ledger")
            self._desk.answers.keep(answer)
            self._passing("before the commit")
        self._passing("committed")

    def _bookings(self, after: Run, event: str, now: Instant) -> list[Booking]:
        booked = map(charge_of, self._desk.ledger.of_run(after.key))
        return [
            Booking(
                key=self._dice.key(),
                line=one.line,
                event=event,
                number=number,
                recorded=moment_of(now),
                run=after.key,
                place=one.n,
            )
            for number, one in enumerate(difference(charges(after.state), booked))
        ]


def charge_of(booking: Booking) -> Charge:
    """The charge that a booking was made for."""
    return Charge(booking.line.because, booking.place, booking.line)
