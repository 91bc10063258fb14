"""Tests of a bath noted at the shelf: a test piece of the fixer, an indicator of the stop bath, a look."""

from __future__ import annotations

from collections.abc import Sequence

from tankside.core.permanence.clearing import ClearingTest
from tankside.core.refusals import Refused, refuse
from tankside.core.run.instants import Instant
from tankside.core.shelf.ledger import BathTest, LedgerLine
from tankside.workflows.keep_bottles import stands
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.shelf_acts import book_act

LOWEST_PH, HIGHEST_PH = 0.0, 14.0


def note_tests(desk: Desk, dice: Dice, bottle: str, tests: Sequence[BathTest], now: Instant) -> None:
    """Book what was tested in one act, each test a line; a clearing time that is none is refused."""
    if not tests:
        raise refuse("nothing-tested", at="clears", ways_on=("look-at-the-shelf",))
    for one in tests:
        _check(one)
    with desk.together():
        if stands(desk, bottle).discarded:
            raise refuse("already-discarded", bottle=bottle, ways_on=("look-at-the-shelf",))
        book_act(desk, dice, [LedgerLine(bottle, "tested", test=one) for one in tests], now)


def _check(test: BathTest) -> None:
    """Refuse what cannot be judged, at the field it was typed in."""
    if test.ph is not None and not LOWEST_PH <= test.ph <= HIGHEST_PH:
        raise refuse("number-out-of-range", at="ph", least=LOWEST_PH, most=HIGHEST_PH)
    if test.kind != "clearing" or test.seconds is None or test.temp_c is None:
        return
    try:
        ClearingTest(test.seconds, test.temp_c)
    except Refused as refused:
        fields = (
            {"seconds": "fresh", "temp_c": "fresh_temp"}
            if test.fresh
            else {"seconds": "clears", "temp_c": "temp"}
        )
        raise Refused(refused.refusal.placed(fields[refused.refusal.at or "seconds"])) from refused
