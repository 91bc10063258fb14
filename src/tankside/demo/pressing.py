"""A past session at the sink, pressed through: each main act when it is due, a little late."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import cycle
from uuid import UUID

from tankside.core.refusals import Refusal, Refused
from tankside.core.run.commands import Asked, Command
from tankside.core.run.instants import Instant
from tankside.core.run.sink_view import SinkView, TankfulView, sink_view
from tankside.core.run.state import Run
from tankside.demo.invented import Evening
from tankside.workflows.note_at_sink import Sink, note_at_sink

PRESSES = 200
"""More than any evening of the season needs; a session that takes more does not come to its end."""


@dataclass
class AtTheSink:
    """One past session: its clock is set to each act in turn."""

    sink: Sink
    run: UUID
    now: Instant
    noted: int = 0

    def do(self, asked: Asked) -> None:
        """Note one act now; what the run refuses is a fault of the script."""
        self.noted += 1
        command = Command(f"demo-{self.run}:{self.noted}", asked, device="demo", run=self.run)
        done = note_at_sink(self.sink, self.run, [command], self.now)
        answer = done.trouble or done.answers[0].said
        if isinstance(answer, Refusal):
            raise Refused(answer)

    def look(self) -> tuple[Run, SinkView]:
        """The run and its screen now."""
        run = self.sink.look(self.run)
        assert run is not None
        return run, sink_view(run.state, self.now)

    def wait_until(self, at_us: int) -> None:
        """Let the clock come to `at_us`; it never goes back."""
        self.now = self.now.before(seconds=min(0.0, (self.now.wall_us - at_us) / 1e6))


def press_through(there: AtTheSink, evening: Evening) -> None:
    """The whole session, from the first pour to its close."""
    late_s = cycle(evening.late_s)
    besides = list(evening.besides)
    begun_us: int | None = None
    for _ in range(PRESSES):
        run, view = there.look()
        if view.close is not None:
            there.do(view.close)
            return
        next_us = min(_due(view))
        if begun_us is not None and besides and begun_us + besides[0].after_s * 1e6 <= next_us:
            one = besides.pop(0)
            there.wait_until(begun_us + round(one.after_s * 1e6))
            there.do(one.asked(run))
            continue
        if next_us > there.now.wall_us:
            there.wait_until(next_us)
            continue
        there.wait_until(there.now.wall_us + round(next(late_s) * 1e6))
        there.do(_most_urgent(view))
        begun_us = begun_us or there.now.wall_us
    raise RuntimeError(f"the session of {evening.days_ago} days ago does not come to its end")


def _due(view: SinkView) -> Iterator[int]:
    """When hands are wanted: at each main act, and to measure a bath before it."""
    for one in view.tankfuls:
        yield from _due_in(one)


def _due_in(one: TankfulView) -> Iterator[int]:
    if one.main is not None and one.main.due_us is not None:
        yield one.main.due_us
        yield from (ring.at_us for ring in one.rings if ring.own and ring.cue.kind == "measure")


def _most_urgent(view: SinkView) -> Asked:
    """The main act of the tankful that is due first."""
    due = [(min(_due_in(one)), one.main.asked) for one in view.tankfuls if one.main and one.main.due_us]
    return min(due, key=lambda one: one[0])[1]
