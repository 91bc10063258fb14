"""Why a tank holds enough developer for its film: stock in it beside stock needed."""

from __future__ import annotations

from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.why import Figure, Length, Why, narrowings, rule
from tankside.core.planning.wish import Wish
from tankside.core.solutions.dilution import stock_and_water
from tankside.core.solutions.notation import Dilution
from tankside.core.solutions.volumes import least_stock


def stock_of(tankful: PlannedTankful, wish: Wish) -> Why:
    """Why the stock in a tankful of a plan is enough for its film."""
    combination = next(one.combination for one in wish.rolls if one.roll.key == tankful.rolls[0].key)
    return why_stock(
        [roll.area_units for roll in tankful.rolls],
        tank_ml=tankful.tank.volume_ml,
        dilution=combination.dilution,
        least_stock_ml=combination.least_stock_ml,
        tankful=tankful.letter,
    )


def why_stock(
    areas: list[float],
    *,
    tank_ml: float,
    dilution: Dilution,
    least_stock_ml: float | None,
    tankful: str | None = None,
) -> Why:
    """Why `tank_ml` at `dilution` hold stock enough for rolls of `areas`; the rule is the leaflet's."""
    stock_ml = stock_and_water(tank_ml, dilution).stock_ml
    held = rule(stock_ml, "mL", "parts by volume")
    parts = (
        Figure("stock_parts", dilution.stock, "", "asked"),
        Figure("water_parts", dilution.water, "", "asked"),
    )
    lengths = [Length("stock-held", held, (Figure("volume_ml", tank_ml, "mL", "tank"), *parts))]
    inputs = [
        Figure("volume_ml", tank_ml, "mL", "tank"),
        *parts,
        Figure("units", sum(areas), "rolls", "film area"),
    ]
    if least_stock_ml is not None:
        needed = least_stock(areas, least_stock_ml=least_stock_ml)
        one = Figure("each_ml", least_stock_ml, "mL", "leaflet")
        lengths.append(
            Length(
                "stock-needed", rule(needed, "mL", "leaflet"), (one, Figure("units", sum(areas), "", "film"))
            )
        )
        inputs.append(one)
    return Why(
        "least-stock",
        tankful,
        held,
        tuple(lengths),
        (),
        () if least_stock_ml is not None else narrowings("note-least-stock"),
        tuple(inputs),
        "stock in the tank = volume x stock parts / all parts; stock needed = least stock a roll x film area",
        ("docs/science/least-stock",),
        spread="rule",
        leaves_out=("leaflet-has-the-word",),
    )
