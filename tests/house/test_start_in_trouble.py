"""What can be wrong before a start: one sentence with a way on, exit code 2, every file left as it was."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner
from house.started import refused
from project import SOURCE, bare_surroundings

from tankside.cli.command import command
from tankside.store.schema import SCHEMA
from tankside.wiring import desk_over


def damaged(file: Path) -> None:
    """Words where a database should be."""
    file.write_bytes(b"no database, only words about one. " * 40)


def newer(file: Path) -> None:
    """A database of a later Tankside."""
    with desk_over(file):
        pass
    with sqlite3.connect(file) as connection:
        connection.execute(f"PRAGMA user_version = {SCHEMA + 1}")
    connection.close()


def foreign(file: Path) -> None:
    """Another program's database."""
    with sqlite3.connect(file) as connection:
        connection.execute("CREATE TABLE recipes (name TEXT)")
    connection.close()


@pytest.mark.parametrize(
    ("spoil", "sentence", "way_on"),
    [
        (damaged, "is damaged; it was left as it is.", "Restore a backup into another folder."),
        (newer, "was made by a newer Tankside", "Update Tankside."),
        (foreign, "was not made by Tankside; it was left as it is.", "--data-folder FOLDER"),
    ],
)
def test_a_file_that_cannot_be_used_is_said_and_left(
    tmp_path: Path, spoil: Callable[[Path], None], sentence: str, way_on: str
) -> None:
    """The file is byte for byte what it was, and nothing stands beside it but the note of the server."""
    file = tmp_path / "tankside.db"
    spoil(file)
    before = file.read_bytes()
    code, said = refused(tmp_path)
    assert 2 == code, said
    assert 1 == said.count("\n")
    assert f"{file} {sentence.partition(';')[0]}" in said
    assert sentence in said
    assert way_on in said
    assert before == file.read_bytes()
    assert {"tankside.db", "served-at"} == {one.name for one in tmp_path.iterdir()}


def test_a_folder_that_is_none_is_said(tmp_path: Path) -> None:
    """Where a file stands in the way of the folder, the way on is another folder."""
    (tmp_path / "kept").write_text("a file", encoding="utf-8")
    code, said = refused(tmp_path / "kept" / "here")
    assert 2 == code, said
    assert said.startswith(f"Nothing can be kept in {tmp_path / 'kept' / 'here'}: ")
    assert "Choose a folder on this machine with --data-folder FOLDER." in said


ON_A_NETWORK_DRIVE = """
import sys
from pathlib import Path
from tankside.__main__ import main
from tankside.machine import data_folder
data_folder.open_data_folder.__kwdefaults__["mounts"] = Path(sys.argv.pop(1))
main()
"""


def test_a_folder_on_a_network_drive_is_refused_untouched(tmp_path: Path) -> None:
    """With a table of mounts that says so, the kind of drive is named and no folder is made."""
    mounts, folder = tmp_path / "mounts", tmp_path / "films"
    mounts.write_text(f"nas:/films {tmp_path} nfs4 rw 0 0\n", encoding="utf-8")
    start = ["start", "--port", "0", "--no-open", "--data-folder", str(folder)]
    done = subprocess.run(
        [sys.executable, "-c", ON_A_NETWORK_DRIVE, str(mounts), *start],
        env=bare_surroundings(PYTHONPATH=str(SOURCE)),
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert 2 == done.returncode, done.stderr
    assert done.stderr.startswith(f"{folder} lies on a network drive (nfs4), where a database is not safe")
    assert "--data-folder FOLDER" in done.stderr
    assert not folder.exists()


def test_a_fast_clock_is_not_for_a_phone(tmp_path: Path) -> None:
    """Both options together are refused before anything is opened."""
    words = ["start", "--pace", "60", "--phone", "--data-folder", str(tmp_path / "kept")]
    told = CliRunner().invoke(command, words)
    assert (2, False) == (told.exit_code, (tmp_path / "kept").exists())
    assert "Start it without --pace." in told.stderr
