"""A proposal taken or left: what is taken becomes a new row beside the old one, and the next plan uses it."""

from __future__ import annotations

from dataclasses import replace
from uuid import UUID

from tankside.core.methods.combinations import Combination, TimeRow
from tankside.core.methods.known_time import rows_in_use
from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.records import KeptProposal


def accept_correction(desk: Desk, dice: Dice, key: UUID, now: Instant) -> KeptProposal:
    """Take a proposal, all of it or nothing; taken twice it is taken once.

    A time becomes a row that replaces the old one, which is kept. An index becomes a row of the same time at
    the new index, so that a roll exposed so can be planned. To temper changes no row.
    """
    offered = _proposal(desk, key)
    if offered.standing == "accepted":
        return offered
    if offered.standing == "declined":
        raise refuse("proposal-left", ways_on=("answer-again",))
    taken = replace(offered, standing="accepted", decided=moment_of(now))
    with desk.together():
        if offered.proposal.what in ("time", "index"):
            combination, old = _row(desk, offered)
            desk.combinations.keep(replace(combination, rows=(_new_row(dice, offered, old, now),)))
        desk.proposals.keep(taken)
    return taken


def leave_as_it_is(desk: Desk, key: UUID, now: Instant) -> KeptProposal:
    """Leave a proposal; nothing changes, and it is not offered again."""
    offered = _proposal(desk, key)
    if offered.standing != "offered":
        return offered
    left = replace(offered, standing="declined", decided=moment_of(now))
    desk.proposals.keep(left)
    return left


def _proposal(desk: Desk, key: UUID) -> KeptProposal:
    found = desk.proposals.by_key(key)
    if found is None:
        raise refuse("no-such-proposal", ways_on=("look-at-the-journal",))
    return found


def _row(desk: Desk, offered: KeptProposal) -> tuple[Combination, TimeRow]:
    """The combination and the row that was judged; refused where another row has taken its place."""
    combination = desk.combinations.by_key(offered.combination) if offered.combination else None
    old = next((row for row in combination.rows if row.key == offered.old_row), None) if combination else None
    if combination is None or old is None:
        raise refuse("no-combination-judged", ways_on=("look-at-the-journal",))
    if offered.proposal.what == "time" and old not in rows_in_use(combination, old.index):
        raise refuse("proposal-outrun", ways_on=("answer-again",))
    return combination, old


def _new_row(dice: Dice, offered: KeptProposal, old: TimeRow, now: Instant) -> TimeRow:
    """The row that a time or an index becomes."""
    new, day = offered.proposal, moment_of(now).date()
    if new.what == "index":
        words = f"as EI {old.index:g}"
        return TimeRow(dice.key(), old.time_s, old.temp_c, new.new, "accepted", words, day, old.contrast)
    return TimeRow(
        key=dice.key(),
        time_s=new.new,
        temp_c=old.temp_c,
        index=old.index,
        source="accepted",
        words="half a correction",
        noted=day,
        contrast=old.contrast,
        replaces=old.key,
    )
