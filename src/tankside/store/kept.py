"""Things with a key that may be written over, one column to a field: tanks, thermometers, places."""

from __future__ import annotations

from dataclasses import asdict
from typing import Generic, TypeVar
from uuid import UUID

from sqlalchemy import Table, select
from sqlalchemy.dialects.sqlite import insert

from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.store.connection import Database
from tankside.store.tables.shelf import PLACES, TANKS, THERMOMETERS

Thing = TypeVar("Thing", bound=Tank | Thermometer | Place)


class StoredThings(Generic[Thing]):
    """One table of one kind of thing whose columns are its fields."""

    def __init__(self, database: Database, table: Table, kind: type[Thing]) -> None:
        self._database = database
        self._table = table
        self._kind = kind

    def all(self) -> tuple[Thing, ...]:
        """All of them, by name."""
        with self._database.reading() as connection:
            found = connection.execute(select(self._table).order_by(self._table.c.name, self._table.c.key))
            return tuple(self._kind(**row) for row in found.mappings())

    def by_key(self, key: UUID) -> Thing | None:
        """The one under `key`."""
        with self._database.reading() as connection:
            found = connection.execute(select(self._table).where(self._table.c.key == key))
            row = found.mappings().one_or_none()
        return None if row is None else self._kind(**row)

    def keep(self, thing: Thing) -> None:
        """Write it down, new or changed."""
        values = asdict(thing)
        with self._database.writing() as connection:
            new = insert(self._table).values(values)
            connection.execute(new.on_conflict_do_update(["key"], set_=values))


def tanks(database: Database) -> StoredThings[Tank]:
    """The tanks."""
    return StoredThings(database, TANKS, Tank)


def thermometers(database: Database) -> StoredThings[Thermometer]:
    """The thermometers."""
    return StoredThings(database, THERMOMETERS, Thermometer)


def places(database: Database) -> StoredThings[Place]:
    """The places one works in."""
    return StoredThings(database, PLACES, Place)
