"""What each liquid of a plan costs a roll, where its price is known."""

from __future__ import annotations

from collections.abc import Mapping

from tankside.core.permanence.capacity import ROLLS_PER_L_PLANNED
from tankside.core.planning.fixer import tankful_wants
from tankside.core.planning.plan import Liquid, Plan, PlannedTankful
from tankside.core.shelf.bottles import Batch
from tankside.core.solutions.cost import Price, cost_of, shared_out
from tankside.workflows.ports import Desk


def cost_a_roll(desk: Desk, plan: Plan) -> Mapping[str, int]:
    """Whole minor units a roll for each liquid of a plan, by its key; one without a price is left out.

    What is used once is charged by what it takes, a fixer by the share of its life that this film uses, as
    planned. Of a stop bath nobody knows the whole life, so nothing is told.
    """
    found: dict[str, int] = {}
    for liquid in plan.liquids:
        tankfuls = [one for one in plan.tankfuls if any(bath.liquid == liquid.key for bath in one.baths)]
        used = _used(desk, liquid, tankfuls)
        if used is not None:
            areas = [roll.area_units for one in tankfuls for roll in one.rolls]
            found[liquid.key] = max(shared_out(cost_of([used]), areas))
    return found


def _used(desk: Desk, liquid: Liquid, tankfuls: list[PlannedTankful]) -> tuple[float, Price] | None:
    """How much of a batch a liquid uses up (mL), and what that batch cost; None where nobody knows."""
    batch = _batch(desk, liquid.bottle or liquid.stock_from)
    if batch is None or batch.price_minor is None or batch.made_ml <= 0:
        return None
    price = Price(batch.price_minor, batch.made_ml)
    if not liquid.reusable:
        return (liquid.volume_ml if liquid.bottle else liquid.stock_ml, price)
    if liquid.kind != "fixer":
        return None
    return (1000 * sum(map(tankful_wants, tankfuls)) / ROLLS_PER_L_PLANNED, price)


def _batch(desk: Desk, code: str | None) -> Batch | None:
    """The batch in a bottle."""
    bottle = desk.bottles.by_code(code) if code else None
    return desk.batches.by_key(bottle.batch) if bottle else None
