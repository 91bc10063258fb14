"""Which bottle of developer a plan mixes from: the one that ends first and that nothing speaks against."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from uuid import UUID

from tankside.core.planning.plan import BottleDoubt, DoubtStanding, Liquid, PlannedTankful
from tankside.core.planning.wish import DeveloperBottle, FirstUse, Wish
from tankside.core.refusals import Refused
from tankside.core.shelf.contents import which_to_use
from tankside.core.shelf.fitness import Fitness, Reason, Standing, fitness_of, may_develop


@dataclass(frozen=True, slots=True)
class Chosen:
    """The bottle to mix from, None where the shelf has none that will do, and every doubt about bottles."""

    bottle: DeveloperBottle | None
    doubts: tuple[BottleDoubt, ...]


def choose_bottle(bottles: Sequence[DeveloperBottle], *, ml: float, today: date) -> Chosen:
    """The bottle to draw `ml` of stock from on a day.

    One that its owner takes against the advice goes first; else, of those that may be used and hold enough,
    the one that ends soonest. A bottle that is passed over though it holds enough is told with its reasons.
    Own model: docs/science/keeping. Doubt: that of a leader test, about 15 %.
    """
    enough = [one for one in bottles if one.contents.ml >= ml]
    open_to = [one for one in enough if _may_go(one, today)]
    dated = [(one.contents, None if one.anyway else one.until) for one in open_to]
    at = next((number for number, one in enumerate(open_to) if one.anyway), None)
    at = which_to_use(dated, ml=ml, today=today) if at is None else at
    taken = None if at is None else open_to[at]
    return Chosen(taken, tuple(_doubts(enough, taken, today)))


def kept_from_precious(wish: Wish) -> dict[UUID, tuple[FirstUse | Reason, ...]]:
    """For each combination what keeps a precious roll out of its developer tonight.

    Where no bottle of the shelf will do, the fresh one is a batch that nothing went through yet.
    Own model: docs/science/keeping: a leader test is due for a precious roll. Doubt: none.
    """
    today, tank_ml = wish.starts.date(), min(one.volume_ml for one in wish.tanks)
    found: dict[UUID, tuple[FirstUse | Reason, ...]] = {}
    for combination in {one.combination.key: one.combination for one in wish.rolls}.values():
        bottles = stocks_for(wish, combination.key)
        ml = tank_ml * combination.dilution.stock_fraction
        taken = choose_bottle(bottles, ml=ml, today=today).bottle
        if taken is not None:
            found[combination.key] = fitness(taken, today, precious=True).reasons
        elif bottles:
            found[combination.key] = ("batch",)
    return found


def with_stock_bottles(
    liquids: Sequence[Liquid], tankfuls: Sequence[PlannedTankful], wish: Wish
) -> tuple[tuple[Liquid, ...], tuple[BottleDoubt, ...]]:
    """The liquids with the bottle that each developer's stock is drawn from, and every doubt about bottles.

    What one liquid takes is gone for the next. Own model: docs/science/keeping. Doubt: as `choose_bottle`.
    """
    combinations = {
        bath.liquid: one.combination for one in tankfuls for bath in one.baths if bath.kind == "develop"
    }
    drawn: dict[str, float] = {}
    named: list[Liquid] = []
    doubts: list[BottleDoubt] = []
    for liquid in liquids:
        combination = combinations.get(liquid.key)
        if combination is None:
            named.append(liquid)
            continue
        bottles = tuple(_without(one, drawn.get(one.code, 0.0)) for one in stocks_for(wish, combination))
        chosen = choose_bottle(bottles, ml=liquid.stock_ml, today=wish.starts.date())
        doubts.extend(one for one in chosen.doubts if one not in doubts)
        code = chosen.bottle.code if chosen.bottle else None
        if code is not None:
            drawn[code] = drawn.get(code, 0.0) + liquid.stock_ml
        named.append(replace(liquid, stock_from=code))
    return tuple(named), tuple(doubts)


def stocks_for(wish: Wish, combination: UUID) -> tuple[DeveloperBottle, ...]:
    """The bottles that one combination can be mixed from; none once its developer stands ready."""
    if combination in dict(wish.developer_bottles):
        return ()
    return tuple(one for one in wish.stocks if one.combination == combination)


def fitness(bottle: DeveloperBottle, today: date, *, precious: bool) -> Fitness:
    """What speaks against a bottle on a day.

    Own model: docs/science/keeping. Doubt: that of a leader test, about 15 %.
    """
    holds = bottle.contents
    standing = Standing(
        holds.made, bottle.until, holds.part_full_since is not None, holds.contaminated, bottle.leader
    )
    return fitness_of(standing, today=today, precious=precious)


def _may_go(bottle: DeveloperBottle, today: date) -> bool:
    """Whether an ordinary roll may go through it, by itself or because its owner says so."""
    try:
        may_develop(fitness(bottle, today, precious=False), precious=False, override=bottle.anyway)
    except Refused:
        return False
    return True


def _without(bottle: DeveloperBottle, ml: float) -> DeveloperBottle:
    """The same bottle after `ml` went to another liquid tonight."""
    return replace(bottle, contents=replace(bottle.contents, ml=max(0.0, bottle.contents.ml - ml)))


def _doubts(
    bottles: Iterable[DeveloperBottle], taken: DeveloperBottle | None, today: date
) -> Iterator[BottleDoubt]:
    """What is to be said of the bottle taken; of those passed over only where none is."""
    for one in bottles if taken is None else (taken,):
        reasons = fitness(one, today, precious=False).reasons
        if reasons:
            ratio = one.leader.ratio if one.leader else None
            made_of_it = _made_of_it(one, taken)
            yield BottleDoubt(one.code, one.name, one.combination, reasons, made_of_it, ratio, one.until)


def _made_of_it(bottle: DeveloperBottle, taken: DeveloperBottle | None) -> DoubtStanding:
    """What the plan makes of a bottle that something speaks against."""
    if taken is None:
        return "passed over"
    return "taken anyway" if bottle.anyway else "to test"
