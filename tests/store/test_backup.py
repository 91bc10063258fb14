"""Backup and the way back: whole, checked, and never over what stands there."""

from __future__ import annotations

import json
import sqlite3
import zipfile
from dataclasses import replace
from hashlib import sha256
from pathlib import Path

import pytest
from evening import MADE, ROLLS, key

from tankside.core.refusals import Refused
from tankside.store.backup import back_up
from tankside.store.connection import Database
from tankside.store.desk import stored_desk
from tankside.store.restoring import restore
from tankside.store.schema import APPLICATION_ID, SCHEMA
from tankside.workflows.records import Photograph

PICTURE = b"\x89PNG invented"
SHOWN = Photograph(sha256(PICTURE).hexdigest(), "roll", key(1), "image/png", len(PICTURE), MADE)


@pytest.fixture
def filled(database: Database) -> Database:
    """A database with two rolls and a photograph."""
    desk = stored_desk(database)
    for roll in ROLLS:
        desk.rolls.add(roll, MADE)
    desk.photographs.keep(SHOWN, PICTURE)
    return database


def backed_up(database: Database, name: str = "backup.zip") -> Path:
    """The backup of a database that is still open."""
    folder = database.file.parent
    return back_up(database.file, folder / "photographs", folder / name, MADE).file


def test_a_backup_brings_everything_back(filled: Database, tmp_path: Path) -> None:
    """It should restore rolls and photographs into a folder where there is nothing."""
    backup = backed_up(filled)
    home = tmp_path / "another"
    home.mkdir()
    restored = restore(backup, home / "tankside.db", home / "photographs", MADE, aside=False)
    assert (1, None) == (restored.photographs, restored.moved_aside)
    database = Database(restored.file)
    desk = stored_desk(database)
    assert set(ROLLS) == set(desk.rolls.all())
    assert PICTURE == desk.photographs.picture(SHOWN.sha256)
    with pytest.raises(sqlite3.IntegrityError), sqlite3.connect(restored.file) as raw:
        raw.execute("INSERT INTO films VALUES ('a', 'square')")
    raw.close()
    database.close()


def test_a_backup_is_an_open_container(filled: Database) -> None:
    """It should be a zip that anybody opens, with a list of what is in it and a database that is ours."""
    with zipfile.ZipFile(backed_up(filled)) as archive:
        assert archive.testzip() is None
        assert {"backup.json", "tankside.db", f"photographs/{SHOWN.sha256}"} == set(archive.namelist())
        listing = json.loads(archive.read("backup.json"))
        content = archive.read("tankside.db")
    assert sha256(content).hexdigest() == listing["database"]["sha256"]
    assert APPLICATION_ID == int.from_bytes(content[68:72], "big")


def test_a_backup_is_taken_while_another_writes(filled: Database) -> None:
    """It should hold what was committed and not what is still open."""
    desk = stored_desk(filled)
    with desk.together():
        desk.preferences.keep("open", "yes")
        backup = backed_up(filled)
    with zipfile.ZipFile(backup) as archive:
        archive.extract("tankside.db", filled.file.parent / "out")
    with sqlite3.connect(filled.file.parent / "out" / "tankside.db") as copy:
        assert [(2,)] == copy.execute("SELECT count(*) FROM rolls").fetchall()
        assert [(0,)] == copy.execute("SELECT count(*) FROM preferences").fetchall()
    copy.close()


def test_a_backup_is_never_written_over_another(filled: Database) -> None:
    """It should refuse a name that is taken and leave that file and no other behind."""
    before = backed_up(filled).read_bytes()
    with pytest.raises(Refused, match="backup-exists"):
        backed_up(filled)
    assert before == (filled.file.parent / "backup.zip").read_bytes()
    assert not list(filled.file.parent.glob(".tankside-*"))


def test_what_stands_there_is_not_written_over(filled: Database) -> None:
    """It should refuse, or move the earlier database aside under a name that says when."""
    backup = backed_up(filled)
    desk = stored_desk(filled)
    desk.rolls.keep(replace(ROLLS[0], notes="after the backup"))
    folder = filled.file.parent
    filled.close()
    before = filled.file.read_bytes()
    with pytest.raises(Refused, match="restore-would-overwrite"):
        restore(backup, filled.file, folder / "photographs", MADE, aside=False)
    assert before == filled.file.read_bytes()
    restored = restore(backup, filled.file, folder / "photographs", MADE, aside=True)
    again = restore(backup, filled.file, folder / "photographs", MADE, aside=True)
    assert folder / "tankside-before-20261125-193000.db" == restored.moved_aside
    assert folder / "tankside-before-20261125-193000-1.db" == again.moved_aside
    assert before == restored.moved_aside.read_bytes()
    assert 0 == restored.photographs
    database = Database(filled.file)
    assert ROLLS[0] == stored_desk(database).rolls.by_key(ROLLS[0].key)
    database.close()


def spoilt(backup: Path, how: str) -> Path:
    """A backup with one thing wrong."""
    with zipfile.ZipFile(backup) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    listing = json.loads(parts["backup.json"])
    picture = f"photographs/{SHOWN.sha256}"
    match how:
        case "newer":
            listing["schema"] = SCHEMA + 1
        case "other hash":
            listing["database"]["sha256"] = "0" * 64
        case "other picture":
            parts[picture] = b"another"
        case "leads out":
            listing["photographs"] = ["../../evil"]
            parts["photographs/../../evil"] = b"evil"
        case "missing part":
            del parts["tankside.db"]
    parts["backup.json"] = json.dumps(listing).encode()
    made = backup.with_name("spoilt.zip")
    with zipfile.ZipFile(made, "w") as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    if how == "cut":
        made.write_bytes(backup.read_bytes()[:-400])
    return made


@pytest.mark.parametrize(
    ("how", "code"),
    [
        ("newer", "store-newer"),
        ("other hash", "backup-damaged"),
        ("other picture", "backup-damaged"),
        ("leads out", "backup-damaged"),
        ("missing part", "backup-damaged"),
        ("cut", "backup-damaged"),
    ],
)
def test_a_spoilt_backup_changes_nothing(filled: Database, tmp_path: Path, how: str, code: str) -> None:
    """It should refuse with one code and leave the folder as it was."""
    wrong = spoilt(backed_up(filled), how)
    home = tmp_path / "home" / "deep"
    home.mkdir(parents=True)
    with pytest.raises(Refused) as caught:
        restore(wrong, home / "tankside.db", home / "photographs", MADE, aside=True)
    assert code == caught.value.refusal.code
    assert [] == list(home.iterdir())
    assert [home] == list(home.parent.iterdir())


def test_a_folder_without_room_is_said(filled: Database, tmp_path: Path) -> None:
    """It should refuse a folder that is not there, nothing to back up, and no backup to restore."""
    with pytest.raises(Refused, match="backup-not-written"):
        back_up(filled.file, tmp_path / "photographs", tmp_path / "nowhere" / "b.zip", MADE)
    with pytest.raises(Refused, match="nothing-to-back-up"):
        back_up(tmp_path / "none.db", tmp_path / "photographs", tmp_path / "b.zip", MADE)
    with pytest.raises(Refused, match="no-such-backup"):
        restore(tmp_path / "none.zip", tmp_path / "t.db", tmp_path / "photographs", MADE, aside=False)
