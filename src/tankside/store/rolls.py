"""Rolls in the database."""

from __future__ import annotations

from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import ColumnElement, Row, Select, insert, select, update

from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film, Roll
from tankside.store.codes import take_code
from tankside.store.connection import Database
from tankside.store.films import StoredFilms
from tankside.store.tables.rolls import FILMS, ROLLS


def _row(roll: Roll) -> dict[str, Any]:
    return {
        "film": roll.film.name,
        "format": roll.format.kind,
        "length_m": roll.format.length_m,
        "sheets": roll.format.sheets,
        "exposure_index": roll.index,
        "camera": roll.camera,
        "owner": roll.owner,
        "precious": roll.precious,
        "piece_of": roll.piece_of,
        "exposed": roll.exposed,
        "notes": roll.notes,
        "standing": roll.standing,
    }


def _roll(row: Row[Any]) -> Roll:
    return Roll(
        key=row.key,
        code=row.code,
        film=Film(row.film, row.grain),
        format=Format(row.format, row.length_m, row.sheets),
        index=row.exposure_index,
        camera=row.camera,
        owner=row.owner,
        precious=row.precious,
        piece_of=row.piece_of,
        exposed=row.exposed,
        notes=row.notes,
        standing=row.standing,
    )


def _with_grain() -> Select[Any]:
    return select(ROLLS, FILMS.c.grain).join(FILMS).order_by(ROLLS.c.added.desc(), ROLLS.c.code)


class StoredRolls:
    """Exposed rolls, each with its film."""

    def __init__(self, database: Database) -> None:
        self._database = database
        self._films = StoredFilms(database)

    def all(self) -> tuple[Roll, ...]:
        """All of them, the latest first."""
        with self._database.reading() as connection:
            return tuple(_roll(row) for row in connection.execute(_with_grain()))

    def by_key(self, key: UUID) -> Roll | None:
        """The one under `key`."""
        return self._one(ROLLS.c.key == key)

    def by_code(self, code: str) -> Roll | None:
        """The one with `code` on its sticker."""
        return self._one(ROLLS.c.code == code)

    def _one(self, which: ColumnElement[bool]) -> Roll | None:
        with self._database.reading() as connection:
            row = connection.execute(_with_grain().where(which)).one_or_none()
        return None if row is None else _roll(row)

    def add(self, roll: Roll, added: datetime) -> None:
        """Add a roll and its film; raises `CodeTaken`."""
        with self._database.writing() as connection:
            take_code(connection, roll.code, "roll")
            self._films.keep(roll.film)
            connection.execute(insert(ROLLS).values(key=roll.key, code=roll.code, added=added, **_row(roll)))

    def keep(self, roll: Roll) -> None:
        """Write over all but the code of a known roll."""
        with self._database.writing() as connection:
            self._films.keep(roll.film)
            found = connection.execute(update(ROLLS).where(ROLLS.c.key == roll.key).values(**_row(roll)))
            if found.rowcount != 1:
                raise KeyError(roll.key)
