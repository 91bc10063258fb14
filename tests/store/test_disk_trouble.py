"""A disk that is full, read-only, damaged, busy or lying: one plain refusal, and nothing half written."""

from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from tankside.core.refusals import Refused
from tankside.store.connection import Database
from tankside.store.preferences import StoredPreferences

CHILD = Path(__file__).with_name("disk_child.py")


def child(case: str, file: Path) -> str:
    """What a child process reports of `case`: the codes of its refusals, one a line."""
    command = [sys.executable, str(CHILD), case, str(file)]
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))}
    done = subprocess.run(command, env=environment, capture_output=True, text=True, check=False, timeout=30)
    assert done.returncode == 0, done.stderr
    return done.stdout


def numbered(database: Database) -> list[int]:
    """The numbers kept so far, in order."""
    return sorted(map(int, StoredPreferences(database).all()))


def test_a_full_disk_is_said_and_leaves_whole_rows(database: Database) -> None:
    """It should refuse with 'disk-full', keep every row acknowledged before, and go on when there is room."""
    book = StoredPreferences(database)
    with database.writing() as connection:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar_one()
    with database._writer.connect() as connection:  # the limit holds for one connection only
        connection.exec_driver_sql(f"PRAGMA max_page_count = {pages + 3}")
    acknowledged: list[int] = []

    def fill() -> None:
        for number in range(100):
            book.keep(str(number), "x" * 2000)
            acknowledged.append(number)

    with pytest.raises(Refused, match="disk-full"):
        fill()
    assert acknowledged
    assert acknowledged == numbered(database)
    with database._writer.connect() as connection:
        connection.exec_driver_sql("PRAGMA max_page_count = 1000000")
    book.keep("1000", "room again")
    assert [*acknowledged, 1000] == numbered(database)


def test_a_file_that_may_not_grow_is_said(database: Database) -> None:
    """It should refuse with 'disk-write-failed' where the system stops the file at a size."""
    database.close()
    code, acknowledged = child("may-not-grow", database.file).split()
    assert "disk-write-failed" == code
    again = Database(database.file)
    assert list(range(int(acknowledged))) == numbered(again)
    again.close()


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that another user may look into."""
    with tempfile.TemporaryDirectory() as folder:
        Path(folder).chmod(0o755)
        yield Path(folder)


def test_a_read_only_file_is_looked_at_and_not_written(open_folder: Path) -> None:
    """It should open, show what is there, and refuse to write with 'store-read-only'."""
    file = open_folder / "tankside.db"
    database = Database(file)
    StoredPreferences(database).keep("1", "kept")
    database.close()
    file.chmod(0o444)
    open_folder.chmod(0o555)
    assert ["1", "store-read-only"] == child("read-only", file).split()
    open_folder.chmod(0o755)


def test_a_folder_that_may_not_be_written_is_said(open_folder: Path) -> None:
    """It should refuse to begin a database where no file can be made."""
    open_folder.chmod(0o555)
    assert ["store-cannot-open"] == child("no-room-to-begin", open_folder / "tankside.db").split()
    open_folder.chmod(0o755)


@pytest.mark.parametrize("damage", ["text", "short", "torn"])
def test_a_damaged_file_is_said_and_left_as_it_is(database: Database, damage: str) -> None:
    """It should refuse with 'store-damaged' and not make it worse."""
    for number in range(50):
        StoredPreferences(database).keep(str(number), "x" * 500)
    database.close()
    whole = database.file.read_bytes()
    torn = bytearray(whole)
    for page in range(2, len(whole) // 4096):
        torn[page * 4096 : page * 4096 + 200] = b"\xa5" * 200
    damaged = {"text": b"not a database, only words about one" * 9, "short": whole[:60], "torn": bytes(torn)}
    database.file.write_bytes(damaged[damage])
    with pytest.raises(Refused) as caught:
        Database(database.file)
    assert "store-damaged" == caught.value.refusal.code
    assert damaged[damage] == database.file.read_bytes()


def test_a_busy_file_is_said_after_waiting(database: Database) -> None:
    """It should refuse with 'store-busy' while another process writes, and write once that one is done."""
    command = [sys.executable, str(CHILD), "hold", str(database.file)]
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))}
    with subprocess.Popen(
        command, env=environment, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as holder:
        assert holder.stdin is not None
        assert holder.stdout is not None
        assert "holding\n" == holder.stdout.readline()
        with pytest.raises(Refused) as caught:
            StoredPreferences(database).keep("2", "mine")
        assert "store-busy" == caught.value.refusal.code
        holder.stdin.write("let go\n")
        holder.stdin.flush()
        assert "let go\n" == holder.stdout.readline()
        StoredPreferences(database).keep("2", "mine")
    assert [1, 2] == numbered(database)


def test_the_other_program_is_noticed(database: Database) -> None:
    """It should change its version when another connection commits, and only then."""
    before = database.version()
    assert before == database.version()
    with sqlite3.connect(database.file) as other:
        other.execute("INSERT INTO preferences VALUES ('1', 'theirs')")
    other.close()
    assert before != database.version()


def test_after_a_failed_sync_nothing_more_is_acknowledged(database: Database) -> None:
    """It should refuse every write until the file was opened again and verified, for a second sync lies."""
    book = StoredPreferences(database)
    book.keep("1", "before")
    failed = sqlite3.OperationalError("disk I/O error")
    failed.sqlite_errorname = "SQLITE_IOERR_FSYNC"

    def write_with_a_failing_sync() -> None:
        with database.writing():
            book.keep("2", "lost")
            raise failed

    with pytest.raises(Refused, match="disk-sync-failed"):
        write_with_a_failing_sync()
    with pytest.raises(Refused, match="disk-sync-failed"):
        book.keep("3", "refused")
    assert [1] == numbered(database)
    database.reopen()
    book.keep("4", "after")
    assert [1, 4] == numbered(database)
