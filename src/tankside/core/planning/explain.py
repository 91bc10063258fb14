"""The why of each computed number of a plan, worked out again from its wish."""

from __future__ import annotations

from typing import assert_never

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.explain_waters import why_waters
from tankside.core.planning.one_tankful import TimedTankful, timed
from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.core.planning.timetable import timetable
from tankside.core.planning.why import About, Figure, Length, PartOfDoubt, Why
from tankside.core.planning.wish import Wish
from tankside.core.refusals import refuse
from tankside.core.thermal.drift import mean_temp

RATE_PAGE = "docs/science/rate-and-equivalent-time"
TEMPER_PAGE = "docs/science/tempering"
ORDER_PAGE = "docs/science/two-tanks"
RATE_LAW = "sheppard-mees-1907"


def explain(plan: Plan, about: About, tankful: str | None = None) -> Why:
    """Why the number `about` is what it is; `tankful` names its letter (the first unless told).

    Refused where the plan holds no such number, or was not worked out from a wish.
    """
    wish = plan.wish
    if wish is None:
        raise refuse("no-why", about=about)
    letter = tankful or plan.tankfuls[-1 if about == "second-start" else 0].letter
    one = next((each for each in plan.tankfuls if each.letter == letter), None)
    if one is None:
        raise refuse("no-such-tankful", letter=letter)
    match about:
        case "time":
            return why_time(one, wish)
        case "mix-to":
            return why_mix_to(one, wish)
        case "hot" | "cold":
            return why_waters(plan, one, about)
        case "end":
            return why_end(plan)
        case "second-start":
            return why_start(plan, one)
        case _:
            assert_never(about)


def why_time(tankful: PlannedTankful, wish: Wish) -> Why:
    """Why a tankful is developed as long as the plan says."""
    found, development = timed(tankful, wish), tankful.development
    answer = development.end_s or found.end.estimate
    rows = found.known.rows
    lengths = [Length(found.known.source, found.known.rate.time_s, _row_figures(found, len(rows)))]
    if development.time_rule == "rate":
        lengths.append(
            Length("temperature", found.end.estimate, _warmth_figures(found, tankful, answer.value))
        )
    if answer.source == "own time":
        lengths.append(Length("own-time", answer))
    one_row = len({row.temp_c for row in rows}) < 2
    return Why(
        "time",
        tankful.letter,
        answer,
        tuple(lengths),
        _parts(found) if development.time_rule == "rate" else (),
        ("read-tank", *(("leaflet-rows",) if one_row else ()), "step-strip"),
        _inputs(found, tankful),
        "time t with integral of q10^((T - ref)/10) dt from 0 to t = printed time; "
        "T = room + (start - room) exp(-t/tau); start = (V jug + W tank)/(V + W)",
        (RATE_PAGE, "docs/science/tank-and-liquid", RATE_LAW),
    )


def why_mix_to(tankful: PlannedTankful, wish: Wish) -> Why:
    """Why a developer is to be mixed as warm as the plan says."""
    found = timed(tankful, wish)
    if found.jug is None:
        raise refuse("already-mixed", letter=tankful.letter, reads_c=wish.reads_c or 0.0)
    jug, setting = found.jug, found.setting
    time_s = found.known.rate.time_s.value
    start_c = setting.start_c(jug.estimate.value)
    steady = Estimate(
        found.known.rate.ref_c, found.known.rate.ref_c, found.known.rate.ref_c, "C", found.known.source
    )
    return Why(
        "mix-to",
        tankful.letter,
        jug.estimate,
        (
            Length(found.known.source, steady, _row_figures(found, len(found.known.rows))),
            Length(
                "mix",
                jug.estimate,
                (
                    Figure("start_c", start_c, "C", "computed"),
                    Figure("tank_c", setting.tank_c, "C", "assumed"),
                    Figure("mean_c", _mean_c(found, start_c, time_s), "C", "computed"),
                ),
            ),
        ),
        tuple(PartOfDoubt(part.code, part.half_width) for part in jug.parts),
        ("tank-test", "read-room", "read-tank"),
        _inputs(found, tankful),
        "start that makes the equivalent time of the drift the printed time; "
        "jug = start + W/V (start - tank)",
        (TEMPER_PAGE, RATE_PAGE, RATE_LAW),
    )


