"""What to have ready: stock and water for each liquid, to the marks of the measure."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.plan import Liquid, PlannedTankful
from tankside.core.planning.wish import Supply, Wish
from tankside.core.solutions.notation import Dilution

BATH_KEYS = {"stop bath": "stop", "fixer": "fix", "wetting agent": "wetting"}


def mark_for(amount_ml: float) -> float:
    """The finest mark of the measure one would take for an amount: syringe, small or large cylinder.

    Own model: docs/science/measures. Doubt: half a mark.

    >>> mark_for(5.88), mark_for(71.2), mark_for(250.0)
    (0.1, 1.0, 5.0)
    """
    if amount_ml <= 10:
        return 0.1
    return 1.0 if amount_ml <= 100 else 5.0


def stock_and_water(volume_ml: float, dilution: Dilution) -> tuple[float, float]:
    """Stock and water that make `volume_ml` (above 0), the smaller of the two to its own marks.

    Source: parts by volume. Doubt: half a mark of the smaller.

    >>> stock_and_water(300.0, Dilution(1, 50)), stock_and_water(600.0, Dilution(1, 4))
    ((5.9, 294.1), (120.0, 480.0))
    """
    stock_ml = volume_ml * dilution.stock_fraction
    water_ml = volume_ml - stock_ml
    mark_ml = mark_for(min(stock_ml, water_ml)) if water_ml > 0 else 1.0
    if stock_ml <= water_ml:
        stock_ml = round(round(stock_ml / mark_ml) * mark_ml, 1)
    else:
        stock_ml = volume_ml - round(round(water_ml / mark_ml) * mark_ml, 1)
    return stock_ml, round(volume_ml - stock_ml, 1)


def parts_of(dilution: Dilution) -> str:
    """A dilution as a person reads it: '1+4', 'stock'.

    >>> parts_of(Dilution(1, 0))
    'stock'
    """
    return f"{dilution.stock}+{dilution.water}" if dilution.water else "stock"


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
            made.append(_reused(key, supply, tankfuls))
    return (*made, *_developers(tankfuls, wish, mix_to))


def _reused(key: str, supply: Supply, tankfuls: Sequence[PlannedTankful]) -> Liquid:
    """A bath that goes back (the largest tank decides) or is thrown away (every tankful needs its own)."""
    volumes = [tankful.tank.volume_ml for tankful in tankfuls]
    reusable = any(bath.destination == "back" for one in tankfuls for bath in one.baths if bath.kind == key)
    volume_ml = max(volumes) if reusable else sum(volumes)
    stock_ml, water_ml = stock_and_water(volume_ml, supply.dilution)
    return Liquid(
        key,
        supply.kind,
        supply.name,
        parts_of(supply.dilution),
        volume_ml,
        stock_ml,
        water_ml,
        reusable,
        bottle=supply.bottle,
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
        stock_ml, water_ml = stock_and_water(volume_ml, combination.dilution)
        yield Liquid(
            key, "developer", combination.developer, parts_of(combination.dilution),
            volume_ml, stock_ml, water_ml, reusable=False, mix_to_c=warm,
            bottle=bottles.get(combination.key),
        )  # fmt: skip
