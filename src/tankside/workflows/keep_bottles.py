"""What is done to bottles at the shelf, away from any run: each act is a new line in the ledger."""

from __future__ import annotations

from dataclasses import replace
from uuid import UUID

from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import Account, account
from tankside.core.shelf.ledger import LedgerLine
from tankside.core.solutions.keeping import KeepingTime
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.shelf_acts import book_act, take_back_act


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
        book_act(desk, dice, [LedgerLine(bottle, "discarded", ml=-(found.ml or 0.0), words=words)], now)


def contaminate(desk: Desk, dice: Dice, bottle: str, now: Instant, *, words: str) -> None:
    """Note that something else got into a bottle, so that no plan offers it again."""
    stands(desk, bottle)
    book_act(desk, dice, [LedgerLine(bottle, "contaminated", words=words)], now)


def keep_typed(desk: Desk, bottle: str, *, keeping: KeepingTime | None, price_minor: int | None) -> None:
    """Keep how long the batch in a bottle keeps by its leaflet, and what all of it cost."""
    found = desk.bottles.by_code(bottle)
    batch = desk.batches.by_key(found.batch) if found else None
    if batch is None:
        raise refuse("no-such-bottle", bottle=bottle, ways_on=("look-at-the-shelf",))
    desk.batches.keep(replace(batch, keeping=keeping, price_minor=price_minor))


def take_back(desk: Desk, dice: Dice, booking: UUID, now: Instant) -> None:
    """Take back the act at the shelf that wrote a line by mistake; all its lines stay."""
    found = next((one for one in desk.ledger.all() if one.key == booking), None)
    if found is None:
        raise refuse("no-such-booking", ways_on=("look-at-the-shelf",))
    take_back_act(desk, dice, found.event, now)
