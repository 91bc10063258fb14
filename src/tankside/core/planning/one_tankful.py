"""One tankful worked out: its time, its temperatures and its baths."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tankside.core.development.contrast import INDUCTION_S, c_inf_over
from tankside.core.development.rate import HYDROQUINONE_LEAST_C
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.baths import Step, Times
from tankside.core.methods.combinations import Combination
from tankside.core.methods.default_method import DRAIN_EARLY_S, DRAIN_LATE_S, default_method
from tankside.core.methods.known_time import KnownTime, known_time
from tankside.core.planning.development import (
    MODEL,
    Setting,
    WithParts,
    mix_to,
    time_for,
    told,
)
from tankside.core.planning.equipment import Place
from tankside.core.planning.fixer import fix_times
from tankside.core.planning.plan import Development, PlannedBath, PlannedRoll, PlannedTankful
from tankside.core.planning.tankfuls import Load
from tankside.core.planning.wish import BathTimes, WantedRoll, Wish
from tankside.core.rates import BelievedRate
from tankside.core.rolls.roll import Grain

LARGEST_STEP_K = 5.0
"""Baths differ by at most this much, so the wash is tempered too where the tap is colder."""


@dataclass(frozen=True, slots=True)
class TimedTankful:
    """What one tankful's time was worked out from, for those who ask why."""

    known: KnownTime
    setting: Setting
    end: WithParts
    jug: WithParts | None


def timed(tankful: PlannedTankful, wish: Wish) -> TimedTankful:
    """The time of a planned tankful worked out again, with the parts of its doubt."""
    wanted = next(one for one in wish.rolls if one.roll.key == tankful.rolls[0].key)
    known = known_time(wanted.combination, wanted.roll.index)
    development = tankful.development
    setting = Setting(
        tankful.tank.volume_ml,
        tankful.tank.worth_ml,
        development.tank_c if development.tank_c is not None else wish.place.room_c,
        wish.place.room_c,
        tankful.tank.tau_min,
        tankful.tank.kind,
    )
    jug_c = development.jug_c if development.jug_c is not None else setting.jug_c(development.start_c)
    end = time_for(
        known, setting, jug_c,
        thermometer_step_c=wish.thermometer.step_c,
        other_agitation=other_agitation(wanted.combination, wish),
    )  # fmt: skip
    read = wish.reads_c is not None and tankful.baths[0].liquid == "develop-A"
    return TimedTankful(
        known, setting, end, None if read else mix_to(known, setting, known.rate.time_s.value)
    )


def other_agitation(combination: Combination, wish: Wish) -> bool:
    """Whether the developer is agitated otherwise than its time was printed for."""
    return wish.agitation is not None and wish.agitation != combination.agitation


def wash_c(place: Place, *, developer_c: float) -> float:
    """Temperature of the wash water: the cold tap, tempered where it is more than 5 K off the developer.

    Where nobody has read the tap it is taken to be at room temperature.
    """
    if place.cold_c is None:
        return place.room_c
    return max(place.cold_c, developer_c - LARGEST_STEP_K)


def planned_tankful(
    letter: str, load: Load, wish: Wish, *, jug_c: float | None, liquid: str | None = None
) -> PlannedTankful:
    """One tankful: timed by what the jug reads, or mixed so warm that its own time is right.

    `liquid` names the mix of another tankful that it is poured from.
    """
    known = known_time(load.combination, load.index)
    setting = _setting(load, wish, known)
    poured_c = jug_c
    if poured_c is None:
        poured_c = mix_to(known, setting, known.rate.time_s.value).estimate.value
    other = other_agitation(load.combination, wish)
    end = _told(known, setting, wish, poured_c=poured_c, as_printed=jug_c is None, other=other)
    grains = [one.roll.film.grain for one in load.rolls]
    steps = default_method(time_s=end.value, fix_longer=any(one != "cubic" for one in grains)).steps
    steps = tuple(_by_test_piece(step, wish, grains) for step in steps)
    return PlannedTankful(
        letter,
        load.tank,
        tuple(_roll(one) for one in load.rolls),
        tuple(_bath(letter, _as_wished(step, load.combination, wish), wish.times, liquid) for step in steps),
        _development(known, setting, load, poured_c=poured_c, end=end),
        combination=load.combination.key,
        index=load.index,
    )


