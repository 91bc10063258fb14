"""Short codes: one may stand on one thing only, whatever its noun."""

from __future__ import annotations

from typing import Literal

from sqlalchemy import Connection, insert, select

from tankside.store.tables.desk import CODES
from tankside.workflows.records import CodeTaken

Coded = Literal["roll", "bottle", "tank", "sleeve"]


def take_code(connection: Connection, code: str, noun: Coded) -> None:
    """Take `code` for a thing of kind `noun`; raises `CodeTaken`."""
    if connection.execute(select(CODES.c.code).where(CODES.c.code == code)).first() is not None:
        raise CodeTaken(code)
    connection.execute(insert(CODES).values(code=code, noun=noun))
