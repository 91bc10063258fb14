"""Answers to commands in the database, so that a command sent twice is carried out once."""

from __future__ import annotations

import json
from typing import Any

from sqlalchemy import Row, insert, select

from tankside.core.refusals import Refusal
from tankside.core.run.decide.drafts import Answer
from tankside.store.conflicts import conflict_if_taken
from tankside.store.connection import Database
from tankside.store.tables.run import ANSWERS
from tankside.workflows.records import KeptAnswer


class StoredAnswers:
    """Answers by the id of their command."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def find(self, command: str) -> KeptAnswer | None:
        """The answer to that command, if it was ever given one."""
        with self._database.reading() as connection:
            row = connection.execute(select(ANSWERS).where(ANSWERS.c.command == command)).one_or_none()
        return None if row is None else _answer(row)

    def keep(self, answer: KeptAnswer) -> None:
        """Write it down; raises `Conflict` where the command has one."""
        row = {
            "command": answer.command,
            "run": answer.run,
            "from_seq": answer.from_seq,
            "to_seq": answer.to_seq,
            "answer": said_to_json(answer.said),
        }
        with self._database.writing() as connection, conflict_if_taken(answer.command):
            connection.execute(insert(ANSWERS).values(row))


def said_to_json(said: Answer | Refusal) -> str:
    """An answer or a refusal as one line of JSON, told apart by its kind."""
    numbers = dict(said.numbers)
    if isinstance(said, Answer):
        told: dict[str, Any] = {"kind": "answer", "about": said.about, "at_us": said.at_us}
    else:
        told = {"kind": "refusal", "at": said.at, "ways_on": list(said.ways_on)}
    return json.dumps({**told, "code": said.code, "numbers": numbers}, allow_nan=False)


def said_from_json(text: str) -> Answer | Refusal:
    """What `said_to_json` wrote."""
    told = json.loads(text)
    is_answer, code, numbers = told["kind"] == "answer", told["code"], told["numbers"]
    if is_answer:
        return Answer(code, told["about"], told["at_us"], numbers)
    return Refusal(code, numbers, told["at"], tuple(told["ways_on"]))


def _answer(row: Row[Any]) -> KeptAnswer:
    return KeptAnswer(row.command, row.run, said_from_json(row.answer), row.from_seq, row.to_seq)
