"""All adapters of one database, joined to the desk that the workflows know."""

from __future__ import annotations

from tankside.store.answers import StoredAnswers
from tankside.store.bottles import StoredBatches, StoredBottles
from tankside.store.combinations import StoredCombinations
from tankside.store.connection import Database
from tankside.store.evidence import StoredEvidence
from tankside.store.films import StoredFilms
from tankside.store.kept import places, tanks, thermometers
from tankside.store.ledger import StoredLedger
from tankside.store.photographs import StoredPhotographs, photographs_beside
from tankside.store.plans import StoredPlans
from tankside.store.preferences import StoredPreferences
from tankside.store.proposals import StoredProposals
from tankside.store.rolls import StoredRolls
from tankside.store.run_log import StoredRunLog
from tankside.store.step_strips import StoredStepStrips, StoredTablets
from tankside.workflows.ports import Desk


def stored_desk(database: Database) -> Desk:
    """The desk over `database`, photographs in a folder beside its file."""
    return Desk(
        kept_at=str(database.file.parent),
        together=database.writing,
        films=StoredFilms(database),
        rolls=StoredRolls(database),
        combinations=StoredCombinations(database),
        plans=StoredPlans(database),
        batches=StoredBatches(database),
        bottles=StoredBottles(database),
        run_log=StoredRunLog(database),
        ledger=StoredLedger(database),
        answers=StoredAnswers(database),
        tanks=tanks(database),
        thermometers=thermometers(database),
        places=places(database),
        proposals=StoredProposals(database),
        evidence=StoredEvidence(database),
        tablets=StoredTablets(database),
        step_strips=StoredStepStrips(database),
        photographs=StoredPhotographs(database, photographs_beside(database.file)),
        preferences=StoredPreferences(database),
    )
