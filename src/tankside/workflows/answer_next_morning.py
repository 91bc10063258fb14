"""Next morning: two three-way answers and one photograph, each of which may be left out for ever."""

from __future__ import annotations

from hashlib import sha256

from tankside.core.review.evidence import NextMorning, NotAsked
from tankside.core.run.instants import Instant
from tankside.workflows.moments import moment_of
from tankside.workflows.photograph_tags import without_tags
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.propose_correction import propose_if_it_can_be
from tankside.workflows.read_journal import Which, noun_of, run_of
from tankside.workflows.records import KeptEvidence, KeptProposal, Photograph


def answer_next_morning(
    desk: Desk, dice: Dice, which: Which, answers: NextMorning, now: Instant
) -> tuple[KeptProposal, ...]:
    """Keep how shadows and contrast came out, and say what that asks of the next roll."""
    with desk.together():
        proposed = propose_if_it_can_be(desk, dice, answers, which, now)
        desk.evidence.keep(KeptEvidence(dice.key(), which.run, which.letter, answers, moment_of(now)))
    return proposed


def do_not_ask(desk: Desk, dice: Dice, which: Which, now: Instant) -> None:
    """Never ask about this tankful again."""
    run_of(desk, which)
    desk.evidence.keep(KeptEvidence(dice.key(), which.run, which.letter, NotAsked(), moment_of(now)))


def keep_photograph(desk: Desk, which: Which, picture: bytes, now: Instant) -> Photograph:
    """Keep a photograph of the negatives of a tankful, without what it tells of place and device."""
    run_of(desk, which)
    media, clean = without_tags(picture)
    kept = Photograph(
        sha256(clean).hexdigest(),
        noun_of(which.letter),
        which.run,
        media,
        len(clean),
        moment_of(now),
        "negatives",
    )
    desk.photographs.keep(kept, clean)
    return kept
