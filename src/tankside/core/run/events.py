"""What happened in a run: frozen, past tense, each a kind and a version, never a class path."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar, Literal, get_args

from tankside.core.permanence.fixer_standing import FixerKnown
from tankside.core.planning.plan import Plan
from tankside.core.run.instants import Instant
from tankside.core.solutions.kinds import SolutionKind

TestKind = Literal["clearing", "leader"]
ReadingOf = Literal["tap", "room", "water bath", "bottle", "jug", "tank"]
ConfirmedBy = Literal["eye", "scan", "said"]
Outcome = Literal["hung", "given up", "image lost"]
CloseHow = Literal["finished", "broken off"]
TrueClock = Literal["elapsed", "wall"]


@dataclass(frozen=True, slots=True)
class BenchBottle:
    """A bottle as it stood when the run opened: `stock_share` is 1.0 for stock, 0.5 for 1+1.

    `ml` is None where nobody knows how much is in it; `contaminated` once something else went into it;
    `fixer` is what was known of it where it is one.
    """

    code: str
    kind: SolutionKind
    name: str
    ml: float | None = None
    stock_share: float = 1.0
    cap: str = ""
    place: str = ""
    contaminated: bool = False
    fixer: FixerKnown | None = None


@dataclass(frozen=True, slots=True)
class RunOpened:
    """A session began with this plan; `models` are the versions that advice is computed with."""

    kind: ClassVar[str] = "run-opened"
    version: ClassVar[int] = 2
    plan: Plan
    zone: str
    people: tuple[str, ...] = ()
    models: tuple[str, ...] = ()
    app: str = ""
    bench: tuple[BenchBottle, ...] = ()


@dataclass(frozen=True, slots=True)
class PlanAmended:
    """The whole new plan, why, and in words what differs."""

    kind: ClassVar[str] = "plan-amended"
    version: ClassVar[int] = 2
    plan: Plan
    because: str
    changes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ReadingTaken:
    """A temperature as read; `raw_c` + `offset_c` is the true one. `which` is a letter, code or name."""

    kind: ClassVar[str] = "reading-taken"
    version: ClassVar[int] = 1
    of: ReadingOf
    which: str
    thermometer: str
    raw_c: float
    offset_c: float = 0.0

    @property
    def temp_c(self) -> float:
        """The temperature after the thermometer's own correction.

        >>> round(ReadingTaken("tank", "A", "glass", 19.5, -0.3).temp_c, 3)
        19.2
        """
        return self.raw_c + self.offset_c


@dataclass(frozen=True, slots=True)
class LiquidPrepared:
    """`ml` of a liquid stands ready in `bottle` (None: a jug), `drawn_ml` of it drawn from `drawn_from`."""

    kind: ClassVar[str] = "liquid-prepared"
    version: ClassVar[int] = 1
    liquid: str
    ml: float
    bottle: str | None = None
    drawn_from: str | None = None
    drawn_ml: float = 0.0
    parts: str = ""
    temp_c: float | None = None
    measure: str = ""


@dataclass(frozen=True, slots=True)
class NoteWritten:
    """Free words."""

    kind: ClassVar[str] = "note-written"
    version: ClassVar[int] = 1
    text: str


@dataclass(frozen=True, slots=True)
class ClockDoubted:
    """Wall and elapsed time of one boot parted by `by_s`; `across`: a new boot began that far in the past."""

    kind: ClassVar[str] = "clock-doubted"
    version: ClassVar[int] = 1
    by_s: float
    boot: str
    across: bool = False


@dataclass(frozen=True, slots=True)
class ClockSettled:
    """Which clock the person found right: `shift_s` moves that boot as a whole, no interval within it.

    `settles` are the events whose doubt it answers; by name, for a clock may set them after their answer.
    """

    kind: ClassVar[str] = "clock-settled"
    version: ClassVar[int] = 1
    true_is: TrueClock
    boot: str
    shift_s: float = 0.0
    settles: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class DoubtAnswered:
    """The person's answer to the doubt `about`."""

    kind: ClassVar[str] = "doubt-answered"
    version: ClassVar[int] = 1
    about: str
    answer: str


@dataclass(frozen=True, slots=True)
class RunClosed:
    """The session ended; `left_open` names the tankfuls that were not done."""

    kind: ClassVar[str] = "run-closed"
    version: ClassVar[int] = 1
    how: CloseHow
    left_open: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TankLoaded:
    """Rolls, by code, went onto reels and into the tank."""

    kind: ClassVar[str] = "tank-loaded"
    version: ClassVar[int] = 1
    tank: str
    rolls: tuple[str, ...]
    jammed: bool = False


@dataclass(frozen=True, slots=True)
class BottleConfirmed:
    """The right bottle, or one taken knowingly, was in the hand when its bath was measured out."""

    kind: ClassVar[str] = "bottle-confirmed"
    version: ClassVar[int] = 1
    bath: str
    bottle: str
    by: ConfirmedBy = "eye"