def _setting(load: Load, wish: Wish, known: KnownTime) -> Setting:
    """The tank it is poured into: at room temperature, or at that of the wash it held before."""
    room_c = wish.place.room_c
    tank_c = wash_c(wish.place, developer_c=known.row.temp_c) if load.again else room_c
    return Setting(load.tank.volume_ml, load.tank.worth_ml, tank_c, room_c, load.tank.tau_min, load.tank.kind)


def _told(
    known: KnownTime,
    setting: Setting,
    wish: Wish,
    *,
    poured_c: float,
    as_printed: bool,
    other: bool,
) -> Estimate:
    """When the plan would pour out: one's own time, a time that may not be moved, or the one worked out."""
    if wish.own_time_s is not None:
        return _fixed(wish.own_time_s, "own time")
    end = time_for(
        known, setting, poured_c,
        thermometer_step_c=wish.thermometer.step_c, other_agitation=other,
    ).estimate  # fmt: skip
    if end.low == end.high:
        return end
    rounded = told(end)
    return replace(rounded, value=known.rate.time_s.value) if as_printed else rounded


def _fixed(time_s: float, source: str) -> Estimate:
    """A time that is a rule."""
    return Estimate(time_s, time_s, time_s, "s", source)


def _development(
    known: KnownTime, setting: Setting, load: Load, *, poured_c: float, end: Estimate
) -> Development:
    """What the sink needs to move the end."""
    low_min, high_min = setting.tau_ends_min
    return Development(
        time_s=known.rate.time_s,
        rate=_carried(known),
        start_c=setting.start_c(poured_c),
        room_c=setting.room_c,
        tau_min=Estimate(setting.tau_min, low_min, high_min, "min", "ours"),
        c_inf_over_ci=c_inf_over(known.row.contrast),
        induction_s=INDUCTION_S.value,
        time_rule=load.combination.time_rule,
        contrast=known.row.contrast,
        model=MODEL,
        source=known.source,
        end_s=end,
        jug_c=poured_c,
        tank_c=setting.tank_c,
    )


def _carried(known: KnownTime) -> BelievedRate:
    """The rate as the sink is given it: with hydroquinone it is not known below 16 C."""
    rate = known.rate.believed
    if known.hydroquinone:
        return replace(rate, least_c=max(rate.least_c, HYDROQUINONE_LEAST_C))
    return rate


def _as_wished(step: Step, combination: Combination, wish: Wish) -> Step:
    """The developer's step with the agitation of its combination or of one's own, and the end of its rule.

    A bath that works to completion has a least time and no most.
    """
    if step.kind != "develop":
        return step
    agitation = wish.agitation or combination.agitation
    times = step.times
    if combination.time_rule == "completion":
        times = Times(times.least_s, times.aim_s, None)
    return replace(step, agitation=agitation, times=times)


def _by_test_piece(step: Step, wish: Wish, grains: list[Grain]) -> Step:
    """A step with the fix as long as the fixer's test piece asks, where that is longer."""
    if step.kind != "fix" or wish.times.fix_s is not None:
        return step
    return replace(step, times=fix_times(step.times, wish.supply("fixer"), grains))


def _bath(letter: str, step: Step, own: BathTimes, liquid: str | None) -> PlannedBath:
    """A step of the method as a bath of this tankful, with the person's own times where given."""
    aims = {"stop": own.stop_s, "fix": own.fix_s, "wash": own.wash_fill_s, "wetting": own.wetting_s}
    aim_s = aims.get(step.kind)
    times = step.times if aim_s is None else _with_aim(step.times, aim_s)
    word: str | None = step.kind if step.kind != "wash" else None
    if step.kind == "develop":
        word = liquid or f"develop-{letter}"
    fills = own.wash_fills if step.kind == "wash" and own.wash_fills else step.fills
    return PlannedBath(
        f"{letter}.{step.kind}", step.kind, word, times, step.destination, step.agitation, fills,
        0.0 if times.most_s is None else DRAIN_EARLY_S, DRAIN_LATE_S,
    )  # fmt: skip


def _with_aim(times: Times, aim_s: float) -> Times:
    """Times with another aim; least and most give way where the person goes beyond them."""
    most_s = None if times.most_s is None else max(times.most_s, aim_s)
    return Times(min(times.least_s, aim_s), aim_s, most_s)


def _roll(one: WantedRoll) -> PlannedRoll:
    """A roll as the plan sees it."""
    roll = one.roll
    return PlannedRoll(
        roll.key,
        roll.code,
        roll.film.name,
        roll.format.area_units,
        roll.format.gelatin_on_both_sides,
        roll.film.grain,
        roll.precious,
    )
