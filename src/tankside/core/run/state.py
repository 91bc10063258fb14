"""Where a run stands, as a fold of its settled notes: facts only, nothing computed from a science."""

from __future__ import annotations

from dataclasses import dataclass
from uuid import UUID

from tankside.core.planning.plan import Plan, PlannedBath, PlannedTankful
from tankside.core.run.envelope import Event
from tankside.core.run.events import (
    BenchBottle,
    CloseHow,
    LiquidPrepared,
    Outcome,
    ReadingTaken,
    TestTimed,
)
from tankside.core.run.instants import Timeline
from tankside.core.run.settle import Settled


@dataclass(frozen=True, slots=True)
class Mark:
    """When something happened on the run's timeline, and which event says so."""

    event: str
    at_us: int
    within_s: float = 1.0


@dataclass(frozen=True, slots=True)
class Fill:
    """Fill `n` of a wash."""

    n: int
    mark: Mark
    temp_c: float | None = None


@dataclass(frozen=True, slots=True)
class Fate:
    """Where a bath went: back into `bottle`, or away when None; `ml` None is as much as was poured."""

    mark: Mark
    bottle: str | None
    ml: float | None = None


@dataclass(frozen=True, slots=True)
class Pass:
    """One time that a bath was in the tank.

    `left_us` is when the next bath was poured over an undrained one. `pour_noted` is False where only its
    draining was noted. `repeats` are later notes of the same pour, kept as a doubt.
    """

    bath: str
    bottle: str | None
    ml: float | None
    poured: Mark
    plan_no: int
    took_s: float | None = None
    pour_noted: bool = True
    drained: Mark | None = None
    left_us: int | None = None
    fate: Fate | None = None
    fills: tuple[Fill, ...] = ()
    repeats: tuple[Mark, ...] = ()

    @property
    def ended_us(self) -> int | None:
        """When it left the film, None while it is in the tank."""
        return self.drained.at_us if self.drained else self.left_us

    @property
    def fills_done(self) -> int:
        """How many fills of water it has had, the pour being the first."""
        return max((fill.n for fill in self.fills), default=1)

    @property
    def filled_us(self) -> int:
        """When its last fill, or its only one, was poured."""
        return max((fill.mark.at_us for fill in self.fills), default=self.poured.at_us)


@dataclass(frozen=True, slots=True)
class Confirmed:
    """A bottle was in the hand for `bath`."""

    bath: str
    bottle: str
    mark: Mark


@dataclass(frozen=True, slots=True)
class Told:
    """The end of `bath` that the person was told."""

    bath: str
    mark: Mark
    end_after_s: float
    interval_s: tuple[float, float]
    because: str
    model: str


@dataclass(frozen=True, slots=True)
class Cycle:
    """One agitation noted by hand."""

    bath: str
    cycle: int
    done: bool
    mark: Mark


@dataclass(frozen=True, slots=True)
class Skipped:
    """A bath left out."""

    bath: str
    why: str
    mark: Mark


@dataclass(frozen=True, slots=True)
class Hung:
    """A roll on the line."""

    roll: str
    place: str
    mark: Mark


@dataclass(frozen=True, slots=True)
class Ended:
    """Nothing more is done to a tankful."""

    outcome: Outcome
    mark: Mark


@dataclass(frozen=True, slots=True)
class TankfulState:
    """Where one tankful stands; `loose` are notes that fit nothing, each a doubt.

    `former` are baths of earlier plans that the present one no longer holds.
    """

    plan: PlannedTankful
    former: tuple[PlannedBath, ...] = ()
    loaded: tuple[str, ...] = ()
    confirmed: tuple[Confirmed, ...] = ()
    passes: tuple[Pass, ...] = ()
    told: tuple[Told, ...] = ()
    cycles: tuple[Cycle, ...] = ()
    skipped: tuple[Skipped, ...] = ()
    hung: tuple[Hung, ...] = ()
    ended: Ended | None = None
    loose: tuple[tuple[str, str, Mark], ...] = ()

    @property
    def letter(self) -> str:
        """Its letter."""
        return self.plan.letter

    @property
    def in_tank(self) -> Pass | None:
        """The bath now in the tank."""
        return self.passes[-1] if self.passes and self.passes[-1].ended_us is None else None

    def bath(self, bath: str) -> PlannedBath:
        """The planned bath of that id, in this plan or an earlier one; KeyError if none ever held it."""
        for one in (*self.plan.baths, *self.former):
            if one.id == bath:
                return one
        raise KeyError(bath)

    def told_end_s(self, bath: str) -> float:
        """The end of `bath` after its pour as the person was told it last, in seconds."""
        told = [one for one in self.told if one.bath == bath]
        return told[-1].end_after_s if told else self.bath(bath).times.aim_s


@dataclass(frozen=True, slots=True)
class Reading:
    """A temperature that was read."""

    mark: Mark
    body: ReadingTaken


@dataclass(frozen=True, slots=True)
class Prepared:
    """A liquid that stands ready."""

    mark: Mark
    body: LiquidPrepared


@dataclass(frozen=True, slots=True)
class Tested:
    """A test piece that was timed."""

    mark: Mark
    body: TestTimed


@dataclass(frozen=True, slots=True)
class Written:
    """Free words, or what was marked about a roll."""

    mark: Mark
    about: str
    text: str


@dataclass(frozen=True, slots=True)
class ClockDoubt:
    """Two clocks that parted by `by_s`; `settled` once the person said which is right."""

    mark: Mark
    boot: str
    by_s: float
    across: bool = False
    settled: bool = False


@dataclass(frozen=True, slots=True)
class RunState:
    """Where a whole session stands; `clocks_settled` are the events of clock doubts that were answered."""

    plan: Plan
    plan_no: int
    zone: str
    opened: Mark
    timeline: Timeline
    bench: tuple[BenchBottle, ...] = ()
    tankfuls: tuple[TankfulState, ...] = ()
    readings: tuple[Reading, ...] = ()
    prepared: tuple[Prepared, ...] = ()
    tests: tuple[Tested, ...] = ()
    written: tuple[Written, ...] = ()
    clock_doubts: tuple[ClockDoubt, ...] = ()
    clocks_settled: frozenset[str] = frozenset()
    answered: tuple[tuple[str, str], ...] = ()
    closed: CloseHow | None = None

    def tankful(self, letter: str) -> TankfulState:
        """The tankful of that letter; KeyError if there is none."""
        for one in self.tankfuls:
            if one.letter == letter:
                return one
        raise KeyError(letter)

    def bench_bottle(self, code: str) -> BenchBottle | None:
        """The bottle of that code as it stood at the opening."""
        return next((one for one in self.bench if one.code == code), None)


@dataclass(frozen=True, slots=True)
class Run:
    """A run as everyone holds it: its rows in order, what they settle to, and where that leaves things."""

    key: UUID
    events: tuple[Event, ...]
    settled: Settled
    state: RunState

    @property
    def last_seq(self) -> int:
        """The last sequence number."""
        return self.events[-1].seq
