"""What a person asks of one session, frozen: working it out again gives the same plan again."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal
from uuid import UUID

from tankside.core.agitation.patterns import Agitation
from tankside.core.methods.baths import HandWork
from tankside.core.methods.combinations import Combination
from tankside.core.permanence.fixer_standing import FixerKnown
from tankside.core.planning.assumptions import Assumption
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.rolls.roll import Roll
from tankside.core.shelf.contents import Contents
from tankside.core.solutions.kinds import SolutionKind
from tankside.core.solutions.leader_test import LeaderAnswer
from tankside.core.solutions.notation import Dilution

FirstUse = Literal["batch", "combination", "thermometer"]


@dataclass(frozen=True, slots=True)
class WantedRoll:
    """A roll and what it is to be developed by; `released` takes a precious one against the advice."""

    roll: Roll
    combination: Combination
    released: bool = False


@dataclass(frozen=True, slots=True)
class Supply:
    """A reused or thrown-away bath: how it is diluted, and the bottle it stands in if there is one.

    `volume_ml` is what the bottle holds (None: make what the tank takes); `rolls_used` of 135-36 or 120.
    `fixer` is what is known of it where it is one; `passed_over` are bottles that were not offered for it.
    `until` is the bottle's last day by its keeping time, None where nobody knows.
    """

    kind: SolutionKind
    name: str
    dilution: Dilution
    volume_ml: float | None = None
    bottle: str | None = None
    rolls_used: float = 0.0
    fixer: FixerKnown | None = None
    passed_over: tuple[str, ...] = ()
    until: date | None = None


@dataclass(frozen=True, slots=True)
class DeveloperBottle:
    """A bottle of developer on the shelf, as strong as the stock that `combination` is mixed of.

    `until` is its last day by its keeping time, `leader` what its latest test said; None where nobody
    knows. `anyway` takes it against the advice.
    """

    combination: UUID
    code: str
    name: str
    contents: Contents
    until: date | None = None
    leader: LeaderAnswer | None = None
    anyway: bool = False


@dataclass(frozen=True, slots=True)
class BathTimes:
    """Times of one's own for the baths after the developer, in seconds; None keeps the default method's."""

    stop_s: float | None = None
    fix_s: float | None = None
    wash_fill_s: float | None = None
    wash_fills: int | None = None
    wetting_s: float | None = None


@dataclass(frozen=True, slots=True)
class Wish:
    """Everything that a plan is worked out from.

    `reads_c` is what the mixed developer reads now (C, after the thermometer's offset), None while it is
    still to be mixed. `first_uses` are what no roll has gone through yet. `starts` is aware.
    """

    rolls: tuple[WantedRoll, ...]
    tanks: tuple[Tank, ...]
    place: Place
    thermometer: Thermometer
    supplies: tuple[Supply, ...]
    starts: datetime
    reads_c: float | None = None
    first_uses: tuple[FirstUse, ...] = ()
    times: BathTimes = BathTimes()
    hands: HandWork = HandWork()
    assumed: tuple[Assumption, ...] = ()
    own_time_s: float | None = None
    agitation: Agitation | None = None
    """How the developer is agitated where not as its time was printed for."""
    developer_bottles: tuple[tuple[UUID, str], ...] = ()
    """Bottles of developer already made at 'Get ready', by combination."""
    stocks: tuple[DeveloperBottle, ...] = ()
    """Bottles of developer that the shelf offers to mix from."""

    def supply(self, kind: SolutionKind) -> Supply:
        """The supply of one kind of bath."""
        return next(one for one in self.supplies if one.kind == kind)
