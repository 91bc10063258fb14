"""`tankside roll`: add a roll out of the camera, list those waiting or done, find one, change one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, get_args

import click

from tankside.cli.amounts import at, json_option, tell
from tankside.cli.folder import data_folder_option
from tankside.core.rolls.formats import KINDS
from tankside.core.rolls.roll import Grain, Standing

if TYPE_CHECKING:
    from tankside.core.rolls.formats import Format, FormatKind
    from tankside.core.rolls.roll import Roll

OVER = ("done", "lost")
Command = Callable[..., Any]


def about_a_roll(command: Command) -> Command:
    """What can be said of a roll; left out on `edit` it stays as it is."""
    for option in reversed((
        click.option("--format", "kind", type=click.Choice(KINDS), help="By default as the last roll."),
        click.option("--length-m", type=float, help="Metres, for 135 by length."),
        click.option("--sheets", type=int, help="How many, for 4x5."),
        click.option("--index", help="Exposure index, as set on the camera."),
        click.option("--camera", help="Camera or holder."),
        click.option("--exposed", type=click.DateTime(["%Y-%m-%d"]), help="Day it was exposed."),
        click.option("--grain", type=click.Choice(get_args(Grain)), help="For the fixer."),
        click.option("--notes", help="Anything else."),
        click.option("--owner", help="Whose it is, if not yours."),
        click.option("--precious/--not-precious", default=None, help="Never first through anything new."),
    )):  # fmt: skip
        command = option(command)
    return command


@click.group()
def roll() -> None:
    """Exposed rolls, waiting and done."""


@roll.command()
@click.argument("film", required=False)
@about_a_roll
@data_folder_option
@json_option
def add(film: str | None, data_folder: Path | None, *, as_json: bool, **said: Any) -> None:
    """Add a roll of FILM; what is left out is as on the last one. The code to write on it is told."""
    from tankside.core.refusals import refuse
    from tankside.wiring import house_in
    from tankside.workflows.keep_rolls import add_roll, preset

    with house_in(data_folder) as house:
        last = preset(house.desk)
        if last is None and film is None:
            raise refuse("film-is-missing", at="film")
        if last is None and said["index"] is None:
            raise refuse("index-is-missing", at="--index", ways_on=("say-the-index",))
        new = _new(film, last, said)
        kept = add_roll(house.desk, house.dice, new, house.clock.now())
    _say([kept], as_json=as_json, heading=f"Write {kept.code} on it.")


@roll.command("list")
@click.option("--done", is_flag=True, help="Those done or lost, not those waiting.")
@data_folder_option
@json_option
def list_(data_folder: Path | None, *, done: bool, as_json: bool) -> None:
    """Rolls waiting, or done; the oldest exposure first."""
    from tankside.wiring import house_in

    with house_in(data_folder) as house:
        every = house.desk.rolls.all()
    shown = [one for one in every if (one.standing in OVER) == done]
    shown.sort(key=lambda one: (one.exposed is None, str(one.exposed), one.code))
    _say(shown, as_json=as_json, heading=f"{len(shown)} {'done' if done else 'waiting'}.")


@roll.command()
@click.argument("code")
@data_folder_option
@json_option
def find(code: str, data_folder: Path | None, *, as_json: bool) -> None:
    """The roll with CODE on its sticker; small letters and no dash will do."""
    from tankside.wiring import house_in
    from tankside.workflows.keep_rolls import find_roll

    with house_in(data_folder) as house:
        found = find_roll(house.desk, code)
    _say([found], as_json=as_json)


@roll.command()
@click.argument("code")
@click.option("--film", help="Its film, by your name for it.")
@about_a_roll
@click.option("--standing", type=click.Choice(get_args(Standing)), help="Where it stands.")
@data_folder_option
@json_option
def edit(
    code: str,
    film: str | None,
    standing: Standing | None,
    data_folder: Path | None,
    *,
    as_json: bool,
    **said: Any,
) -> None:
    """Change what is known of the roll with CODE."""
    from tankside.wiring import house_in
    from tankside.workflows.keep_rolls import edit_roll, find_roll

    with house_in(data_folder) as house:
        known = find_roll(house.desk, code)
        changed = _new(film, known, said)
        edit_roll(house.desk, replace(changed, standing=standing) if standing else changed)
        kept = find_roll(house.desk, code)
    _say([kept], as_json=as_json)


def _new(film: str | None, like: Any, said: dict[str, Any]) -> Any:
    """What was said, over a roll that is like it; from nothing where there is none."""
    from tankside.core.quantities.entry import read_index
    from tankside.core.rolls.formats import Format
    from tankside.core.rolls.roll import Film
    from tankside.workflows.keep_rolls import NewRoll

    if like is None:
        like = NewRoll(Film("?"), Format("135-36"), 1.0)
    told = {name: said[name] for name in ("camera", "notes", "owner", "precious") if said[name] is not None}
    if film is not None or said["grain"]:
        told["film"] = Film(film or like.film.name, said["grain"] or ("unknown" if film else like.film.grain))
    if said["kind"]:
        told["format"] = _format(said["kind"], said)
    if said["index"] is not None:
        told["index"] = at("--index", lambda: read_index(said["index"]))
    if said["exposed"] is not None:
        day: datetime = said["exposed"]
        told["exposed"] = day.date()
    return replace(like, **told)


def _format(kind: FormatKind, said: dict[str, Any]) -> Format:
    """The format said; length and sheets count only for the two that ask them."""
    from tankside.core.rolls.formats import Format

    if kind == "135-length":
        return at("--length-m", lambda: Format(kind, length_m=said["length_m"]))
    return at("--sheets", lambda: Format(kind, sheets=said["sheets"] or 1)) if kind == "4x5" else Format(kind)


def _say(rolls: list[Roll], *, as_json: bool, heading: str = "") -> None:
    """The rolls a line each under a heading, or as JSON."""
    if as_json:
        tell({"rolls": [roll_as_numbers(one) for one in rolls]})
        return
    from tankside.wording.rolls import roll_line

    if heading:
        click.echo(heading)
    for one in rolls:
        click.echo(f"{one.code}  {roll_line(one)}")


def roll_as_numbers(one: Roll) -> dict[str, Any]:
    """A roll as JSON tells it."""
    return {
        "code": one.code,
        "film": one.film.name,
        "grain": one.film.grain,
        "format": one.format.kind,
        "length_m": one.format.length_m,
        "sheets": one.format.sheets if one.format.kind == "4x5" else None,
        "index": one.index,
        "camera": one.camera,
        "owner": one.owner,
        "exposed": one.exposed.isoformat() if one.exposed else None,
        "precious": one.precious,
        "notes": one.notes,
        "standing": one.standing,
    }
