"""`tankside plan` over a folder of its own."""

from __future__ import annotations

import json
from pathlib import Path

from click.testing import CliRunner
from evening_clock import CountingDice, at
from planned import ANSWERS

from tankside.cli.command import command
from tankside.wiring import house_in
from tankside.workflows.begin_first_evening import begin_first_evening


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
