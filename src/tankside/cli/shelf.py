"""`tankside shelf`: every bottle with what is left in it and until when it is good."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from tankside.cli.amounts import VolumeWord, json_option, tell, typed_in, volumes_option
from tankside.cli.folder import data_folder_option

if TYPE_CHECKING:
    from datetime import date

    from tankside.core.quantities.preferences import Preferences
    from tankside.workflows.look_at_shelf import BottleNow


@click.command()
@click.option("--all", "everything", is_flag=True, help="Empty bottles and those poured away too.")
@data_folder_option
@volumes_option
@json_option
def shelf(everything: bool, data_folder: Path | None, volumes: VolumeWord, *, as_json: bool) -> None:
    """Every bottle that holds something: what is left in it, and until when it is good."""
    from tankside.wiring import house_in
    from tankside.workflows.look_at_shelf import bottles_now
    from tankside.workflows.moments import moment_of

    own = typed_in("C", volumes).own
    with house_in(data_folder) as house:
        today = moment_of(house.clock.now()).astimezone(house.there).date()
        bottles = [one for one in bottles_now(house.desk, house.there, today) if everything or not one.empty]
    if as_json:
        tell({"bottles": [_numbers(one) for one in bottles]})
        return
    if not bottles:
        click.echo("Nothing on the shelf.")
    for one in bottles:
        click.echo(_line(one, today, own))


def _line(one: BottleNow, today: date, own: Preferences) -> str:
    """One bottle in a line."""
    from tankside.core.quantities.display import volume_text
    from tankside.wording.keeping import leader_sentence, until_sentence
    from tankside.wording.shelf import bottle_name

    spoilt = "Contaminated." if one.account.contaminated else ""
    gone = "Poured away." if one.account.discarded else ""
    slow = leader_sentence(one.leader) if one.leader and one.leader.verdict != "good" else ""
    told = (spoilt, gone, until_sentence(one.until, today), slow)
    left = f"{volume_text(one.contents.ml, own)} left."
    return "  ".join((one.bottle.code, " ".join((f"{bottle_name(one.batch)}, {left}", *filter(None, told)))))


def _numbers(one: BottleNow) -> dict[str, Any]:
    """One bottle as JSON tells it."""
    holds = one.contents
    return {
        "code": one.bottle.code,
        "kind": one.batch.kind,
        "name": one.batch.name,
        "parts": one.batch.parts,
        "left_ml": round(holds.ml, 1),
        "holds_ml": holds.holds_ml,
        "rolls_used": round(one.account.area_units, 2),
        "made": holds.made.isoformat(),
        "part_full_since": holds.part_full_since.isoformat() if holds.part_full_since else None,
        "good_until": one.until.isoformat() if one.until else None,
        "leader": None
        if one.leader is None
        else {"ratio": round(one.leader.ratio, 2), "verdict": one.leader.verdict},
        "contaminated": one.account.contaminated,
        "discarded": one.account.discarded,
    }
