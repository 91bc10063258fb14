"""From what the negatives of one or more tankfuls said to what the next one should do."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.combinations import TimeRow
from tankside.core.methods.known_time import known_time
from tankside.core.planning.plan import PlannedTankful
from tankside.core.refusals import Refused, refuse
from tankside.core.review.evidence import Evidence
from tankside.core.review.predicted import developed_of, together
from tankside.core.review.proposals import Developed, Proposal, propose_index, propose_time
from tankside.core.run.instants import Instant
from tankside.core.run.state import Run
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.read_journal import Which, run_of
from tankside.workflows.records import KeptProposal

NOTHING_TO_CORRECT = ("no-combination-judged", "no-time-at-index")


@dataclass(frozen=True, slots=True)
class Judged:
    """What a proposal is made about: the tankful judged last, its log, and the row of its time."""

    run: Run
    tankful: PlannedTankful
    developed: Developed
    row: TimeRow


def propose_correction(
    desk: Desk, dice: Dice, said: Evidence, of: Sequence[Which], now: Instant
) -> tuple[KeptProposal, ...]:
    """What to do about what `said` tells of the tankfuls `of`; asked again the same, it is the same proposal.

    What the log explains is never blamed on the time. A newer answer takes the place of older ones that
    nobody has taken yet.
    """
    judged = _judged(desk, of)
    moment, run, letter = moment_of(now), of[-1].run, of[-1].letter
    standing = [one for one in desk.proposals.all() if (one.run, one.tankful) == (run, letter)]
    made = tuple(_proposals(desk, judged, said))
    offered = [
        one for one in standing
        if one.standing == "offered" and not (one.proposal.what != "index" and _has_strip(desk, judged))
    ]  # fmt: skip
    if made and made == tuple(one.proposal for one in reversed(offered)):
        return tuple(reversed(offered))
    if made and all(any(one.proposal == new for one in standing) for new in made):
        return ()
    kept = tuple(
        KeptProposal(dice.key(), moment, one, run, judged.tankful.combination, judged.row.key, tankful=letter)
        for one in made
    )
    with desk.together():
        for one in offered:
            desk.proposals.keep(replace(one, standing="declined", decided=moment))
        for one in kept:
            desk.proposals.keep(one)
    return kept


def propose_if_it_can_be(
    desk: Desk, dice: Dice, said: Evidence, which: Which, now: Instant
) -> tuple[KeptProposal, ...]:
    """The same for one tankful; nothing where what it was developed by is not kept: answers always are."""
    try:
        return propose_correction(desk, dice, said, [which], now)
    except Refused as no:
        if no.refusal.code in NOTHING_TO_CORRECT:
            return ()
        raise


def _judged(desk: Desk, of: Sequence[Which]) -> Judged:
    """The tankfuls as one, held to one combination and index."""
    runs = [(run_of(desk, which), which.letter) for which in of]
    planned = [run.state.tankful(letter).plan for run, letter in runs]
    last = planned[-1]
    if any((one.combination, one.index) != (last.combination, last.index) for one in planned):
        raise refuse("not-one-combination", ways_on=("judge-apart",))
    combination = desk.combinations.by_key(last.combination) if last.combination else None
    if combination is None or last.index is None:
        raise refuse("no-combination-judged", ways_on=("look-at-the-journal",))
    developed = [developed_of(run.state, letter) or _unexplained(one) for (run, letter), one in
                 zip(runs, planned, strict=True)]  # fmt: skip
    known, judged = known_time(combination, last.index), together(developed)
    row = next((one for one in known.rows if one.temp_c == judged.rate.ref_c), known.row)
    return Judged(runs[-1][0], last, judged, row)


def _unexplained(planned: PlannedTankful) -> Developed:
    """A development whose log says nothing: its time stands in a table only, or nobody noted its end."""
    plan = planned.development
    nothing = Estimate(0.0, 0.0, 0.0, "%", "nothing noted")
    return Developed(
        plan.time_s.value, plan.rate.ref_c, nothing, plan.rate, plan.contrast,
        induction_s=plan.induction_s,
    )  # fmt: skip


def _proposals(desk: Desk, judged: Judged, said: Evidence) -> Iterator[Proposal]:
    """The time (or its temperature), unless it was corrected since; the index where shadows ask for it.

    A step strip says more of contrast than any answer: where the tankful has one, its own proposal stands.
    """
    seen, developed = said.contrast_percent, judged.developed
    if not _corrected_since(desk, judged) and not _has_strip(desk, judged):
        yield propose_time(seen, developed)
    index = judged.tankful.index
    if index is not None:
        other = propose_index(said.stops_over, index=index, seen=seen, explained=developed.explained_percent)
        if other is not None:
            yield other


def _has_strip(desk: Desk, judged: Judged) -> bool:
    """Whether a step strip was developed with the tankful that is judged."""
    which = (judged.run.key, judged.tankful.letter)
    return any((one.run, one.tankful) == which and not one.control for one in desk.step_strips.all())


def _corrected_since(desk: Desk, judged: Judged) -> bool:
    """Whether the time was corrected after this run was opened: then the next run is the one to judge."""
    opened_us = judged.run.state.opened.at_us
    return any(
        one.standing == "accepted"
        and one.proposal.what == "time"
        and one.combination == judged.tankful.combination
        and one.decided is not None
        and one.decided.timestamp() * 1e6 > opened_us
        for one in desk.proposals.all()
    )
