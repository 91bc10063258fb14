"""Batches and bottles in the database; what is in a bottle is the ledger's to say."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any
from uuid import UUID

from sqlalchemy import Row, insert, select, update

from tankside.core.shelf.bottles import Batch, Bottle
from tankside.core.solutions.keeping import by_leaflet
from tankside.store.codes import take_code
from tankside.store.connection import Database
from tankside.store.tables.shelf import BATCHES, BOTTLES


class StoredBatches:
    """Mixed lots."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> tuple[Batch, ...]:
        """All of them, the latest first."""
        with self._database.reading() as connection:
            found = connection.execute(select(BATCHES).order_by(BATCHES.c.made.desc(), BATCHES.c.name))
            return tuple(map(_batch, found))

    def by_key(self, key: UUID) -> Batch | None:
        """The one under `key`."""
        with self._database.reading() as connection:
            row = connection.execute(select(BATCHES).where(BATCHES.c.key == key)).one_or_none()
        return None if row is None else _batch(row)

    def add(self, batch: Batch) -> None:
        """Add a batch; what it is never changes."""
        with self._database.writing() as connection:
            connection.execute(insert(BATCHES).values(**_columns(batch), **_typed(batch)))

    def keep(self, batch: Batch) -> None:
        """Write over how long a known batch keeps and what it cost."""
        with self._database.writing() as connection:
            found = connection.execute(
                update(BATCHES).where(BATCHES.c.key == batch.key).values(_typed(batch))
            )
            if found.rowcount != 1:
                raise KeyError(batch.key)


class StoredBottles:
    """Bottles by their code."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> tuple[Bottle, ...]:
        """All of them, by code."""
        with self._database.reading() as connection:
            return tuple(map(_bottle, connection.execute(select(BOTTLES).order_by(BOTTLES.c.code))))

    def by_code(self, code: str) -> Bottle | None:
        """The one with that code."""
        with self._database.reading() as connection:
            row = connection.execute(select(BOTTLES).where(BOTTLES.c.code == code)).one_or_none()
        return None if row is None else _bottle(row)

    def add(self, bottle: Bottle) -> None:
        """Add a bottle of a known batch; raises `CodeTaken`."""
        with self._database.writing() as connection:
            take_code(connection, bottle.code, "bottle")
            connection.execute(insert(BOTTLES).values(asdict(bottle)))

    def keep(self, bottle: Bottle) -> None:
        """Write over all but the code of a known bottle."""
        changed = {name: value for name, value in asdict(bottle).items() if name not in ("key", "code")}
        with self._database.writing() as connection:
            found = connection.execute(update(BOTTLES).where(BOTTLES.c.key == bottle.key).values(changed))
            if found.rowcount != 1:
                raise KeyError(bottle.key)


def _columns(batch: Batch) -> dict[str, Any]:
    """What a batch is."""
    return {name: value for name, value in asdict(batch).items() if name not in ("keeping", "price_minor")}


def _typed(batch: Batch) -> dict[str, Any]:
    """What its owner has typed of it."""
    keeping = batch.keeping
    return {
        "keeps_full_months": keeping.full_months if keeping else None,
        "keeps_part_months": keeping.part_full_months if keeping else None,
        "price_minor": batch.price_minor,
    }


def _batch(row: Row[Any]) -> Batch:
    values = dict(row._mapping)
    full, part = values.pop("keeps_full_months"), values.pop("keeps_part_months")
    return Batch(**values, keeping=None if full is None else by_leaflet(full, part))


def _bottle(row: Row[Any]) -> Bottle:
    return Bottle(**row._mapping)
