"""Films in the database."""

from __future__ import annotations

from sqlalchemy import select
from sqlalchemy.dialects.sqlite import insert

from tankside.core.rolls.roll import Film
from tankside.store.connection import Database
from tankside.store.tables.rolls import FILMS


class StoredFilms:
    """Kinds of film by name."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> tuple[Film, ...]:
        """All of them, by name."""
        with self._database.reading() as connection:
            return tuple(Film(*row) for row in connection.execute(select(FILMS).order_by(FILMS.c.name)))

    def called(self, name: str) -> Film | None:
        """The one of that name."""
        with self._database.reading() as connection:
            row = connection.execute(select(FILMS).where(FILMS.c.name == name)).one_or_none()
        return None if row is None else Film(*row)

    def keep(self, film: Film) -> None:
        """Write it down, new or changed."""
        new = insert(FILMS).values(name=film.name, grain=film.grain)
        with self._database.writing() as connection:
            connection.execute(new.on_conflict_do_update(["name"], set_={"grain": film.grain}))
