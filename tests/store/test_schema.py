"""The schema as the database itself holds it."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest
from sqlalchemy import CheckConstraint

from tankside.core.refusals import Refused
from tankside.store.append_only import APPEND_ONLY
from tankside.store.connection import Database
from tankside.store.schema import APPLICATION_ID, SCHEMA
from tankside.store.tables import METADATA

SNAPSHOT = Path(__file__).with_name("schema.sql")


def definitions(file: Path) -> str:
    """Every table, index and trigger of a database file, in order of name."""
    with sqlite3.connect(file) as connection:
        rows = connection.execute("SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY type, name")
        lines = (line.rstrip() for (sql,) in rows for line in f"{sql.strip()};\n".splitlines())
        text = "\n".join(lines) + "\n"
    connection.close()
    return text


def test_a_fresh_schema_is_the_one_that_was_agreed(database: Database) -> None:
    """It should match schema.sql; where a change is meant, that file changes with it."""
    assert SNAPSHOT.read_text() == definitions(database.file)


def test_every_table_is_strict_and_every_check_has_a_name() -> None:
    """It should leave no table lax and no CHECK that a migration would drop without a word."""
    for table in METADATA.tables.values():
        assert table.dialect_options["sqlite"]["strict"], table.name
        checks = [one for one in table.constraints if isinstance(one, CheckConstraint)]
        assert all(one.name for one in checks), table.name


def test_the_file_says_whose_it_is(database: Database) -> None:
    """It should carry our application id and schema number, and a journal that suits the library."""
    with sqlite3.connect(database.file) as connection:
        assert APPLICATION_ID == connection.execute("PRAGMA application_id").fetchone()[0]
        assert SCHEMA == connection.execute("PRAGMA user_version").fetchone()[0]
        expected = "wal" if sqlite3.sqlite_version_info >= (3, 51, 3) else "delete"
        assert expected == connection.execute("PRAGMA journal_mode").fetchone()[0]
    connection.close()


def test_every_commit_is_synced_in_full(database: Database) -> None:
    """It should write with synchronous FULL (2) and with foreign keys on."""
    with database.writing() as connection:
        assert 2 == connection.exec_driver_sql("PRAGMA synchronous").scalar_one()
        assert 1 == connection.exec_driver_sql("PRAGMA foreign_keys").scalar_one()


FILLED = {
    "run_log": (
        "INSERT INTO run_log VALUES ('r', 1, 'd:1/1', 'note-written', 1, NULL, 1, 1, 'b', 1, 1, 'b', 'd', "
        "'tapped', 1.0, '{}')"
    ),
    "ledger": (
        "INSERT INTO ledger VALUES ('k', 'K7M4-T', 'mixed', 1, 0, 0, '', '', NULL, NULL, NULL, 'e', 0, 0, 1)"
    ),
    "step_strips": "INSERT INTO step_strips VALUES ('k', 'c', NULL, NULL, 1, NULL, '{}')",
    "time_rows": (
        "INSERT INTO time_rows VALUES ('k', 'c', 570.0, 20.0, 125.0, 'own', '', '2026-11-25', NULL, NULL)"
    ),
}


@pytest.mark.parametrize("table", [table.name for table in APPEND_ONLY])
@pytest.mark.parametrize(
    "act", ["UPDATE {0} SET rowid = 9", "DELETE FROM {0}", "REPLACE INTO {0} SELECT * FROM {0}"]
)
def test_what_is_append_only_stays(database: Database, table: str, act: str) -> None:
    """It should stop any change, deletion or replacement of a row in the database itself."""
    raw = sqlite3.connect(database.file)
    raw.execute("PRAGMA recursive_triggers = ON")
    raw.execute(FILLED[table])
    raw.commit()
    before = raw.execute(f"SELECT * FROM {table}").fetchall()
    with pytest.raises(sqlite3.IntegrityError, match=f"{table} is append-only"):
        raw.execute(act.format(table))
    raw.rollback()
    assert 1 == len(before)
    assert before == raw.execute(f"SELECT * FROM {table}").fetchall()
    raw.close()


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ("INSERT INTO films VALUES ('a', 'square')", "films_grain_known"),
        ("INSERT INTO preferences VALUES ('a', NULL)", "NOT NULL"),
        ("INSERT INTO samples VALUES ('r', 'p', 'soon', 20.0)", "cannot store TEXT value in INTEGER"),
        ("INSERT INTO samples VALUES ('r', 'p', 1, 'warm')", "cannot store TEXT value in REAL"),
        ("INSERT INTO plans VALUES ('k', 1, 1, '{half')", "plans_body_json"),
        ("INSERT INTO answers VALUES ('d:1', 'r', 1, NULL, '{}')", "answers_seqs_together"),
    ],
)
def test_a_wrong_value_is_stopped_by_the_table(database: Database, wrong: str, said: str) -> None:
    """It should refuse a value of another kind, outside its list or half written."""
    raw = sqlite3.connect(database.file)
    with pytest.raises(sqlite3.IntegrityError, match=said):
        raw.execute(wrong)
    raw.close()


def marked(file: Path, pragma: str) -> None:
    """Write one pragma into a database file, past the program."""
    with sqlite3.connect(file) as connection:
        connection.execute(f"PRAGMA {pragma}")
    connection.close()


def test_a_newer_database_is_left_untouched(database: Database) -> None:
    """It should refuse with both numbers, change no byte and leave no other file behind."""
    database.close()
    marked(database.file, f"user_version = {SCHEMA + 1}")
    before = database.file.read_bytes()
    with pytest.raises(Refused) as caught:
        Database(database.file)
    assert ("store-newer", SCHEMA + 1, SCHEMA) == (
        caught.value.refusal.code,
        caught.value.refusal.numbers["schema"],
        caught.value.refusal.numbers["known"],
    )
    assert before == database.file.read_bytes()
    assert [database.file] == list(database.file.parent.iterdir())


def test_a_database_of_another_program_is_left_untouched(tmp_path: Path) -> None:
    """It should refuse a file with another application id, and one with tables but none of ours."""
    file = tmp_path / "other.db"
    marked(file, "application_id = 77")
    with pytest.raises(Refused, match="store-foreign"):
        Database(file)
    file.unlink()
    with sqlite3.connect(file) as connection:
        connection.execute("CREATE TABLE things (name TEXT)")
    connection.close()
    before = file.read_bytes()
    with pytest.raises(Refused, match="store-foreign"):
        Database(file)
    assert before == file.read_bytes()


def test_a_second_opening_finds_what_the_first_kept(database: Database) -> None:
    """It should build once and only look the second time."""
    with database.writing() as connection:
        connection.exec_driver_sql("INSERT INTO preferences VALUES ('a', 'b')")
    database.close()
    again = Database(database.file)
    with again.reading() as connection:
        assert "b" == connection.exec_driver_sql("SELECT value FROM preferences").scalar_one()
    again.close()
