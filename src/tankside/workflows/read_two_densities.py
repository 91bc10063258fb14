"""Two densities read on the negatives, a shadow and a highlight, and what they ask of the next roll."""

from __future__ import annotations

from tankside.core.review.evidence import TwoDensities
from tankside.core.run.instants import Instant
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.propose_correction import propose_if_it_can_be
from tankside.workflows.read_journal import Which
from tankside.workflows.records import KeptEvidence, KeptProposal


def read_two_densities(
    desk: Desk, dice: Dice, which: Which, read: TwoDensities, now: Instant
) -> tuple[KeptProposal, ...]:
    """Keep the two densities and say whether time, temperature or exposure is to blame."""
    with desk.together():
        proposed = propose_if_it_can_be(desk, dice, read, which, now)
        desk.evidence.keep(KeptEvidence(dice.key(), which.run, which.letter, read, moment_of(now)))
    return proposed
