"""What can differ between plan and run, each as a value with what it means for contrast or permanence."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.development.advice import Size
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.baths import BathKind
from tankside.core.run.advise_wash import Left
from tankside.core.run.doubts import Doubt
from tankside.core.run.fixer_used import FixerUsed
from tankside.core.run.standing import OutOfOrder
from tankside.core.run.wrong_bottle import Contamination

VoidWash = Literal["fix", "fixer"]
Stayed = Literal["longer", "shorter", "too long", "too short"]
RightWay = Literal["retimed", "restated", "withdrawn"]


@dataclass(frozen=True, slots=True)
class OfContrast:
    """What something did to the contrast, in percent with its interval, and how that looks."""

    percent: Estimate
    size: Size


@dataclass(frozen=True, slots=True)
class Begun:
    """The first pour of a tankful came `by_s` later than planned (negative: earlier)."""

    by_s: float


@dataclass(frozen=True, slots=True)
class EndMoved:
    """The end of a development was told anew, `from_s` to `to_s` after its pour; `because` is a code."""

    from_s: float
    to_s: float
    because: str


@dataclass(frozen=True, slots=True)
class Drained:
    """A developer was poured out `by_s` after the end told last (negative: before it)."""

    by_s: float
    told_s: float
    contrast: OfContrast | None


@dataclass(frozen=True, slots=True)
class Timed:
    """Another bath stayed `by_s` longer than its aim (negative: shorter); `limit_s` is the one it passed."""

    bath: BathKind
    stayed: Stayed
    by_s: float
    limit_s: float


@dataclass(frozen=True, slots=True)
class Missed:
    """Inversions that were missed, counted from 0; the first minute matters for evenness, no other does."""

    cycles: tuple[int, ...]
    first_minute: bool


@dataclass(frozen=True, slots=True)
class Warmth:
    """The tank read `read_c` where the plan expected `planned_c`; `contrast` is what was left of it."""

    read_c: float
    planned_c: float
    contrast: OfContrast | None


@dataclass(frozen=True, slots=True)
class OtherBottle:
    """A bath was poured from another bottle: it was `poured` where `owed` was due; alike if it was another
    bottle of the same kind."""

    bottle: str
    poured: BathKind
    owed: BathKind


@dataclass(frozen=True, slots=True)
class Spoilt:
    """A bath went back into the wrong bottle."""

    contamination: Contamination


@dataclass(frozen=True, slots=True)
class Disorder:
    """A bath came before one that was owed."""

    order: OutOfOrder


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A bath was skipped, or never noted as poured (`noted` False)."""

    bath: BathKind
    why: str
    noted: bool


@dataclass(frozen=True, slots=True)
class Washed:
    """A wash of other fills or shorter soaks: what is left by plan, and the half-life that would suffice.

    `void` where the answer does not hold: the fix was too short or left out, or the fixer past its limit.
    """

    fills: int
    planned: int
    shortest_s: float
    left: Left
    limit_g_m2: float
    enough_if_s: float | None
    void: VoidWash | None


@dataclass(frozen=True, slots=True)
class PastFixer:
    """Film fixed in a fixer that its count, its test piece or its look has ended."""

    used: FixerUsed


@dataclass(frozen=True, slots=True)
class ColdWash:
    """Wash water under 10 C: no plan holds for it."""

    temp_c: float


@dataclass(frozen=True, slots=True)
class Doubtful:
    """Notes that do not fit together, and nobody has said which is right."""

    doubt: Doubt


@dataclass(frozen=True, slots=True)
class PutRight:
    """A note that was put right afterwards; `by_s` is how far it was moved in time."""

    way: RightWay
    kind: str
    by_s: float = 0.0
    why: str = ""


@dataclass(frozen=True, slots=True)
class Replanned:
    """The plan was changed while it was carried out."""

    because: str
    changes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Noted:
    """The person's own words; `about` is a roll's code where they are about one."""

    text: str
    about: str = ""


What = (
    Begun
    | EndMoved
    | Drained
    | Timed
    | Missed
    | Warmth
    | OtherBottle
    | Spoilt
    | Disorder
    | LeftOut
    | Washed
    | PastFixer
    | ColdWash
    | Doubtful
    | PutRight
    | Replanned
    | Noted
)


@dataclass(frozen=True, slots=True)
class Deviation:
    """Something that differed, at `at_us` on the run's timeline; `bath` is its stable id where it has one."""

    at_us: int
    tankful: str | None
    bath: str | None
    what: What
