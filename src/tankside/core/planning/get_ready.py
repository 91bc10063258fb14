"""What to do before the first pour: each liquid in order, with its water, its target and its cautions."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tankside.core.planning.equipment import Place
from tankside.core.planning.liquids import mark_for
from tankside.core.planning.plan import Liquid, Plan
from tankside.core.planning.tempering import Taps, Tempered, tempered
from tankside.core.refusals import Refusal, Refused
from tankside.core.safety import Caution, cautions


@dataclass(frozen=True, slots=True)
class ToMake:
    """One liquid to have ready.

    `tempered` are its waters once hot and cold are read; else `target_c` stands alone: mix, hold back
    `hold_back_ml`, read. `cannot` is why the taps read do not reach the target. `ready` is true once it
    stands in a bottle with its code.
    """

    liquid: Liquid
    target_c: float | None
    tempered: Tempered | None
    hold_back_ml: float
    cannot: Refusal | None
    cautions: tuple[Caution, ...]
    ready: bool


def to_make(plan: Plan, place: Place) -> tuple[ToMake, ...]:
    """The liquids of a plan in the order to make them, with amounts as far as the taps are known.

    Arguments: `place` as it is now, its taps read or not; stock is taken to be at room temperature.
    Own model: docs/science/tempering. Doubt: half a mark of hot water; read again after mixing.
    """
    return tuple(_one(liquid, place) for liquid in plan.liquids)


def taps_of(place: Place) -> Taps | None:
    """The taps of a place, if both are read."""
    if place.hot_c is None or place.cold_c is None:
        return None
    return Taps(place.hot_c, place.cold_c, place.room_c, place.jug_worth_ml)


def _one(liquid: Liquid, place: Place) -> ToMake:
    """One liquid."""
    target_c = liquid.mix_to_c.value if liquid.mix_to_c else None
    taps = taps_of(place)
    waters, cannot = None, None
    if target_c is not None and taps is not None and liquid.water_ml > 0:
        try:
            waters = tempered(
                stock_ml=liquid.stock_ml,
                volume_ml=liquid.volume_ml,
                target_c=target_c,
                taps=taps,
                mark_ml=mark_for(liquid.water_ml / 4),
            )
        except Refused as refused:
            cannot = refused.refusal
    hot_c = place.hot_c if waters is not None or target_c is None else None
    return ToMake(
        liquid,
        target_c,
        waters,
        waters.hold_back_ml if waters else min(50.0, liquid.volume_ml / 10),
        cannot,
        cautions(liquid.kind, moment="mix", hot_c=hot_c),
        liquid.bottle is not None,
    )


def with_bottle(plan: Plan, key: str, bottle: str, *, holds_ml: float) -> Plan:
    """The plan with one of its liquids standing in a bottle; its wish remembers it too."""
    made = plan.liquid(key)
    wish = plan.wish
    if wish is not None and made.kind == "developer":
        tankful = next(one for one in plan.tankfuls if any(bath.liquid == key for bath in one.baths))
        kept = tuple(one for one in wish.developer_bottles if one[0] != tankful.combination)
        if tankful.combination is not None:
            wish = replace(wish, developer_bottles=(*kept, (tankful.combination, bottle)))
    elif wish is not None:
        supplies = tuple(
            replace(one, bottle=bottle, volume_ml=holds_ml) if one.kind == made.kind else one
            for one in wish.supplies
        )
        wish = replace(wish, supplies=supplies)
    liquids = tuple(replace(one, bottle=bottle) if one.key == key else one for one in plan.liquids)
    return replace(plan, number=plan.number + 1, liquids=liquids, wish=wish)
