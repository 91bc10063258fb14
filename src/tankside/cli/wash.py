"""`tankside wash`: which fills and how long, or what given fills come to."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

import click

from tankside.cli.amounts import (
    VolumeWord,
    as_number,
    at,
    degrees_option,
    json_option,
    tell,
    typed_in,
    volumes_option,
)
from tankside.cli.why import print_whys, why_option, with_whys

if TYPE_CHECKING:
    from tankside.core.permanence.wash_plan import WashAnswer

SOURCE = "two compartments, planned on the slow half-life; a plan, not a test"


@click.command()
@click.option("--fill-ml", required=True, help="Water of one fill.")
@click.option("--soak", "soaks", multiple=True, help="Contact of one fill, as 3:00; once for each fill.")
@click.option(
    "--least", type=click.Choice(["water", "time"]), default="water", show_default=True,
    help="What to spare where no soak is told.",
)  # fmt: skip
@click.option("--rolls", type=click.FloatRange(0.05, 40), default=1.0, show_default=True,
              help="Film in the tank, in rolls of 80 square inches.")  # fmt: skip
@click.option("--both-sides", is_flag=True, help="Gelatin on both sides: 120 and sheet film.")
@click.option("--water-at", default="20 C", show_default=True, help="What the wash water reads.")
@click.option("--fixer-spent", is_flag=True, help="The fixer was past its limit.")
@degrees_option
@volumes_option
@why_option
@json_option
def wash(  # noqa: PLR0917 - one argument an option
    fill_ml: str,
    soaks: tuple[str, ...],
    least: Literal["water", "time"],
    rolls: float,
    both_sides: bool,
    water_at: str,
    fixer_spent: bool,
    degrees: Literal["C", "F"],
    volumes: VolumeWord,
    *,
    asks_why: bool,
    as_json: bool,
) -> None:
    """Plan the fills of a wash, or ask what given fills come to."""
    from tankside.core.permanence.wash_plan import Washing, judge_wash, plan_wash
    from tankside.core.permanence.washing import Held
    from tankside.core.planning.explain_washing import why_wash
    from tankside.core.quantities.entry import read_time

    typed = typed_in(degrees, volumes)
    washing = Washing(
        typed.volume_ml("--fill-ml", fill_ml),
        typed.temp_c("--water-at", water_at),
        Held().for_units(rolls, both_sides=both_sides),
        fixer_spent,
    )
    soaks_s = [at("--soak", lambda text=one: read_time(text)) for one in soaks]  # type: ignore[misc]
    answer = judge_wash(soaks_s, washing) if soaks_s else plan_wash(washing, least=least)
    whys = (why_wash(answer, washing, units=rolls),) if asks_why else ()
    if as_json:
        tell(with_whys(_numbers(answer), whys))
        return
    from tankside.wording.chemistry import wash_sentences

    for sentence in wash_sentences(answer, typed.own):
        click.echo(sentence)
    print_whys(whys, typed.own)


def _numbers(answer: WashAnswer) -> dict[str, object]:
    """The answer as JSON tells it; a residual under the floor is 'well below'."""
    from tankside.core.permanence.washing import HALF_LIFE_NAMED_S, HALF_LIFE_PLANNED_S, LIMIT_G_M2

    def residual(left: float | None) -> object:
        return "well below" if left is None else as_number(left, "g/m2", step=0.001, source=SOURCE)

    more_s = answer.one_more_s
    return {
        "soaks": [as_number(one, "s", step=1, source="told or planned") for one in answer.soaks_s],
        "water": as_number(answer.water_ml, "mL", step=1, source="fills"),
        "time": as_number(answer.time_s, "s", step=60, source="soaks and 45 s of hands a fill"),
        "left_if_slow": residual(answer.slow_g_m2),
        "left_if_quick": residual(answer.quick_g_m2),
        "limit": as_number(LIMIT_G_M2, "g/m2", step=0.001, source="36 CFR 1238.14(c), citing ISO 18901"),
        "enough_if_half_leaves_in": as_number(answer.enough_if_s, "s", step=1, source=SOURCE),
        "sources_say_s": [round(HALF_LIFE_NAMED_S), round(HALF_LIFE_PLANNED_S)],
        "slow_in_this_water": as_number(answer.slow_half_life_s, "s", step=5, source="TM 11-2323, para. 33"),
        "confirmed_if_slow": answer.confirmed,
        "one_more_soak": None if more_s is None else as_number(more_s, "s", step=30, source=SOURCE),
    }
