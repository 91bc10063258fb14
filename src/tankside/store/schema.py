"""Whose file this is and which schema it holds; built fresh until the first release."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import Connection

from tankside.core.refusals import refuse
from tankside.store import append_only
from tankside.store.tables import METADATA

APPLICATION_ID = 0x7E4B51DE
SCHEMA = 1
HEADER = b"SQLite format 3\x00"

GUARDED = append_only.APPEND_ONLY
"""Named here so that whoever builds the schema has loaded the triggers."""


def look_at_header(file: Path) -> None:
    """Refuse a newer, foreign or damaged file by its first hundred bytes, before SQLite touches it."""
    if not file.exists() or file.stat().st_size == 0:
        return
    try:
        with file.open("rb") as stream:
            head = stream.read(100)
    except OSError as error:
        raise refuse("store-cannot-open", ways_on=("look-at-the-folder",), file=str(file)) from error
    if not head.startswith(HEADER) or len(head) < 100:
        raise refuse("store-damaged", ways_on=("restore-a-backup",), file=str(file))
    version, owner = int.from_bytes(head[60:64], "big"), int.from_bytes(head[68:72], "big")
    if owner not in (0, APPLICATION_ID):
        raise refuse("store-foreign", ways_on=("choose-another-file",), file=str(file))
    if owner == APPLICATION_ID and version > SCHEMA:
        raise refuse(
            "store-newer", ways_on=("update-the-program",), file=str(file), schema=version, known=SCHEMA
        )


def build_or_check(connection: Connection, file: Path) -> None:
    """Build every table in an empty file in the transaction of `connection`; refuse any other schema."""
    owner, version, tables = (
        connection.exec_driver_sql(question).scalar_one()
        for question in ("PRAGMA application_id", "PRAGMA user_version", "SELECT count(*) FROM sqlite_master")
    )
    if tables == 0:
        METADATA.create_all(connection)
        connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.exec_driver_sql(f"PRAGMA user_version = {SCHEMA}")
        return
    if owner != APPLICATION_ID:
        raise refuse("store-foreign", ways_on=("choose-another-file",), file=str(file))
    if version > SCHEMA:
        raise refuse(
            "store-newer", ways_on=("update-the-program",), file=str(file), schema=version, known=SCHEMA
        )
    if version < SCHEMA:
        raise refuse("store-older", ways_on=("start-afresh",), file=str(file), schema=version, known=SCHEMA)
