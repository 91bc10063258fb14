"""`tankside journal`: every run, or one with what differed and what it proposes."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any
from zoneinfo import ZoneInfo

import click

from tankside.cli.amounts import degrees_option, json_option, tell, typed_in
from tankside.cli.plan import data_folder_option

if TYPE_CHECKING:
    from tankside.core.doubt.estimate import Estimate
    from tankside.core.quantities.preferences import Preferences, TemperatureUnit
    from tankside.workflows.ports import Desk
    from tankside.workflows.read_journal import ListedRun, ReadTankful

SHORT_KEY = 8


@click.command()
@click.argument("run", required=False)
@click.option("--tankful", help="Only the tankful of this letter.")
@data_folder_option
@degrees_option
@json_option
def journal(
    run: str | None,
    tankful: str | None,
    data_folder: Path | None,
    degrees: TemperatureUnit,
    *,
    as_json: bool,
) -> None:
    """Every run, the latest first; or one RUN, named by the beginning of its key, beside its plan."""
    from tankside.wiring import house_in
    from tankside.workflows.read_journal import find_run, list_runs

    own = typed_in(degrees, "ml").own
    with house_in(data_folder) as house:
        if run is None:
            _list(list_runs(house.desk), as_json=as_json)
            return
        read = _tankfuls(house.desk, str(find_run(house.desk, run)), tankful)
    if as_json:
        tell({"run": str(read[0].run.key), "tankfuls": [_numbers(one) for one in read]})
        return
    for one in read:
        _say(one, own)


def _tankfuls(desk: Desk, run: str, letter: str | None) -> list[ReadTankful]:
    """One tankful, or all of a run."""
    from uuid import UUID

    from tankside.workflows.read_journal import Which, letters, read_run, read_tankful

    key = UUID(run)
    wanted = [letter.upper()] if letter else letters(read_run(desk, key))
    return [read_tankful(desk, Which(key, one)) for one in wanted]


def _list(runs: tuple[ListedRun, ...], *, as_json: bool) -> None:
    """The runs as lines, or as JSON."""
    if as_json:
        tell({"runs": [_heading(one) for one in runs]})
        return
    if not runs:
        click.echo("No run yet. Plan an evening and begin it at the sink.")
    for one in runs:
        opened = one.opened.astimezone(ZoneInfo(one.zone))
        rolls = " ".join(code for each in one.tankfuls for code in each.rolls)
        films = ", ".join(dict.fromkeys(each.film for each in one.tankfuls))
        asks = "".join(f"; {each.letter} not judged yet" for each in one.tankfuls if each.asked)
        standing = asks if one.closed else f"; still open{asks}"
        click.echo(f"{str(one.run)[:SHORT_KEY]}  {opened:%Y-%m-%d %H:%M}  {rolls}  {films}{standing}")


def _heading(one: ListedRun) -> dict[str, Any]:
    """A run of the list as JSON tells it."""
    return {
        "run": str(one.run),
        "opened": one.opened.isoformat(),
        "closed": one.closed,
        "tankfuls": [
            {"letter": each.letter, "tank": each.tank, "rolls": list(each.rolls), "asked": each.asked}
            for each in one.tankfuls
        ],
    }


def _say(read: ReadTankful, own: Preferences) -> None:
    """One tankful in sentences."""
    from tankside.wording.deviations import say_deviation
    from tankside.wording.journal import read_words, verdict
    from tankside.wording.keeping import anyway_sentences
    from tankside.wording.permanence import wash_verdict
    from tankside.wording.proposals import say_proposal

    click.echo(f"Tankful {read.letter}: {verdict(read.counted, own)}")
    for line in (read_words(read.counted), wash_verdict(read.wash) if read.wash else ""):
        if line:
            click.echo(f"  {line}")
    day = read.run.state.plan.starts or read.run.state.plan.made
    for line in anyway_sentences(read.run.state.plan, read.letter, day.date()):
        click.echo(f"  Against the advice: {line}")
    for one in read.deviations:
        click.echo(f"  {say_deviation(one, read.run.state, own).whole}")
    if not read.deviations:
        click.echo("  Nothing differed from the plan.")
    for kept in read.proposals:
        if kept.standing != "declined":
            said = say_proposal(kept.proposal, own)
            click.echo(f"  {kept.standing.capitalize()}: {said.heading}. {' '.join(said.reasons)}")


def _numbers(read: ReadTankful) -> dict[str, Any]:
    """One tankful as JSON tells it; sentences in C."""
    from tankside.core.quantities.display import to_step
    from tankside.wording.deviations import say_deviation
    from tankside.wording.journal import COUNTED_STEP_S
    from tankside.wording.proposals import told_number

    found = read.counted
    return {
        "letter": read.letter,
        "rolls": [roll.code for roll in read.planned.rolls],
        "counted": None
        if found is None
        else {
            "had_s": round(found.had_s),
            "counted_s": to_step(found.counted_s, COUNTED_STEP_S),
            "due_s": to_step(found.due_s, COUNTED_STEP_S),
            "at_c": to_step(found.ref_c, 0.1),
            "contrast": _percent(found.percent),
            "size": found.size,
        },
        "differed": [
            {
                "what": type(one.what).__name__,
                "bath": one.bath,
                "at_us": one.at_us,
                "said": say_deviation(one, read.run.state).whole,
            }
            for one in read.deviations
        ],
        "proposals": [
            {
                "what": one.proposal.what,
                "old": told_number(one.proposal, one.proposal.old),
                "new": told_number(one.proposal, one.proposal.new),
                "standing": one.standing,
            }
            for one in read.proposals
        ],
    }


def _percent(of: Estimate) -> dict[str, Any]:
    """A percentage with its interval, as the sentences tell it."""
    from tankside.wording.percent import whole_percent

    value, *interval = whole_percent(of)
    return {"value": value, "interval": interval, "unit": of.unit, "source": of.source}
