"""`tankside plan` over a folder of its own."""

from __future__ import annotations

import json
from pathlib import Path

from click.testing import CliRunner
from evening_clock import CountingDice, at
from planned import ANSWERS

from tankside.cli.command import command
from tankside.core.solutions.keeping import by_leaflet
from tankside.core.solutions.notation import Dilution
from tankside.wiring import house_in
from tankside.workflows.begin_first_evening import begin_first_evening
from tankside.workflows.get_ready import Marks
from tankside.workflows.mix_bottle import Mixed, mix_bottle


def test_show_and_make(tmp_path: Path) -> None:
    """The latest plan is shown in sentences; a plan of one roll by its code comes as JSON."""
    where = ["--data-folder", str(tmp_path)]
    with house_in(tmp_path) as house:
        begun = begin_first_evening(house.desk, CountingDice(), ANSWERS, at(0.0))
    shown = CliRunner().invoke(command, ["plan", "show", *where])
    code = begun.tankfuls[0].rolls[0].code
    made = CliRunner().invoke(command, ["plan", "make", code, "--reads", "21.0", "--json", *where])

    assert (0, 0) == (shown.exit_code, made.exit_code)
    assert "9:00 (8:45 to 9:15)" in shown.output
    assert [525.0, 555.0] == json.loads(made.output)["tankfuls"][0]["develop_interval_s"]


def test_nothing_planned_is_a_refusal(tmp_path: Path) -> None:
    """Without a plan the way on is told and the exit code is 2."""
    shown = CliRunner().invoke(command, ["plan", "show", "--data-folder", str(tmp_path)])

    assert 2 == shown.exit_code


def test_a_bottle_in_doubt_is_said(tmp_path: Path) -> None:
    """A stock past its date is not mixed from: said in a line, and with its reasons as JSON."""
    where = ["--data-folder", str(tmp_path)]
    old = Mixed("developer", "Umber", Dilution(1, 0), 1000.0, keeping=by_leaflet(1, None))
    with house_in(tmp_path) as house:
        earlier = house.clock.now().before(seconds=100 * 86400.0)
        begun = begin_first_evening(house.desk, CountingDice(), ANSWERS, earlier)
        code = mix_bottle(house.desk, house.dice, old, Marks(), earlier).code
    roll = begun.tankfuls[0].rolls[0].code
    made = json.loads(CliRunner().invoke(command, ["plan", "make", roll, "--json", *where]).output)
    shown = CliRunner().invoke(command, ["plan", "show", *where]).output
    (doubt,) = made["bottles_in_doubt"]

    assert (code, "passed over") == (doubt["bottle"], doubt["standing"])
    assert "past-its-date" in doubt["reasons"]
    assert f"No: Not {code} tonight: it was good until " in shown