def why_end(plan: Plan) -> Why:
    """Why the last roll hangs when the plan says, in seconds after the first pour."""
    clock = timetable(plan)
    ends_s = (clock.ends - clock.poured).total_seconds()
    last = max(plan.tankfuls, key=lambda one: next(c.hung_s for c in clock.columns if c.letter == one.letter))
    told = last.development.end_s
    down, up = (told.value - told.low, told.high - told.value) if told else (0.0, 0.0)
    answer = Estimate(ends_s, ends_s - down, ends_s + up, "s", "timetable")
    column = next(one for one in clock.columns if one.letter == last.letter)
    baths = tuple(
        Length(
            "baths",
            Estimate(layer.end_s, layer.end_s, layer.end_s, "s", layer.bath),
            (Figure(layer.bath, layer.end_s - layer.start_s, "s", "plan"),),
        )
        for layer in column.layers
    )
    return Why(
        "end",
        last.letter,
        answer,
        baths,
        (PartOfDoubt("development", (down + up) / 2),) if down + up else (),
        ("read-tank", "second-tank") if len(plan.tankfuls) > 1 else ("read-tank",),
        (
            Figure("pour_s", plan.hands.pour_s, "s", "ours"),
            Figure("drain_s", plan.hands.drain_s, "s", "ours"),
            Figure("starts_s", last.starts_s, "s", "order"),
        ),
        "start of the last tankful + its baths + a drain after each + hanging",
        (ORDER_PAGE,),
    )


def why_start(plan: Plan, tankful: PlannedTankful) -> Why:
    """Why a later tankful is poured when the plan says."""
    if tankful.letter == plan.tankfuls[0].letter:
        raise refuse("no-why", about="second-start")
    clock = timetable(plan)
    first = plan.tankfuls[0]
    start = Estimate(tankful.starts_s, tankful.starts_s, tankful.starts_s, "s", "order")
    hung_s = clock.columns[0].hung_s
    same_tank = any(one.tank.key == tankful.tank.key for one in plan.tankfuls if one.letter < tankful.letter)
    return Why(
        "second-start",
        tankful.letter,
        start,
        (
            Length("before", Estimate(hung_s, hung_s, hung_s, "s", f"{first.letter} hung")),
            Length("order", start, (Figure("same_tank", float(same_tank), "", "plan"),)),
        ),
        (),
        ("second-tank",) if same_tank else (),
        (
            Figure(
                "soft_s", first.baths[0].agitation.soft_s if first.baths[0].agitation else 0.0, "s", "method"
            ),
            Figure("between_s", plan.hands.between_tankfuls_s, "s", "ours"),
            Figure("step_s", 15.0, "s", "ours"),
        ),
        "earliest 15 s step after the pour before at which no two acts of the hands overlap",
        (ORDER_PAGE,),
    )


def _parts(found: TimedTankful) -> tuple[PartOfDoubt, ...]:
    """The parts of a time's doubt."""
    return tuple(PartOfDoubt(part.code, part.half_width) for part in found.end.parts)


def _row_figures(found: TimedTankful, rows: int) -> tuple[Figure, ...]:
    """The row that a time stands on."""
    row = found.known.row
    return (
        Figure("time_s", row.time_s, "s", row.words),
        Figure("temp_c", row.temp_c, "C", row.words),
        Figure("rows", float(rows), "", row.source),
    )


def _warmth_figures(found: TimedTankful, tankful: PlannedTankful, time_s: float) -> tuple[Figure, ...]:
    """What the tank does to a time."""
    start_c = tankful.development.start_c
    return (
        Figure("start_c", start_c, "C", "computed"),
        Figure("mean_c", _mean_c(found, start_c, time_s), "C", "computed"),
        Figure("factor", time_s / found.known.rate.time_s.value, "", "computed"),
        Figure("extra_s", found.end.estimate.value - found.known.rate.time_s.value, "s", "computed"),
    )


def _mean_c(found: TimedTankful, start_c: float, time_s: float) -> float:
    """Mean temperature of the bath."""
    setting = found.setting
    return mean_temp(time_s, start_c=start_c, room_c=setting.room_c, tau_min=setting.tau_min)


def _inputs(found: TimedTankful, tankful: PlannedTankful) -> tuple[Figure, ...]:
    """Everything that went into a time or a temperature."""
    setting, rate, development = found.setting, found.known.rate, tankful.development
    jug_origin = "read" if found.jug is None else "computed"
    return (
        Figure("printed_s", found.known.row.time_s, "s", found.known.row.words),
        Figure("printed_c", found.known.row.temp_c, "C", found.known.row.words),
        Figure("jug_c", development.jug_c or development.start_c, "C", jug_origin),
        Figure("volume_ml", setting.volume_ml, "mL", "asked"),
        Figure("worth_ml", setting.worth_ml, "mL", "ours, from the tank's volume"),
        Figure("tank_c", setting.tank_c, "C", "assumed"),
        Figure("room_c", setting.room_c, "C", "assumed"),
        Figure("tau_min", setting.tau_min, "min", "ours, from the tank's volume"),
        Figure("q10", rate.q10.value, "per 10 K", rate.q10.source),
    )
