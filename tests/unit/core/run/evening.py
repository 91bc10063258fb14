"""An invented evening at an invented place: plans, bottles and a sink to tap at. No real films or people."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from uuid import UUID

from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.baths import Step
from tankside.core.methods.default_method import default_method
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.plan import (
    Development,
    Liquid,
    Plan,
    PlannedBath,
    PlannedRoll,
    PlannedTankful,
)
from tankside.core.rates import BelievedRate
from tankside.core.run.commands import Asked, Command, OpenRun
from tankside.core.run.decide import Answer, decide
from tankside.core.run.envelope import Event, How
from tankside.core.run.events import BenchBottle
from tankside.core.run.instants import Instant
from tankside.core.run.replay import follow, replay
from tankside.core.run.state import Run, RunState

DEVELOPER, STOP, FIXER, WETTING = "R5TN-6", "K7M4-T", "F9QD-2", "W2HB-W"
STARTS = datetime(2026, 3, 7, 20, 0, tzinfo=UTC)
START_US = int(STARTS.timestamp()) * 1_000_000
RUN = UUID(int=1)
BENCH = (
    BenchBottle(DEVELOPER, "developer", "umber stock", 480.0, 1.0, "grey", "far left"),
    BenchBottle(STOP, "stop bath", "stop", 900.0, 0.1, "green", "second from the left"),
    BenchBottle(FIXER, "fixer", "rapid fixer", 1000.0, 0.2, "white", "third from the left"),
    BenchBottle(WETTING, "wetting agent", "wetting", 1000.0, 0.005, "black", "right"),
)


def development(*, room_c: float = 20.0, start_c: float = 20.0, time_s: float = 570.0) -> Development:
    """9:30 at 20 C by default, contrast 0.56 of 0.95 (0.75-1.30), tank of 106 minutes."""
    return Development(
        time_s=Estimate(time_s, 0.9 * time_s, 1.1 * time_s, "s", "invented leaflet"),
        rate=BelievedRate(),
        start_c=start_c,
        room_c=room_c,
        tau_min=Estimate(106.0, 60.0, 180.0, "min", "ours"),
        c_inf_over_ci=Estimate(0.95 / 0.56, 0.75 / 0.56, 1.30 / 0.56, "", "ours"),
        induction_s=30.0,
        time_rule="rate",
        contrast=0.56,
        model="heat-1",
        source="invented leaflet",
    )


def planned_bath(letter: str, step: Step) -> PlannedBath:
    """A step of the default method as a bath of one tankful."""
    liquid = {"wash": None, "develop": f"develop-{letter}"}.get(step.kind, step.kind)
    return PlannedBath(
        f"{letter}.{step.kind}",
        step.kind,
        liquid,
        step.times,
        step.destination,
        step.agitation,
        step.fills,
    )


def tankful(letter: str, *, time_s: float = 570.0, room_c: float = 20.0, rolls: int = 1) -> PlannedTankful:
    """A tankful of the default method."""
    seed = ord(letter)
    return PlannedTankful(
        letter=letter,
        tank=Tank(UUID(int=seed), f"tank {letter}", 500.0, 112.0, 106.0),
        rolls=tuple(
            PlannedRoll(UUID(int=seed * 10 + n), f"{letter}ROLL-{n}", "river 100", 1.0, False, "cubic")
            for n in range(rolls)
        ),
        baths=tuple(
            planned_bath(letter, step) for step in default_method(time_s=time_s, fix_longer=False).steps
        ),
        development=development(room_c=room_c, time_s=time_s),
        starts_after=None if letter == "A" else "A.develop:poured",
        starts_s=0.0 if letter == "A" else 720.0,
    )


def plan(letters: str = "AB", *, room_c: float = 20.0, offset_c: float = 0.0, time_s: float = 570.0) -> Plan:
    """A session of one tankful or more, reused stop bath and fixer, developer 1+1 used once."""
    liquids = (
        *(
            Liquid(
                f"develop-{one}",
                "developer",
                "umber stock",
                "1+1",
                500.0,
                250.0,
                250.0,
                False,
                None,
                DEVELOPER,
            )
            for one in letters
        ),
        Liquid("stop", "stop bath", "stop", "1+9", 500.0, 50.0, 450.0, True, None, STOP),
        Liquid("fix", "fixer", "rapid fixer", "1+4", 500.0, 100.0, 400.0, True, None, FIXER),
        Liquid("wetting", "wetting agent", "wetting", "1+200", 500.0, 2.5, 497.5, False, None, None),
    )
    return Plan(
        key=UUID(int=2),
        number=1,
        made=STARTS,
        place=Place(UUID(int=3), "spare bathroom of the mill", room_c=room_c),
        thermometer=Thermometer(UUID(int=4), "glass rod", offset_c=offset_c),
        tankfuls=tuple(tankful(one, room_c=room_c, time_s=time_s) for one in letters),
        liquids=liquids,
        starts=STARTS,
    )


def at(seconds: float, *, boot: str = "first", wall_jump_s: float = 0.0) -> Instant:
    """An instant `seconds` after 20:00 of that evening."""
    return Instant(START_US + round((seconds + wall_jump_s) * 1e6), round((seconds + 5000.0) * 1e6), boot)


@dataclass
class Sink:
    """A run with hands: `do` taps at a second of the evening, `run` is where it stands."""

    run: Run
    count: int = 0
    answers: list[Answer] = field(default_factory=list)
    wall_jump_s: float = 0.0

    def do(
        self, asked: Asked, seconds: float, *, age_s: float = 0.0, saw: int | None = None, how: How = "tapped"
    ) -> tuple[Event, ...]:
        """Tap `asked` at `seconds`, for something that happened `age_s` before."""
        self.count += 1
        command = Command(f"phone:{self.count}", asked, "phone", how, age_s, saw_seq=saw)
        decision = decide(self.run, command, at(seconds, wall_jump_s=self.wall_jump_s))
        self.run = follow(self.run, decision.events)
        self.answers.append(decision.answer)
        return decision.events

    @property
    def state(self) -> RunState:
        """Where things stand."""
        return self.run.state


def opened(planned: Plan | None = None, *, bench: tuple[BenchBottle, ...] = BENCH) -> Sink:
    """The evening's run, opened a minute before the first pour."""
    asked = OpenRun(planned or plan(), "Europe/Oslo", bench=bench)
    decision = decide(None, Command("phone:0", asked, "phone", run=RUN), at(-60))
    return Sink(replay(decision.events))


def without_told(state: RunState) -> RunState:
    """The state but for what the person was told, which depends on when it was noted."""
    return replace(state, tankfuls=tuple(replace(one, told=()) for one in state.tankfuls))
