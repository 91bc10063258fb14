"""`tankside plan`: make a plan of rolls by their codes, or show the latest."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from tankside.cli.amounts import degrees_option, json_option, tell, typed_in

if TYPE_CHECKING:
    from tankside.core.planning.plan import Plan
    from tankside.core.quantities.preferences import Preferences, TemperatureUnit

data_folder_option = click.option(
    "--data-folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Where your rolls, bottles and runs are kept; by default this system's usual place.",
)


@click.group()
def plan() -> None:
    """Make a plan, or show the latest."""


@plan.command()
@data_folder_option
@degrees_option
@json_option
def show(data_folder: Path | None, degrees: TemperatureUnit, *, as_json: bool) -> None:
    """The latest plan: tankfuls, liquids and the clock."""
    from tankside.core.refusals import refuse
    from tankside.wiring import house_in

    own = typed_in(degrees, "ml").own
    with house_in(data_folder) as house:
        found = house.desk.plans.latest()
    if found is None:
        raise refuse("no-plan-yet", ways_on=("begin-first-evening",))
    _say(found, own, as_json=as_json)


@plan.command()
@click.argument("codes", nargs=-1, required=True)
@click.option("--reads", help="What the mixed developer reads now; left out while it is not mixed.")
@data_folder_option
@degrees_option
@json_option
def make(
    codes: tuple[str, ...],
    reads: str | None,
    data_folder: Path | None,
    degrees: TemperatureUnit,
    *,
    as_json: bool,
) -> None:
    """Plan the rolls with these codes for now, and keep the plan."""
    from tankside.wiring import house_in
    from tankside.workflows.keep_rolls import find_roll
    from tankside.workflows.make_plan import Chosen, make_plan

    typed = typed_in(degrees, "ml")
    reads_c = typed.temp_c("--reads", reads) if reads else None
    with house_in(data_folder) as house:
        rolls = [find_roll(house.desk, code).key for code in codes]
        made = make_plan(house.desk, house.dice, Chosen(rolls, reads_c=reads_c), house.clock.now())
    _say(made, typed.own, as_json=as_json)


def _say(found: Plan, own: Preferences, *, as_json: bool) -> None:
    """The plan in sentences, or as JSON."""
    if as_json:
        tell(plan_as_numbers(found))
        return
    from tankside.core.planning.timetable import timetable
    from tankside.wording.assumed import assumed_sentence
    from tankside.wording.liquids import amount_sentence
    from tankside.wording.plan import held_sentence, start_found, summary, tank_sentence, time_sentence

    click.echo(summary(found, timetable(found)))
    for one in found.tankfuls:
        rolls = ", ".join(roll.code for roll in one.rolls)
        click.echo(f"{one.letter}, {one.tank.name}: {rolls}. Develop {time_sentence(one)}")
        click.echo(f"   {tank_sentence(one, own)}")
    for liquid in found.liquids:
        click.echo(amount_sentence(liquid, own))
    for said in (start_found(found), *(held_sentence(one) for one in found.held)):
        if said:
            click.echo(said)
    click.echo(assumed_sentence(found.assumed, own))


def plan_as_numbers(found: Plan) -> dict[str, Any]:
    """The plan as JSON tells it: seconds, C and mL, starts counted from the first pour."""
    return {
        "plan": str(found.key),
        "number": found.number,
        "first_pour": found.starts.isoformat() if found.starts else None,
        "tankfuls": [
            {
                "letter": one.letter,
                "tank": one.tank.name,
                "rolls": [roll.code for roll in one.rolls],
                "starts_s": one.starts_s,
                "baths": [
                    {"id": bath.id, "aim_s": bath.times.aim_s, "fills": bath.fills, "liquid": bath.liquid}
                    for bath in one.baths
                ],
                "develop_interval_s": [one.development.end_s.low, one.development.end_s.high]
                if one.development.end_s
                else None,
                "start_c": round(one.development.start_c, 1),
                "source": one.development.source,
            }
            for one in found.tankfuls
        ],
        "liquids": [
            {
                "key": one.key,
                "name": one.name,
                "parts": one.parts,
                "stock_ml": one.stock_ml,
                "water_ml": one.water_ml,
                "mix_to_c": round(one.mix_to_c.value, 1) if one.mix_to_c else None,
                "bottle": one.bottle,
            }
            for one in found.liquids
        ],
        "held": [one.code for one in found.held],
    }
