"""Why an evening ends when it does, and why a later tankful is poured when it is."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.core.planning.timetable import timetable
from tankside.core.planning.why import Figure, Length, PartOfDoubt, Why, narrowings, rule
from tankside.core.refusals import refuse

ORDER_PAGE = "docs/science/two-tanks"


def why_end(plan: Plan) -> Why:
    """Why the last roll hangs when the plan says, in seconds after the first pour."""
    clock = timetable(plan)
    ends_s = (clock.ends - clock.poured).total_seconds()
    last = max(plan.tankfuls, key=lambda one: next(c.hung_s for c in clock.columns if c.letter == one.letter))
    told = last.development.end_s
    down, up = (told.value - told.low, told.high - told.value) if told else (0.0, 0.0)
    column = next(one for one in clock.columns if one.letter == last.letter)
    return Why(
        "end",
        last.letter,
        Estimate(ends_s, ends_s - down, ends_s + up, "s", "timetable"),
        tuple(
            Length(
                "baths",
                rule(layer.end_s, "s", layer.bath),
                (Figure(layer.bath, layer.end_s - layer.start_s, "s", "plan"),),
            )
            for layer in column.layers
        ),
        (PartOfDoubt("development", (down + up) / 2),) if down + up else (),
        narrowings("read-tank", "second-tank") if len(plan.tankfuls) > 1 else narrowings("read-tank"),
        (
            Figure("pour_s", plan.hands.pour_s, "s", "ours"),
            Figure("drain_s", plan.hands.drain_s, "s", "ours"),
            Figure("starts_s", last.starts_s, "s", "order"),
        ),
        "start of the last tankful + its baths + a drain after each + hanging",
        (ORDER_PAGE,),
        spread="interval" if down + up else "rule",
    )


def why_start(plan: Plan, tankful: PlannedTankful) -> Why:
    """Why a later tankful is poured when the plan says."""
    if tankful.letter == plan.tankfuls[0].letter:
        raise refuse("no-why", about="second-start")
    clock = timetable(plan)
    first = plan.tankfuls[0]
    start = rule(tankful.starts_s, "s", "order")
    hung_s = clock.columns[0].hung_s
    same_tank = any(one.tank.key == tankful.tank.key for one in plan.tankfuls if one.letter < tankful.letter)
    pattern = first.baths[0].agitation
    return Why(
        "second-start",
        tankful.letter,
        start,
        (
            Length("before", rule(hung_s, "s", f"{first.letter} hung")),
            Length(
                "order",
                start,
                (
                    Figure("same_tank", float(same_tank), "", "plan"),
                    Figure("apart_s", max(0.0, clock.apart_s or 0.0), "s", "timetable"),
                ),
            ),
        ),
        (),
        narrowings("second-tank") if same_tank else (),
        (
            Figure("soft_s", pattern.soft_s if pattern else 0.0, "s", "method"),
            Figure("between_s", plan.hands.between_tankfuls_s, "s", "ours"),
            Figure("step_s", 15.0, "s", "ours"),
        ),
        "earliest 15 s step after the pour before at which no two acts of the hands overlap",
        (ORDER_PAGE,),
        spread="rule",
    )