@dataclass(frozen=True, slots=True)
class BathPoured:
    """Pour-in began; `bottle` None is water or a jug of no bottle, `ml` None is the tank's volume."""

    kind: ClassVar[str] = "bath-poured"
    version: ClassVar[int] = 1
    bath: str
    bottle: str | None = None
    ml: float | None = None
    took_s: float | None = None


@dataclass(frozen=True, slots=True)
class AgitationNoted:
    """Agitation cycle `cycle` (0 is the first of the bath) was done, or missed."""

    kind: ClassVar[str] = "agitation-noted"
    version: ClassVar[int] = 1
    bath: str
    cycle: int
    done: bool


@dataclass(frozen=True, slots=True)
class EndMoved:
    """What the person was told: the bath ends `end_after_s` after its pour, `interval_s` being 5-95 %.

    `because` is 'reading', 'put right' or 'no reading'; `model` the version that it was computed with.
    """

    kind: ClassVar[str] = "end-moved"
    version: ClassVar[int] = 1
    bath: str
    end_after_s: float
    interval_s: tuple[float, float]
    because: str
    model: str


@dataclass(frozen=True, slots=True)
class BathDrained:
    """Pour-out began."""

    kind: ClassVar[str] = "bath-drained"
    version: ClassVar[int] = 1
    bath: str


@dataclass(frozen=True, slots=True)
class BathReturned:
    """The bath went back into `bottle`; `ml` None is as much as was poured."""

    kind: ClassVar[str] = "bath-returned"
    version: ClassVar[int] = 1
    bath: str
    bottle: str
    ml: float | None = None


@dataclass(frozen=True, slots=True)
class BathDiscarded:
    """The bath went down the drain or into the waste can; `ml` None is as much as was poured."""

    kind: ClassVar[str] = "bath-discarded"
    version: ClassVar[int] = 1
    bath: str
    ml: float | None = None


@dataclass(frozen=True, slots=True)
class TestTimed:
    """A test piece took `seconds` in the bath of `bottle`."""

    kind: ClassVar[str] = "test-timed"
    version: ClassVar[int] = 1
    bottle: str
    film: str
    test: TestKind
    seconds: float
    temp_c: float | None = None
    fresh: bool = False


@dataclass(frozen=True, slots=True)
class WaterChanged:
    """Fill `n` of a wash began; fill 1 is the pour of the wash itself."""

    kind: ClassVar[str] = "water-changed"
    version: ClassVar[int] = 1
    bath: str
    n: int
    temp_c: float | None = None


@dataclass(frozen=True, slots=True)
class BathSkipped:
    """A bath was left out, and why."""

    kind: ClassVar[str] = "bath-skipped"
    version: ClassVar[int] = 1
    bath: str
    why: str


@dataclass(frozen=True, slots=True)
class RollMarked:
    """Something about one roll: torn, stuck on the reel, cut short."""

    kind: ClassVar[str] = "roll-marked"
    version: ClassVar[int] = 1
    roll: str
    mark: str


@dataclass(frozen=True, slots=True)
class FilmHung:
    """A roll hangs."""

    kind: ClassVar[str] = "film-hung"
    version: ClassVar[int] = 1
    roll: str
    place: str = ""


@dataclass(frozen=True, slots=True)
class TankfulEnded:
    """Nothing more is done to this tankful."""

    kind: ClassVar[str] = "tankful-ended"
    version: ClassVar[int] = 1
    outcome: Outcome


@dataclass(frozen=True, slots=True)
class NoteWithdrawn:
    """The event `about` did not happen."""

    kind: ClassVar[str] = "note-withdrawn"
    version: ClassVar[int] = 1
    about: str
    why: str = ""


@dataclass(frozen=True, slots=True)
class NoteRetimed:
    """The event `about` happened at another time."""

    kind: ClassVar[str] = "note-retimed"
    version: ClassVar[int] = 1
    about: str
    happened: Instant
    why: str = ""


Observed = (
    ReadingTaken
    | LiquidPrepared
    | NoteWritten
    | TankLoaded
    | BottleConfirmed
    | BathPoured
    | AgitationNoted
    | BathDrained
    | BathReturned
    | BathDiscarded
    | TestTimed
    | WaterChanged
    | RollMarked
    | FilmHung
)
"""What a note can be restated to: bodies of things that happened to hands, liquids and film."""


@dataclass(frozen=True, slots=True)
class NoteRestated:
    """The event `about` was really this; `body` is of the same kind."""

    kind: ClassVar[str] = "note-restated"
    version: ClassVar[int] = 1
    about: str
    body: Observed
    why: str = ""


Body = (
    Observed
    | RunOpened
    | PlanAmended
    | ClockDoubted
    | ClockSettled
    | DoubtAnswered
    | RunClosed
    | EndMoved
    | BathSkipped
    | TankfulEnded
    | NoteWithdrawn
    | NoteRetimed
    | NoteRestated
)

EVENTS: Mapping[str, type[Body]] = MappingProxyType({one.kind: one for one in get_args(Body)})
"""Kind to class, for whoever stores and reads bodies."""
