"""Answers to commands in the database, so that a command sent twice is carried out once."""

from __future__ import annotations

from dataclasses import asdict

from sqlalchemy import insert, select
from sqlalchemy.exc import IntegrityError

from tankside.store.connection import Database
from tankside.store.tables.run import ANSWERS
from tankside.workflows.records import Conflict, KeptAnswer


class StoredAnswers:
    """Answers by the id of their command."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def find(self, command: str) -> KeptAnswer | None:
        """The answer to that command, if it was ever given one."""
        with self._database.reading() as connection:
            row = connection.execute(select(ANSWERS).where(ANSWERS.c.command == command)).mappings()
            found = row.one_or_none()
        return None if found is None else KeptAnswer(**found)

    def keep(self, answer: KeptAnswer) -> None:
        """Write it down; raises `Conflict` where the command has one."""
        with self._database.writing() as connection:
            try:
                connection.execute(insert(ANSWERS).values(asdict(answer)))
            except IntegrityError as error:
                raise Conflict(answer.command) from error
