"""`tankside journal` over an invented evening on the disk."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner
from evening_clock import CountingDice, SetClock
from season import Season

from tankside.cli.command import command
from tankside.core.review.evidence import NextMorning
from tankside.wiring import open_house
from tankside.workflows.answer_next_morning import answer_next_morning


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A data folder with one evening, nine seconds late and judged harsh."""
    clock = SetClock()
    with open_house(tmp_path / "tankside.db", clock, CountingDice()) as house:
        season = Season(house)
        which = season.evening(developed_s=579.0)
        clock.seconds = 90_000.0
        answer_next_morning(house.desk, house.dice, which, NextMorning("right", "harsh"), clock.now())
    return tmp_path


def told(folder: Path, *arguments: str) -> str:
    """What the command says; it must succeed."""
    ended = CliRunner().invoke(command, ["journal", *arguments, "--data-folder", str(folder)])
    assert 0 == ended.exit_code, ended.output
    return ended.output


def test_runs_are_listed(folder: Path) -> None:
    """One line a run, with its key, day and film; the same as JSON."""
    assert told(folder).startswith("00000000  2026-11-25 19:44  ")
    assert ["A"] == [one["letter"] for one in json.loads(told(folder, "--json"))["runs"][0]["tankfuls"]]


def test_one_run_is_said_beside_its_plan(folder: Path) -> None:
    """Verdict, what differed, what is offered; in Fahrenheit where that is asked."""
    text = told(folder, "00000000", "--degrees", "F")

    assert "Tankful A: Counts as 9:40 of development at 68.0 °F where 9:30 was meant" in text
    assert "Drained 9 s late. Too small to see in the film." in text
    assert "Offered: " in text
    assert "You called the contrast harsh; that stands for +10 % (0 to +20)." in text


def test_json_has_numbers_with_their_doubt(folder: Path) -> None:
    """Counted, contrast with its interval, what differed and what is proposed."""
    (one,) = json.loads(told(folder, "00000000", "--tankful", "a", "--json"))["tankfuls"]

    assert (579, 570) == (one["counted"]["had_s"], one["counted"]["due_s"])
    low, high = one["counted"]["contrast"]["interval"]
    assert low < one["counted"]["contrast"]["value"] < high
    assert ["Drained"] == [each["what"] for each in one["differed"]]
    assert [("time", "offered")] == [(each["what"], each["standing"]) for each in one["proposals"]]


def test_an_empty_journal_says_how_to_begin(tmp_path: Path) -> None:
    """No run: a sentence, and an empty list as JSON; a key that fits nothing ends with exit code 2."""
    assert "No run yet." in told(tmp_path)
    assert {"runs": []} == json.loads(told(tmp_path, "--json"))
    ended = CliRunner().invoke(command, ["journal", "ffff", "--data-folder", str(tmp_path)])
    assert 2 == ended.exit_code
    assert "There is no such run." in ended.output
