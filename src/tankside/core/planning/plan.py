"""One working session worked out, frozen: what a run opens with and every screen reads."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.baths import Agitation, BathKind, Destination, HandWork, Times
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.solutions.kinds import SolutionKind


@dataclass(frozen=True, slots=True)
class PlannedRoll:
    """A roll as the plan saw it: its key and code, and what chemistry feels of it."""

    key: UUID
    code: str
    film: str
    area_units: float
    both_sides: bool
    tabular: bool
    precious: bool = False


@dataclass(frozen=True, slots=True)
class Liquid:
    """Something to have ready: `stock_ml` of `source` and `water_ml`, together `volume_ml`.

    `key` is its stable word in this plan ('develop-A', 'stop', 'fix', 'wetting'). `bottle` is the code of
    the bottle it comes from and, for a reusable one, goes back to; None until it is made at 'Get ready'.
    `mix_to_c` is the temperature to mix to, None where the tap will do.
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


@dataclass(frozen=True, slots=True)
class PlannedBath:
    """One bath of one tankful; `id` is stable ('A.develop'), never a list position.

    For a wash `times` are those of one fill. `aim_doubt_s` is the interval of the aim (seconds), None where
    the time is a rule. `k_per_10k` and the contrast figures are what advice at the sink computes with.
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
    """What the sink needs to move the end: the time that counts at `ref_c`, and the kinetics with doubt."""

    time_s: Estimate
    ref_c: float
    q10: Estimate
    start_c: float
    room_c: float
    tau_min: Estimate
    c_inf_over_ci: Estimate
    induction_s: float
    time_rule: str
    contrast: float | None
    model: str
    source: str


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
    """A plan: `number` rises with each change, `assumed` says in words what nobody was asked."""

    key: UUID
    number: int
    made: datetime
    place: Place
    thermometer: Thermometer
    tankfuls: tuple[PlannedTankful, ...]
    liquids: tuple[Liquid, ...]
    hands: HandWork = HandWork()
    assumed: tuple[str, ...] = ()

    def liquid(self, key: str) -> Liquid:
        """The liquid called `key` in this plan."""
        return next(one for one in self.liquids if one.key == key)
