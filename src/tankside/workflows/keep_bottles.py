"""What is done to bottles at the shelf, away from any run: each act is a new line in the ledger."""

from __future__ import annotations

from dataclasses import replace
from uuid import UUID

from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import Account, account
from tankside.core.shelf.bookings import Booking, opposite
from tankside.core.shelf.ledger import LedgerLine
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice


def stands(desk: Desk, bottle: str) -> Account:
    """What is in a bottle and what it has taken."""
    if desk.bottles.by_code(bottle) is None:
        raise refuse("no-such-bottle", bottle=bottle, ways_on=("look-at-the-shelf",))
    return account(desk.ledger.of_bottle(bottle))


def discard(desk: Desk, dice: Dice, bottle: str, now: Instant, *, words: str = "") -> None:
    """Pour away all that is in a bottle."""
    with desk.together():
        found = stands(desk, bottle)
        if found.discarded:
            raise refuse("already-discarded", bottle=bottle, ways_on=("look-at-the-shelf",))
        _book(desk, dice, LedgerLine(bottle, "discarded", ml=-(found.ml or 0.0), words=words), now)


def contaminate(desk: Desk, dice: Dice, bottle: str, now: Instant, *, words: str) -> None:
    """Note that something else got into a bottle, so that no plan offers it again."""
    stands(desk, bottle)
    _book(desk, dice, LedgerLine(bottle, "contaminated", words=words), now)


def take_back(desk: Desk, dice: Dice, booking: UUID, now: Instant, *, words: str = "") -> None:
    """Take back one line that was written at the shelf by mistake; both lines stay."""
    with desk.together():
        everything = desk.ledger.all()
        found = next((one for one in everything if one.key == booking), None)
        if found is None:
            raise refuse("no-such-booking", ways_on=("look-at-the-shelf",))
        if found.run is not None:
            raise refuse("put-right-in-the-run", ways_on=("put-the-note-right",))
        if any(one.line.reverses == booking for one in everything):
            raise refuse("taken-back-already", ways_on=("look-at-the-shelf",))
        _book(desk, dice, replace(opposite(found), words=words), now)


def _book(desk: Desk, dice: Dice, line: LedgerLine, now: Instant) -> None:
    """One act at the shelf, one line; owed for the act itself unless the line says otherwise."""
    act = f"shelf:{dice.key()}"
    owed = replace(line, because=line.because or act)
    desk.ledger.append([Booking(dice.key(), owed, act, 0, moment_of(now))])
