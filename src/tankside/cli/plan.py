"""`tankside plan`: make a plan of rolls by their codes, or show the latest."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from tankside.cli.amounts import degrees_option, json_option, tell, typed_in

if TYPE_CHECKING:
    from tankside.core.planning.plan import Liquid, Plan, PlannedTankful
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
    from tankside.wording.keeping import doubt_heading, doubt_sentence
    from tankside.wording.liquids import amount_sentence
    from tankside.wording.plan import held_sentence, start_found, summary, tank_sentence, time_sentence

    click.echo(summary(found, timetable(found)))
    for one in found.tankfuls:
        rolls = ", ".join(roll.code for roll in one.rolls)
        click.echo(f"{one.letter}, {one.tank.name}: {rolls}. Develop {time_sentence(one)}")
        click.echo(f"   {tank_sentence(one, own)}")
    for liquid in found.liquids:
        click.echo(amount_sentence(liquid, own))
    for doubt in found.bottles:
        click.echo(f"{doubt_heading(doubt)}: {doubt_sentence(doubt, (found.starts or found.made).date())}")
    for said in (start_found(found), *(held_sentence(one) for one in found.held)):
        if said:
            click.echo(said)
    click.echo(assumed_sentence(found.assumed, own))


def plan_as_numbers(found: Plan) -> dict[str, Any]:
    """The plan as JSON tells it: seconds, C and mL to their steps, starts counted from the first pour."""
    return {
        "plan": str(found.key),
        "number": found.number,
        "first_pour": found.starts.isoformat() if found.starts else None,
        "tankfuls": [_tankful(one) for one in found.tankfuls],
        "liquids": [_liquid(one) for one in found.liquids],
        "held": [one.code for one in found.held],
        "bottles_in_doubt": [
            {"bottle": one.bottle, "standing": one.standing, "reasons": list(one.reasons)}
            for one in found.bottles
        ],
    }


def _tankful(one: PlannedTankful) -> dict[str, Any]:
    """One tankful; its developing time to the step that its doubt allows."""
    from tankside.core.quantities.display import planned, to_step

    end = one.development.end_s
    told = None if end is None else planned(end)
    return {
        "letter": one.letter,
        "tank": one.tank.name,
        "rolls": [roll.code for roll in one.rolls],
        "starts_s": to_step(one.starts_s, 1.0),
        "baths": [
            {
                "id": bath.id,
                "aim_s": told.value if told and bath.kind == "develop" else to_step(bath.times.aim_s, 1.0),
                "fills": bath.fills,
                "liquid": bath.liquid,
            }
            for bath in one.baths
        ],
        "develop_interval_s": None if told is None else [told.low, told.high],
        "start_c": to_step(one.development.start_c, 0.1),
        "source": one.development.source,
    }


def _liquid(one: Liquid) -> dict[str, Any]:
    """One liquid, stock and water each to the mark of its own measure; water is filled up to the volume."""
    from tankside.core.planning.liquids import mark_for
    from tankside.core.quantities.display import to_step

    return {
        "key": one.key,
        "name": one.name,
        "parts": one.parts,
        "volume_ml": to_step(one.volume_ml, 1.0),
        "stock_ml": to_step(one.stock_ml, mark_for(one.stock_ml)),
        "water_ml": to_step(one.water_ml, mark_for(one.water_ml)),
        "mix_to_c": to_step(one.mix_to_c.value, 0.1) if one.mix_to_c else None,
        "bottle": one.bottle,
        "stock_from": one.stock_from,
    }
