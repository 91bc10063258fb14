"""Backup and restore from the terminal."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from evening import MADE, ROLLS

from tankside.cli.command import command
from tankside.machine.data_folder import open_data_folder
from tankside.wiring import desk_over


def run(*words: str) -> Result:
    """What the command does."""
    return CliRunner().invoke(command, list(words))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A data folder with two rolls in it."""
    home = open_data_folder(tmp_path / "kept")
    with desk_over(home.own) as desk:
        for roll in ROLLS:
            desk.rolls.add(roll, MADE)
    return home.path


def test_what_was_backed_up_comes_back(folder: Path, tmp_path: Path) -> None:
    """It should say in one sentence what was done, and bring the rolls into another folder."""
    packed = str(tmp_path / "b.zip")
    backed = run("backup", packed, "--data-folder", str(folder))
    assert 0 == backed.exit_code, backed.output
    assert backed.output.startswith(f"{packed} holds your rolls, bottles and runs (")
    restored = run("restore", packed, "--data-folder", str(tmp_path / "new"))
    assert 0 == restored.exit_code, restored.output
    with desk_over(tmp_path / "new" / "tankside.db") as desk:
        assert set(ROLLS) == set(desk.rolls.all())


def test_scripts_get_json(folder: Path, tmp_path: Path) -> None:
    """It should tell file, size and where the earlier database went."""
    packed = str(tmp_path / "b.zip")
    backed = json.loads(run("backup", packed, "--data-folder", str(folder), "--json").output)
    assert (packed, 0) == (backed["file"], backed["photographs"])
    assert Path(packed).stat().st_size == backed["size_bytes"]
    again = run("restore", packed, "--data-folder", str(folder), "--move-aside", "--json")
    aside = Path(json.loads(again.output)["moved_aside"])
    assert folder == aside.parent
    assert aside.is_file()


def test_what_stands_there_is_not_written_over(folder: Path, tmp_path: Path) -> None:
    """It should end with exit code 2 and one sentence that says what to do."""
    packed = str(tmp_path / "b.zip")
    run("backup", packed, "--data-folder", str(folder))
    refused = run("restore", packed, "--data-folder", str(folder))
    assert 2 == refused.exit_code
    assert "--move-aside" in refused.output


def test_a_folder_that_is_being_served_is_not_restored_into(folder: Path, tmp_path: Path) -> None:
    """It should refuse while Tankside is open over it, for the open program would go on with the old file."""
    packed = str(tmp_path / "b.zip")
    run("backup", packed, "--data-folder", str(folder))
    with open_data_folder(folder).served_at("http://127.0.0.1:8462"):
        refused = run("restore", packed, "--data-folder", str(folder), "--move-aside")
        assert 0 == run("backup", str(tmp_path / "c.zip"), "--data-folder", str(folder)).exit_code
    assert 2 == refused.exit_code
    assert "already open" in refused.output
