"""What a person can note or ask for at the sink."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar, get_args
from uuid import UUID

from tankside.core.planning.plan import Plan
from tankside.core.run.envelope import How
from tankside.core.run.events import (
    BenchBottle,
    CloseHow,
    ConfirmedBy,
    Observed,
    Outcome,
    ReadingOf,
    TestKind,
    TrueClock,
)


@dataclass(frozen=True, slots=True)
class OpenRun:
    """Open a session with this plan."""

    kind: ClassVar[str] = "open-run"
    plan: Plan
    zone: str
    people: tuple[str, ...] = ()
    models: tuple[str, ...] = ()
    app: str = ""
    bench: tuple[BenchBottle, ...] = ()


@dataclass(frozen=True, slots=True)
class ConfirmBottle:
    """'K7M4-T, measured'; another bottle than the planned one needs `knowingly`."""

    kind: ClassVar[str] = "confirm-bottle"
    bath: str
    bottle: str
    by: ConfirmedBy = "eye"
    knowingly: bool = False


@dataclass(frozen=True, slots=True)
class PourBath:
    """'K7M4-T, pouring': `bottle` and `ml` None are as planned; `jug` is what stands in no bottle."""

    kind: ClassVar[str] = "pour-bath"
    bath: str
    bottle: str | None = None
    ml: float | None = None
    took_s: float | None = None
    jug: bool = False


@dataclass(frozen=True, slots=True)
class DrainBath:
    """'Draining': `to` is 'drain' or the code of a bottle, None as the method says.

    Before the bath's least time `held` must be True.
    """

    kind: ClassVar[str] = "drain-bath"
    bath: str
    to: str | None = None
    held: bool = False
    ml: float | None = None


@dataclass(frozen=True, slots=True)
class ChangeWater:
    """'Water changed': `n` None is the next fill."""

    kind: ClassVar[str] = "change-water"
    bath: str
    n: int | None = None
    temp_c: float | None = None


@dataclass(frozen=True, slots=True)
class NoteAgitation:
    """'I missed one', or 'Inverted'; `cycle` None is the last that was due."""

    kind: ClassVar[str] = "note-agitation"
    bath: str
    cycle: int | None = None
    done: bool = False


@dataclass(frozen=True, slots=True)
class TakeReading:
    """A temperature as read; `offset_c` None is that of the plan's thermometer."""

    kind: ClassVar[str] = "take-reading"
    of: ReadingOf
    which: str
    raw_c: float
    thermometer: str | None = None
    offset_c: float | None = None


@dataclass(frozen=True, slots=True)
class PrepareLiquid:
    """A liquid stands ready."""

    kind: ClassVar[str] = "prepare-liquid"
    liquid: str
    ml: float
    bottle: str | None = None
    drawn_from: str | None = None
    drawn_ml: float = 0.0
    parts: str = ""
    temp_c: float | None = None
    measure: str = ""


@dataclass(frozen=True, slots=True)
class LoadTank:
    """Rolls, by code, are in the tank."""

    kind: ClassVar[str] = "load-tank"
    tankful: str
    rolls: tuple[str, ...] = ()
    jammed: bool = False


@dataclass(frozen=True, slots=True)
class TimeTest:
    """A test piece was timed."""

    kind: ClassVar[str] = "time-test"
    bottle: str
    film: str
    test: TestKind
    seconds: float
    temp_c: float | None = None
    fresh: bool = False


@dataclass(frozen=True, slots=True)
class MarkRoll:
    """Something about one roll."""

    kind: ClassVar[str] = "mark-roll"
    roll: str
    mark: str


@dataclass(frozen=True, slots=True)
class HangFilm:
    """'Hung': `rolls` empty are all of the tankful."""

    kind: ClassVar[str] = "hang-film"
    tankful: str
    rolls: tuple[str, ...] = ()
    place: str = ""


@dataclass(frozen=True, slots=True)
class WriteNote:
    """Free words, about one tankful or the session."""

    kind: ClassVar[str] = "write-note"
    text: str
    tankful: str | None = None


@dataclass(frozen=True, slots=True)
class WithdrawNote:
    """That did not happen."""

    kind: ClassVar[str] = "withdraw-note"
    about: str
    why: str = ""


@dataclass(frozen=True, slots=True)
class RetimeNote:
    """That happened `happened_age_s` before now."""

    kind: ClassVar[str] = "retime-note"
    about: str
    happened_age_s: float
    why: str = ""


@dataclass(frozen=True, slots=True)
class RestateNote:
    """That was really this."""

    kind: ClassVar[str] = "restate-note"
    about: str
    body: Observed
    why: str = ""


@dataclass(frozen=True, slots=True)
class SkipBath:
    """Leave a bath out; `why` may not be empty."""

    kind: ClassVar[str] = "skip-bath"
    bath: str
    why: str


@dataclass(frozen=True, slots=True)
class ChangePlan:
    """Go on with this whole new plan."""

    kind: ClassVar[str] = "change-plan"
    plan: Plan
    because: str
    changes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class EndTankful:
    """Do nothing more to this tankful."""

    kind: ClassVar[str] = "end-tankful"
    tankful: str
    outcome: Outcome


@dataclass(frozen=True, slots=True)
class CloseRun:
    """End the session; tankfuls still open are refused unless it is 'broken off'."""

    kind: ClassVar[str] = "close-run"
    how: CloseHow = "finished"


@dataclass(frozen=True, slots=True)
class AnswerDoubt:
    """The answer to a doubt that the view shows."""

    kind: ClassVar[str] = "answer-doubt"
    about: str
    answer: str


@dataclass(frozen=True, slots=True)
class SettleClock:
    """Which clock is right, of the doubt that the event `about` raised (None: the one last raised)."""

    kind: ClassVar[str] = "settle-clock"
    true_is: TrueClock
    about: str | None = None


Observation = (
    PourBath
    | DrainBath
    | ChangeWater
    | NoteAgitation
    | TakeReading
    | PrepareLiquid
    | LoadTank
    | TimeTest
    | MarkRoll
    | HangFilm
    | WriteNote
)
PuttingRight = WithdrawNote | RetimeNote | RestateNote
Request = OpenRun | ConfirmBottle | SkipBath | ChangePlan | EndTankful | CloseRun | AnswerDoubt | SettleClock
Asked = Observation | PuttingRight | Request


@dataclass(frozen=True, slots=True)
class Command:
    """What was asked, by whom, and how long ago it happened.

    `id` is 'device:n'. `age_s` is counted on the device's own clock (negative is the future), `within_s` how
    far off it may be. `saw_seq` is the last sequence number that the screen of a request had seen.
    """

    id: str
    asked: Asked
    device: str = ""
    how: How = "tapped"
    age_s: float = 0.0
    within_s: float = 1.0
    saw_seq: int | None = None
    run: UUID | None = None


COMMANDS: Mapping[str, type[Asked]] = MappingProxyType({one.kind: one for one in get_args(Asked)})
"""Kind to class, for whoever reads commands from outside."""
