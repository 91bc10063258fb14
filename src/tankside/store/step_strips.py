"""Step tablets and step strips in the database; a strip is never written over, a newer row replaces it."""

from __future__ import annotations

from uuid import UUID

from sqlalchemy import literal_column, select
from sqlalchemy.dialects.sqlite import insert

from tankside.core.methods.step_strips import StepStrip, Tablet
from tankside.store.conflicts import conflict_if_taken
from tankside.store.connection import Database
from tankside.store.frozen_json import from_json, to_json
from tankside.store.tables.review import STEP_STRIPS, TABLETS


class StoredTablets:
    """Step tablets of one's own."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> tuple[Tablet, ...]:
        """All of them, by name."""
        with self._database.reading() as connection:
            found = connection.execute(select(TABLETS).order_by(TABLETS.c.name, TABLETS.c.key))
            return tuple(from_json(Tablet, row.body) for row in found)

    def by_key(self, key: UUID) -> Tablet | None:
        """The one under `key`."""
        with self._database.reading() as connection:
            row = connection.execute(select(TABLETS).where(TABLETS.c.key == key)).one_or_none()
        return None if row is None else from_json(Tablet, row.body)

    def keep(self, thing: Tablet) -> None:
        """Write it down, new or changed."""
        told = {"name": thing.name, "body": to_json(Tablet, thing)}
        new = insert(TABLETS).values(key=thing.key, **told)
        with self._database.writing() as connection:
            connection.execute(new.on_conflict_do_update(["key"], set_=told))


class StoredStepStrips:
    """Step strips as they were read."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> tuple[StepStrip, ...]:
        """All of them, replaced ones too, in the order they were noted."""
        found = select(STEP_STRIPS).order_by(STEP_STRIPS.c.noted, literal_column("rowid"))
        with self._database.reading() as connection:
            return tuple(from_json(StepStrip, row.body) for row in connection.execute(found))

    def by_key(self, key: UUID) -> StepStrip | None:
        """The one under `key`."""
        with self._database.reading() as connection:
            row = connection.execute(select(STEP_STRIPS).where(STEP_STRIPS.c.key == key)).one_or_none()
        return None if row is None else from_json(StepStrip, row.body)

    def add(self, strip: StepStrip) -> None:
        """Add one; raises `Conflict` where its key is taken, or the one it replaces is replaced already."""
        new = insert(STEP_STRIPS).values(
            key=strip.key,
            combination=strip.combination,
            run=strip.run,
            tankful=strip.tankful,
            noted=strip.noted,
            replaces=strip.replaces,
            body=to_json(StepStrip, strip),
        )
        with conflict_if_taken(f"step strip {strip.key}"), self._database.writing() as connection:
            connection.execute(new)
