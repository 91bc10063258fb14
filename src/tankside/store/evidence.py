"""What the negatives said, in the database: nothing is written over, the latest counts."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from sqlalchemy import Row, Select, literal_column, select
from sqlalchemy.dialects.sqlite import insert

from tankside.core.review.evidence import NextMorning, NotAsked, Strips, TwoDensities
from tankside.store.connection import Database
from tankside.store.frozen_json import from_json, to_json
from tankside.store.tables.review import EVIDENCE
from tankside.workflows.records import KeptEvidence

KINDS: dict[str, type[NextMorning | TwoDensities | Strips | NotAsked]] = {
    "answers": NextMorning,
    "densities": TwoDensities,
    "strips": Strips,
    "not asked": NotAsked,
}
NAMES = {kind: name for name, kind in KINDS.items()}


class StoredEvidence:
    """What the negatives of each tankful said."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> tuple[KeptEvidence, ...]:
        """All of it, in the order it was noted."""
        return self._read(select(EVIDENCE))

    def of_run(self, run: UUID) -> tuple[KeptEvidence, ...]:
        """What was noted of one run, in order."""
        return self._read(select(EVIDENCE).where(EVIDENCE.c.run == run))

    def keep(self, evidence: KeptEvidence) -> None:
        """Write it down; kept twice under one key it changes nothing."""
        kind = type(evidence.said)
        new = insert(EVIDENCE).values(
            key=evidence.key,
            run=evidence.run,
            tankful=evidence.tankful,
            said=NAMES[kind],
            noted=evidence.noted,
            body=to_json(kind, evidence.said),
        )
        with self._database.writing() as connection:
            connection.execute(new.on_conflict_do_nothing())

    def _read(self, which: Select[Any]) -> tuple[KeptEvidence, ...]:
        with self._database.reading() as connection:
            found = connection.execute(which.order_by(EVIDENCE.c.noted, literal_column("rowid")))
            return tuple(_evidence(row) for row in found)


def _evidence(row: Row[Any]) -> KeptEvidence:
    return KeptEvidence(row.key, row.run, row.tankful, from_json(KINDS[row.said], row.body), row.noted)
