"""An evening that goes any way it likes: two screens, late notes, clocks that jump, a machine that restarts.

Every command is given twice over: to `noted`, whose wall clock jumps as it is told to, and to `steady`, whose
wall clock stands as it stood when its boot was first seen. By law the two must come to the same.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

from unit.core.run.evening import BENCH, RUN, START_US, plan

from tankside.core.refusals import Refused
from tankside.core.run.charges import Charge, charges, difference
from tankside.core.run.commands import Asked, Command, OpenRun
from tankside.core.run.decide import Decision, decide
from tankside.core.run.instants import Instant
from tankside.core.run.replay import follow, replay
from tankside.core.run.sink_view import SinkView, sink_view
from tankside.core.run.state import Run

Choice = Callable[[Run, SinkView], Asked | None]
"""What a hand picks from where a run stands and what its screen shows."""

NOTHING = "nothing to do"
"""What comes of a hand that finds nothing to pick."""


@dataclass
class Machine:
    """The clocks of the server: wall time, and elapsed time that begins anew with each boot."""

    seconds: float = 0.0
    wall_ahead_s: float = 0.0
    booted_s: float = -5000.0
    boot: int = 1

    def now(self) -> Instant:
        """What both clocks show."""
        wall_us = START_US + round((self.seconds + self.wall_ahead_s) * 1e6)
        return Instant(wall_us, round((self.seconds - self.booted_s) * 1e6), f"boot {self.boot}")


@dataclass
class Log:
    """One of the two runs, with the ledger booked by differences as it goes."""

    run: Run
    booked: list[Charge] = field(default_factory=list)

    def take(self, command: Command, now: Instant) -> Decision:
        """Decide, then believe; raises `Refused`, and then nothing has changed."""
        decision = decide(self.run, command, now)
        self.run = follow(self.run, decision.events)
        self.booked.extend(difference(charges(self.run.state), self.booked))
        return decision


@dataclass
class Evening:
    """The two runs, the clocks, and what each screen has not sent yet."""

    machine: Machine = field(default_factory=Machine)
    count: int = 0
    known_boot_ahead_s: float = 0.0
    queues: dict[str, list[tuple[Asked, float]]] = field(default_factory=lambda: {"phone": [], "desk": []})
    looked: tuple[object, tuple[SinkView, SinkView]] | None = None

    def __post_init__(self) -> None:
        asked = OpenRun(plan(), "Europe/Oslo", bench=BENCH)
        first = decide(None, Command("phone:0", asked, "phone", run=RUN), self.machine.now()).events
        self.noted, self.steady = Log(replay(first)), Log(replay(first))

    def steady_now(self) -> Instant:
        """The instant as it would be had nobody touched the wall clock since this boot was first seen."""
        if self.machine.now().boot not in self.steady.run.state.timeline.offset_us:
            self.known_boot_ahead_s = self.machine.wall_ahead_s
        return replace(self.machine, wall_ahead_s=self.known_boot_ahead_s).now()

    def views(self) -> tuple[SinkView, SinkView]:
        """What a screen shows of each; looked at once for each moment."""
        moment = (self.noted.run.state, self.steady.run.state, self.machine.now())
        if self.looked is None or self.looked[0] != moment:
            noted = sink_view(self.noted.run.state, self.machine.now())
            steady = sink_view(self.steady.run.state, self.steady_now())
            self.looked = (moment, (noted, steady))
        return self.looked[1]

    def do(
        self, pick: Choice, *, age_s: float = 0.0, screen: str = "phone", late: bool = False
    ) -> str | None:
        """Note in both runs what a hand picks at each: the code of a refusal, the same from both, or None."""
        self.count += 1
        codes: list[str | None] = []
        views = self.views()
        nows = (self.machine.now(), self.steady_now())
        for log, view, now in zip((self.noted, self.steady), views, nows, strict=True):
            asked = pick(log.run, view)
            if asked is None:
                codes.append(NOTHING)
                continue
            how = "queued" if late else "tapped"
            command = Command(f"{screen}:{self.count}", asked, screen, how, age_s, saw_seq=log.run.last_seq)
            try:
                log.take(command, now)
                codes.append(None)
            except Refused as refused:
                codes.append(refused.refusal.code)
        assert codes[0] == codes[1], "a clock that jumped decides nothing"
        return codes[0]
