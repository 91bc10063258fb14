"""Which rolls share a tank: room on the reels, stock enough for the film, and precious rolls held back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from types import MappingProxyType
from uuid import UUID

from tankside.core.methods.combinations import Combination
from tankside.core.planning.equipment import Tank
from tankside.core.planning.plan import Held
from tankside.core.planning.wish import FirstUse, WantedRoll
from tankside.core.refusals import refuse
from tankside.core.rolls.formats import Format
from tankside.core.shelf.fitness import Reason
from tankside.core.solutions.volumes import check_stock

ML_FOR_135 = 300.0
ML_FOR_120 = 500.0
NOTHING_AGAINST: Mapping[UUID, tuple[FirstUse | Reason, ...]] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Load:
    """Rolls that go into one tank together; `again` is true where that tank was used before tonight."""

    tank: Tank
    rolls: tuple[WantedRoll, ...]
    again: bool = False

    @property
    def combination(self) -> Combination:
        """What all of them are developed by."""
        return self.rolls[0].combination

    @property
    def index(self) -> float:
        """The exposure index that all of them share."""
        return self.rolls[0].roll.index

    @property
    def area_units(self) -> float:
        """Film area in units of 80 in2."""
        return sum(one.roll.format.area_units for one in self.rolls)


def room_for(tank: Tank, film: Format) -> int:
    """How many rolls of this format fit: one 135 in each 300 mL, one 120 in each 500 mL.

    Own model: common sizes of reels, docs/science/planning. Doubt: the reels decide.

    >>> room_for(Tank(UUID(int=1), "tall", 600.0, 125.0, 114.0), Format("135-36"))
    2
    """
    match film.kind:
        case "135-36" | "135-24" | "135-length":
            return int(tank.volume_ml // ML_FOR_135)
        case "120":
            return int(tank.volume_ml // ML_FOR_120)
        case "4x5":
            return 0


def held_back(
    rolls: Sequence[WantedRoll],
    first_uses: tuple[FirstUse, ...],
    kept_from: Mapping[UUID, tuple[FirstUse | Reason, ...]] = NOTHING_AGAINST,
) -> tuple[tuple[WantedRoll, ...], tuple[Held, ...]]:
    """The rolls to take, and the precious ones held: something would be used first, or is in doubt.

    `kept_from` is by combination what keeps a precious roll out of its developer. A roll that its owner has
    released is taken; refused where nothing is left to take.
    """
    against = {
        one.roll.key: tuple(dict.fromkeys((*first_uses, *kept_from.get(one.combination.key, ()))))
        for one in rolls
        if one.roll.precious and not one.released
    }
    held = [one for one in rolls if against.get(one.roll.key)]
    taken = tuple(one for one in rolls if one not in held)
    if not rolls:
        raise refuse("no-rolls-chosen", at="rolls", ways_on=("choose-rolls",))
    if not taken:
        code, because = held[0].roll.code, against[held[0].roll.key]
        ways = ("another-roll-first", "take-it-anyway")
        if not first_uses:
            raise refuse("batch-held-for-precious", at="rolls", ways_on=ways, roll_code=code)
        raise refuse(
            "precious-roll-held", at="rolls", ways_on=ways, roll_code=code, first_uses=", ".join(because)
        )
    return taken, tuple(Held(one.roll.key, one.roll.code, against[one.roll.key]) for one in held)


def in_tankfuls(rolls: Sequence[WantedRoll], tanks: Sequence[Tank]) -> tuple[Load, ...]:
    """Rolls of one combination, index and width together, in the fewest tankfuls the tanks allow.

    The smallest tank that takes all that is left, else the largest; tanks not yet used come first.
    """
    loads: list[Load] = []
    unused = list(tanks)
    ordered = sorted(rolls, key=_together)
    for _, group in groupby(ordered, key=_together):
        left = list(group)
        while left:
            again = not any(room_for(tank, left[0].roll.format) for tank in unused)
            tank = _tank_for(left, tanks if again else unused)
            room = room_for(tank, left[0].roll.format)
            loads.append(Load(tank, tuple(left[:room]), any(load.tank == tank for load in loads)))
            unused = [one for one in unused if one != tank]
            left = left[room:]
    for load in loads:
        check_least_stock(load)
    return tuple(sorted(loads, key=lambda load: load.again))


def check_least_stock(load: Load) -> None:
    """Refuse a tank that holds less stock than a leaflet asks for its film; an unknown figure is no 'no'."""
    least_ml = load.combination.least_stock_ml
    if least_ml is not None:
        check_stock(
            [one.roll.format.area_units for one in load.rolls],
            tank_ml=load.tank.volume_ml,
            dilution=load.combination.dilution,
            least_stock_ml=least_ml,
        )


def _together(one: WantedRoll) -> tuple[str, str, float, bool]:
    """What rolls must share to share a tank; the film by its name, so that keys decide no order."""
    known = one.combination
    return (known.film, str(known.key), one.roll.index, one.roll.format.kind == "120")


def _tank_for(left: Sequence[WantedRoll], tanks: Sequence[Tank]) -> Tank:
    """The smallest tank that takes all, else the one that takes most."""
    film = left[0].roll.format
    if film.kind == "4x5":
        raise refuse(
            "sheet-film-not-planned", at="rolls", ways_on=("leave-out",), roll_code=left[0].roll.code
        )
    roomy = [tank for tank in tanks if room_for(tank, film) > 0]
    if not roomy:
        raise refuse(
            "tank-too-small", at="tank", ways_on=("larger-tank",),
            volume_ml=max((tank.volume_ml for tank in tanks), default=0.0),
            needed_ml=ML_FOR_120 if film.kind == "120" else ML_FOR_135,
        )  # fmt: skip
    enough = [tank for tank in roomy if room_for(tank, film) >= len(left)]
    if enough:
        return min(enough, key=lambda tank: tank.volume_ml)
    return max(roomy, key=lambda tank: room_for(tank, film))
