"""One working session worked out, frozen: what a run opens with and every screen reads."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal
from uuid import UUID

from tankside.core.agitation.patterns import Agitation
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.baths import BathKind, Destination, HandWork, Times
from tankside.core.planning.assumptions import Assumption
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.wish import FirstUse, Wish
from tankside.core.rates import BelievedRate
from tankside.core.rolls.roll import Grain
from tankside.core.shelf.fitness import Reason
from tankside.core.solutions.kinds import SolutionKind

DoubtStanding = Literal["passed over", "to test", "taken anyway"]


@dataclass(frozen=True, slots=True)
class PlannedRoll:
    """A roll as the plan saw it: its key and code, and what chemistry feels of it."""

    key: UUID
    code: str
    film: str
    area_units: float
    both_sides: bool
    grain: Grain
    precious: bool = False


@dataclass(frozen=True, slots=True)
class Liquid:
    """Something to have ready: `stock_ml` of `source` and `water_ml`, together `volume_ml`.

    `key` is its stable word in this plan ('develop-A', 'stop', 'fix', 'wetting'). `bottle` is the code of
    the bottle it comes from and, for a reusable one, goes back to; None until it is made at 'Get ready'.
    `mix_to_c` is the temperature to mix to, None where the tap will do. `stock_from` is the bottle on the
    shelf that its stock is drawn from, None where the stock is not kept there.
    """

    key: str
    kind: SolutionKind
    name: str
    parts: str
    volume_ml: float
    stock_ml: float
    water_ml: float
    reusable: bool
    mix_to_c: Estimate | None = None
    bottle: str | None = None
    stock_from: str | None = None


@dataclass(frozen=True, slots=True)
class PlannedBath:
    """One bath of one tankful; `id` is stable ('A.develop'), never a list position.

    For a wash `times` are those of one fill. What advice at the sink computes with stands in `Development`.
    """

    id: str
    kind: BathKind
    liquid: str | None
    times: Times
    destination: Destination
    agitation: Agitation | None = None
    fills: int = 1
    drain_early_s: float = 5.0
    drain_late_s: float = 10.0


@dataclass(frozen=True, slots=True)
class Development:
    """What the sink needs to move the end: the time that counts at `rate.ref_c`, and the kinetics with doubt.

    `end_s` is when the plan would pour out, with its doubt, before anybody has read the tank; `start_c` is
    what the tank is expected to read once its wall has taken its heat, `jug_c` what the jug must read (or
    did) when it is poured, `tank_c` how warm the empty tank is.
    """

    time_s: Estimate
    rate: BelievedRate
    start_c: float
    room_c: float
    tau_min: Estimate
    c_inf_over_ci: Estimate
    induction_s: float
    time_rule: str
    contrast: float | None
    model: str
    source: str
    end_s: Estimate | None = None
    jug_c: float | None = None
    tank_c: float | None = None


@dataclass(frozen=True, slots=True)
class Held:
    """A precious roll that is not in the plan: something would be used for the first time, or is in doubt."""

    roll: UUID
    code: str
    because: tuple[FirstUse | Reason, ...]


@dataclass(frozen=True, slots=True)
class Doubtful:
    """Something to look at first, as a code with its numbers, about a bottle; `wording` says it."""

    code: str
    tankful: str | None = None
    value: float | None = None
    limit: float | None = None
    about: str = ""


@dataclass(frozen=True, slots=True)
class BottleDoubt:
    """What speaks against a bottle of developer tonight, and what the plan made of it.

    'passed over': the plan does without it; 'to test': it is taken, and a leader test is due; 'taken
    anyway': it is taken against the advice, which stays noted. `leader_ratio` is tonight's time over the
    fresh one, `until` its last day; None where nobody knows.
    """

    bottle: str
    name: str
    combination: UUID
    reasons: tuple[Reason, ...]
    standing: DoubtStanding
    leader_ratio: float | None = None
    until: date | None = None


@dataclass(frozen=True, slots=True)
class PlannedTankful:
    """The rolls that share one tank once; `starts_after` is an anchor such as 'A.develop:poured', or None.

    `starts_s` is how long after that anchor its developer is poured.
    """

    letter: str
    tank: Tank
    rolls: tuple[PlannedRoll, ...]
    baths: tuple[PlannedBath, ...]
    development: Development
    starts_after: str | None = None
    starts_s: float = 0.0
    combination: UUID | None = None
    index: float | None = None

    @property
    def area_units(self) -> float:
        """Film area in the tank, in units of 80 in2."""
        return sum(roll.area_units for roll in self.rolls)


@dataclass(frozen=True, slots=True)
class Plan:
    """A plan: `number` rises with each change, `assumed` is what nobody was asked.

    `starts` is when the first developer is poured; `wish` is what the plan was worked out from, so that a
    change is a changed wish worked out again; `released` are precious rolls taken against the advice.
    """

    key: UUID
    number: int
    made: datetime
    place: Place
    thermometer: Thermometer
    tankfuls: tuple[PlannedTankful, ...]
    liquids: tuple[Liquid, ...]
    hands: HandWork = HandWork()
    assumed: tuple[Assumption, ...] = ()
    starts: datetime | None = None
    held: tuple[Held, ...] = ()
    released: tuple[UUID, ...] = ()
    doubtful: tuple[Doubtful, ...] = ()
    bottles: tuple[BottleDoubt, ...] = ()
    wish: Wish | None = None

    def liquid(self, key: str) -> Liquid:
        """The liquid called `key` in this plan."""
        return next(one for one in self.liquids if one.key == key)

    def tankful(self, letter: str) -> PlannedTankful:
        """The tankful lettered `letter` in this plan."""
        return next(one for one in self.tankfuls if one.letter == letter)
