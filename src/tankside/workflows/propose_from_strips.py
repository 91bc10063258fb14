"""From all step strips of one combination to what its next roll should do; they take the place of answers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from uuid import UUID

from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import Refused, refuse
from tankside.core.review.predicted import together
from tankside.core.review.proposals import Developed, Proposal, propose_time
from tankside.core.review.strips import as_in_use
from tankside.core.run.instants import Instant
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.read_densities import InUse, ReadCombination, ReadStrip, read_combination
from tankside.workflows.records import KeptProposal

NOT_YET = ("no-strip-to-judge", "no-time-known", "contrast-out-of-range")
"""Why strips alone may not be enough for a proposal; they are kept all the same."""


def propose_from_strips(desk: Desk, dice: Dice, combination: UUID, now: Instant) -> tuple[KeptProposal, ...]:
    """What to do about what the strips tell of the time in use; asked again, it is the same proposal.

    What the logs explain by warmth and lateness is never blamed on the time. What was offered for this
    combination before and nobody has taken is left.
    """
    read = read_combination(desk, combination)
    made = what_strips_propose(read)
    assert read.in_use is not None
    standing = [
        one for one in desk.proposals.all() if one.combination == combination and _of_time(one.proposal)
    ]
    offered = [one for one in standing if one.standing == "offered"]
    if [made] == [one.proposal for one in offered]:
        return tuple(offered)
    if any(one.proposal == made for one in standing):
        return ()
    last = next((one.strip for one in _by_noted(read.strips)[::-1] if one.strip.run is not None), None)
    kept = KeptProposal(
        dice.key(), moment_of(now), made, last.run if last else None, combination, read.in_use.row.key,
        tankful=last.tankful if last else None,
    )  # fmt: skip
    with desk.together():
        for one in offered:
            desk.proposals.keep(replace(one, standing="declined", decided=kept.made))
        desk.proposals.keep(kept)
    return (kept,)


def propose_if_strips_can(
    desk: Desk, dice: Dice, combination: UUID, now: Instant
) -> tuple[KeptProposal, ...]:
    """The same; nothing where no time is known or no strip has a contrast."""
    try:
        return propose_from_strips(desk, dice, combination, now)
    except Refused as no:
        if no.refusal.code in NOT_YET:
            return ()
        raise


def what_strips_propose(read: ReadCombination) -> Proposal:
    """The proposal that the strips of a combination make about its time in use."""
    if read.in_use is None:
        raise refuse("no-time-known", ways_on=("enter-a-time",))
    if read.belief is None or not read.judged:
        raise refuse("no-strip-to-judge", ways_on=("read-a-strip",))
    judged = [one for one in read.strips if one.judged is not None]
    said = as_in_use(read.in_use.aimed, read.judged, read.belief)
    return propose_time(said.contrast_percent, _developed(judged, read.in_use))


def _developed(strips: Sequence[ReadStrip], in_use: InUse) -> Developed:
    """The developments of all strips as one, held against the time in use."""
    each = [one.had.developed or _unlogged(one, in_use) for one in strips]
    logged = [one.had.mean_c for one in strips if one.had.developed is not None]
    mean_c = sum(logged) / len(logged) if logged else in_use.row.temp_c
    aimed = in_use.aimed
    return replace(
        together(each), aimed_s=aimed.time_s, mean_c=mean_c, rate=in_use.rate, contrast=aimed.contrast
    )


def _unlogged(strip: ReadStrip, in_use: InUse) -> Developed:
    """A development of which only time and temperature were told: both are in the time that counted."""
    nothing = Estimate(0.0, 0.0, 0.0, "%", "time and temperature as told")
    return Developed(strip.had.aimed_s, strip.had.ref_c, nothing, in_use.rate)


def _of_time(one: Proposal) -> bool:
    """Whether it is about the time, or says that nothing is to be done to it."""
    return one.what != "index"


def _by_noted(strips: Sequence[ReadStrip]) -> list[ReadStrip]:
    return sorted(strips, key=lambda one: one.strip.noted)
