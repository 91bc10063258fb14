"""Proposals of reviews in the database; what was offered is kept beside what was decided."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from sqlalchemy import Row, literal_column, select
from sqlalchemy.dialects.sqlite import insert

from tankside.core.review.proposals import Proposal
from tankside.store.connection import Database
from tankside.store.frozen_json import from_json, to_json
from tankside.store.tables.rolls import PROPOSALS
from tankside.workflows.records import KeptProposal


class StoredProposals:
    """Proposals, offered, accepted or declined."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> tuple[KeptProposal, ...]:
        """All of them, the latest first."""
        found = select(PROPOSALS).order_by(PROPOSALS.c.made.desc(), literal_column("rowid"))
        with self._database.reading() as connection:
            return tuple(_proposal(row) for row in connection.execute(found))

    def by_key(self, key: UUID) -> KeptProposal | None:
        """The one under `key`."""
        with self._database.reading() as connection:
            row = connection.execute(select(PROPOSALS).where(PROPOSALS.c.key == key)).one_or_none()
        return None if row is None else _proposal(row)

    def keep(self, proposal: KeptProposal) -> None:
        """Write it down, offered or answered; what it offered never changes."""
        answered = {"standing": proposal.standing, "decided": proposal.decided}
        new = insert(PROPOSALS).values(
            key=proposal.key,
            made=proposal.made,
            run=proposal.run,
            combination=proposal.combination,
            old_row=proposal.old_row,
            tankful=proposal.tankful,
            body=to_json(Proposal, proposal.proposal),
            **answered,
        )
        with self._database.writing() as connection:
            connection.execute(new.on_conflict_do_update(["key"], set_=answered))


def _proposal(row: Row[Any]) -> KeptProposal:
    return KeptProposal(
        key=row.key,
        made=row.made,
        proposal=from_json(Proposal, row.body),
        run=row.run,
        combination=row.combination,
        old_row=row.old_row,
        standing=row.standing,
        decided=row.decided,
        tankful=row.tankful,
    )
