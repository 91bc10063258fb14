"""What to have ready: stock and water for each liquid, to the marks of the measure."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.baths import HandWork
from tankside.core.planning.acts import fillings
from tankside.core.planning.plan import Liquid, PlannedTankful
from tankside.core.planning.wish import Supply, Wish
from tankside.core.quantities.display import to_step
from tankside.core.solutions.dilution import StockAndWater, on_the_marks, stock_and_water
from tankside.core.solutions.notation import Dilution

BATH_KEYS = {"stop bath": "stop", "fixer": "fix", "wetting agent": "wetting"}


def mark_for(amount_ml: float) -> float:
    """The finest mark of the measure one would take for an amount: syringe, small or large cylinder.

    Own model: docs/science/planning. Doubt: half a mark.

    >>> mark_for(5.88), mark_for(71.2), mark_for(250.0)
    (0.1, 1.0, 5.0)
    """
    if amount_ml <= 10:
        return 0.1
    return 1.0 if amount_ml <= 100 else 5.0


def to_the_marks(volume_ml: float, dilution: Dilution) -> StockAndWater:
    """Stock and water that make `volume_ml` (above 0), the smaller of the two to its own marks.

    Source: parts by volume. Doubt: half a mark of the smaller.

    >>> to_the_marks(300.0, Dilution(1, 50)), to_the_marks(600.0, Dilution(1, 4)).water_ml
    (StockAndWater(stock_ml=5.9, water_ml=294.1), 480.0)
    """
    exact = stock_and_water(volume_ml, dilution)
    if exact.water_ml == 0:
        return exact
    if exact.stock_ml <= exact.water_ml:
        return on_the_marks(exact, mark_ml=mark_for(exact.stock_ml))
    water_ml = to_step(exact.water_ml, mark_for(exact.water_ml))
    return StockAndWater(volume_ml - water_ml, water_ml)


def liquids_for(
    tankfuls: Sequence[PlannedTankful], wish: Wish, *, mix_to: dict[str, Estimate | None]
) -> tuple[Liquid, ...]:
    """Every liquid of a plan, in the order to make them: what keeps its temperature least comes last.

    `mix_to` gives the temperature for each liquid of developer, None where it is already mixed and read.
    """
    baths = {bath.kind for tankful in tankfuls for bath in tankful.baths}
    made: list[Liquid] = []
    for supply in wish.supplies:
        key = BATH_KEYS[supply.kind]
        if key in baths:
            made.append(_reused(key, supply, tankfuls, wish.hands))
    return (*made, *_developers(tankfuls, wish, mix_to))


def _reused(key: str, supply: Supply, tankfuls: Sequence[PlannedTankful], hands: HandWork) -> Liquid:
    """A bath that goes back, or is thrown away so that every tankful needs its own."""
    reusable = any(bath.destination == "back" for one in tankfuls for bath in one.baths if bath.kind == key)
    volume_ml = (
        most_at_once_ml(tankfuls, key, hands) if reusable else sum(one.tank.volume_ml for one in tankfuls)
    )
    amount = to_the_marks(volume_ml, supply.dilution)
    return Liquid(
        key,
        supply.kind,
        supply.name,
        str(supply.dilution),
        volume_ml,
        amount.stock_ml,
        amount.water_ml,
        reusable,
        bottle=supply.bottle,
    )


def most_at_once_ml(tankfuls: Sequence[PlannedTankful], key: str, hands: HandWork) -> float:
    """The most of one reused bath (mL) that is in tanks at the same time, from pour to back in its bottle.

    Source: the plan's own times. Doubt: ends of development move; the bottle may be filled for all tanks.
    """
    held = [
        (one.starts_s + filled.start_s, one.starts_s + filled.end_s + hands.drain_s, one.tank.volume_ml)
        for one in tankfuls
        for filled in fillings(one, hands)
        if filled.bath.kind == key
    ]
    return max(
        (sum(ml for from_s, to_s, ml in held if from_s <= at_s < to_s) for at_s, _, _ in held), default=0.0
    )


def _developers(
    tankfuls: Sequence[PlannedTankful], wish: Wish, mix_to: dict[str, Estimate | None]
) -> Iterable[Liquid]:
    """One liquid for each mix, as large as all the tanks it is poured into."""
    bottles = dict(wish.developer_bottles)
    by_key = {one.roll.key: one.combination for one in wish.rolls}
    for key, warm in mix_to.items():
        sharing = [one for one in tankfuls if any(bath.liquid == key for bath in one.baths)]
        combination = by_key[sharing[0].rolls[0].key]
        volume_ml = sum(one.tank.volume_ml for one in sharing)
        amount = to_the_marks(volume_ml, combination.dilution)
        yield Liquid(
            key, "developer", combination.developer, str(combination.dilution),
            volume_ml, amount.stock_ml, amount.water_ml, reusable=False, mix_to_c=warm,
            bottle=bottles.get(combination.key),
        )  # fmt: skip
