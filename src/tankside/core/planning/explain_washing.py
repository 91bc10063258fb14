"""Why so many fills, and why they soak so long."""

from __future__ import annotations

from tankside.core.permanence.wash_plan import WashAnswer, Washing, judge_wash, told_residual
from tankside.core.permanence.washing import (
    HALF_LIFE_NAMED_S,
    LIMIT_G_M2,
    Held,
    residual_after_fills,
)
from tankside.core.planning.one_tankful import wash_c
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.why import Figure, Length, Plot, Why, narrowings, rule
from tankside.core.planning.wish import Wish
from tankside.core.refusals import refuse

WASHING_PAGE = "docs/science/washing"
REFERENCES = (WASHING_PAGE, "cfr-36-1238-14", "navedtra-14209", "army-ss0509-8", "torzynski-2004")


def wash_of(tankful: PlannedTankful, wish: Wish) -> Why:
    """Why a tankful of a plan is washed as it is; refused where it has no wash."""
    bath = next((one for one in tankful.baths if one.kind == "wash"), None)
    if bath is None:
        raise refuse("no-why", about="wash")
    both_sides = any(roll.both_sides for roll in tankful.rolls)
    washing = Washing(
        tankful.tank.volume_ml,
        wash_c(wish.place, developer_c=tankful.development.rate.ref_c),
        Held().for_units(tankful.area_units, both_sides=both_sides),
    )
    answer = judge_wash((bath.times.aim_s,) * bath.fills, washing)
    return why_wash(answer, washing, units=tankful.area_units, tankful=tankful.letter)


def why_wash(answer: WashAnswer, washing: Washing, *, units: float, tankful: str | None = None) -> Why:
    """Why these fills: enough if half leaves in so many seconds or less, beside what two sources say.

    The sources are never averaged, and no residual under the floor is told.
    """
    held = washing.held
    limit = LIMIT_G_M2
    return Why(
        "wash",
        tankful,
        rule(answer.enough_if_s, "s", "two compartments, asked the other way round"),
        (
            Length(
                "half-life-named", rule(HALF_LIFE_NAMED_S, "s", "army-ss0509-8"), _left(answer.quick_g_m2)
            ),
            Length(
                "half-life-planned",
                rule(answer.slow_half_life_s, "s", "navedtra-14209"),
                (*_left(answer.slow_g_m2), Figure("temp_c", washing.temp_c, "C", "plan")),
            ),
            Length(
                "these-fills",
                rule(answer.enough_if_s, "s", WASHING_PAGE),
                (
                    Figure("confirmed", float(answer.confirmed), "", WASHING_PAGE),
                    Figure("one_more_s", answer.one_more_s or 0.0, "s", WASHING_PAGE),
                ),
            ),
        ),
        (),
        narrowings("residual-test"),
        (
            Figure("fills", float(len(answer.soaks_s)), "", "plan" if tankful else "told or planned"),
            Figure("soak_s", min(answer.soaks_s), "s", "plan" if tankful else "told or planned"),
            Figure("fill_ml", answer.fill_ml, "mL", "the tank's volume" if tankful else "asked"),
            Figure("wash_c", washing.temp_c, "C", "plan" if tankful else "asked"),
            Figure("units", units, "rolls", "film area"),
            Figure("film_ml", held.film_ml, "mL", "torzynski-2004"),
            Figure("clings_ml", held.tank_ml, "mL", "torzynski-2004"),
            Figure("start_g_l", held.start_g_l, "g/L", "rapid fixer at 1+4"),
            Figure("limit", limit, "g/m2", "36 CFR 1238.14(c), citing ISO 18901"),
        ),
        "film and water exchange with one half-life; each fill is poured away but for what clings; "
        "N is the half-life at which the last fill comes to the limit",
        REFERENCES,
        spread="sources",
        leaves_out=("last-traces", "fixer-within-limit"),
        plot=_falling(answer, washing),
    )


def _left(residual_g_m2: float | None) -> tuple[Figure, ...]:
    """What a source would leave; nothing where it is told no further."""
    return () if residual_g_m2 is None else (Figure("left", residual_g_m2, "g/m2", WASHING_PAGE),)


def _falling(answer: WashAnswer, washing: Washing) -> Plot:
    """Fixer left in the film after each fill, by both half-lives: they stay apart."""
    held = washing.held
    start = held.start_g_l * held.film_ml / 1000.0 / held.area_m2
    quick, slow = (
        tuple(
            told_residual(one)
            for one in (
                start,
                *residual_after_fills(
                    soaks_s=answer.soaks_s, fill_ml=answer.fill_ml, half_life_s=half_life_s, held=held
                ),
            )
        )
        for half_life_s in (HALF_LIFE_NAMED_S, answer.slow_half_life_s)
    )
    across = tuple(float(fill) for fill in range(len(answer.soaks_s) + 1))
    return Plot(
        "wash", "fills", "g/m2", across, quick, slow, level=LIMIT_G_M2, by_tens=True,
        rows=tuple(range(len(across))),
    )  # fmt: skip
