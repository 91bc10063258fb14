"""Preferences of the household in the database."""

from __future__ import annotations

from collections.abc import Mapping

from sqlalchemy import select
from sqlalchemy.dialects.sqlite import insert

from tankside.store.connection import Database
from tankside.store.tables.desk import PREFERENCES


class StoredPreferences:
    """Texts by name."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> Mapping[str, str]:
        """All that were ever chosen."""
        with self._database.reading() as connection:
            found = connection.execute(select(PREFERENCES).order_by(PREFERENCES.c.name))
            return {row.name: row.value for row in found}

    def keep(self, name: str, value: str) -> None:
        """Choose."""
        new = insert(PREFERENCES).values(name=name, value=value)
        with self._database.writing() as connection:
            connection.execute(new.on_conflict_do_update(["name"], set_={"value": value}))
