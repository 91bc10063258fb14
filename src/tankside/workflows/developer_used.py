"""How a developer on the shelf is used: as in the plan made last, else by the first leaflet and tank kept."""

from __future__ import annotations

from tankside.core.planning.developer_left import Tankfuls
from tankside.workflows.look_at_shelf import BottleNow
from tankside.workflows.ports import Desk


def how_used(desk: Desk, one: BottleNow) -> Tankfuls | None:
    """Dilution, tank and rolls of a bottle of undiluted developer; None where nothing is planned with it."""
    if one.batch.kind != "developer" or one.batch.strength == "working":
        return None
    name = one.batch.name.strip().casefold()
    known = {each.key: each for each in desk.combinations.all() if each.developer.strip().casefold() == name}
    plan = desk.plans.latest()
    for tankful in plan.tankfuls if plan else ():
        if tankful.combination in known:
            dilution = known[tankful.combination].dilution
            return Tankfuls(dilution, tankful.tank.volume_ml, len(tankful.rolls))
    tanks = desk.tanks.all()
    if not known or not tanks:
        return None
    return Tankfuls(next(iter(known.values())).dilution, tanks[0].volume_ml, 1)
