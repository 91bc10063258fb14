"""An act at the shelf, away from any run: one event, a line for each bottle it touches, and its way back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import LEAST_ML, account
from tankside.core.shelf.bookings import Booking, opposite
from tankside.core.shelf.ledger import LedgerLine
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice


def book_act(desk: Desk, dice: Dice, lines: Sequence[LedgerLine], now: Instant) -> str:
    """Book the lines of one act, owed for the act itself unless they say otherwise; returns its event."""
    act = f"shelf:{dice.key()}"
    desk.ledger.append(
        [
            Booking(
                dice.key(),
                replace(line, because=line.because or act),
                act,
                number,
                moment_of(now),
                place=number,
            )
            for number, line in enumerate(lines)
        ]
    )
    return act


def take_back_act(desk: Desk, dice: Dice, act: str, now: Instant) -> tuple[str, ...]:
    """Take back a whole act at the shelf, in every bottle it touched; both its lines and theirs stay.

    Refused where it was noted in a run, was taken back already, or where what it brought has been used.
    """
    with desk.together():
        everything = desk.ledger.all()
        lines = [one for one in everything if one.event == act]
        if not lines:
            raise refuse("no-such-booking", ways_on=("look-at-the-shelf",))
        if any(one.run is not None for one in lines):
            raise refuse("put-right-in-the-run", ways_on=("put-the-note-right",))
        if {one.line.reverses for one in everything} & {one.key for one in lines}:
            raise refuse("taken-back-already", ways_on=("look-at-the-shelf",))
        back = f"shelf:{dice.key()}"
        undone = [
            Booking(dice.key(), opposite(one), back, number, moment_of(now), place=one.place)
            for number, one in enumerate(lines)
        ]
        codes = tuple(dict.fromkeys(one.line.bottle for one in lines))
        for code in codes:
            after = account([one for one in (*everything, *undone) if one.line.bottle == code])
            if after.ml is not None and after.ml < -LEAST_ML:
                raise refuse("used-since", bottle=code, ways_on=("look-at-the-shelf",))
        desk.ledger.append(undone)
    return codes
