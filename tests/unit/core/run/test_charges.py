"""What a run owes the ledger: film as each bath counts it, and tests as they were told last."""

from __future__ import annotations

from dataclasses import replace

import pytest
from unit.core.run.evening import FIXER, STOP, opened, plan

from tankside.core.planning.plan import Plan
from tankside.core.rolls.roll import Grain
from tankside.core.run.charges import charges, difference
from tankside.core.run.commands import DrainBath, PourBath, RestateNote, TimeTest, WithdrawNote
from tankside.core.run.events import TestTimed as Timed
from tankside.core.shelf.ledger import BathTest


def of_grain(grain: Grain) -> Plan:
    """An evening of one tankful of a roll of that grain."""
    told = plan("A")
    (one,) = told.tankfuls
    return replace(told, tankfuls=(replace(one, rolls=(replace(one.rolls[0], grain=grain),)),))


@pytest.mark.parametrize(("grain", "counted"), [("cubic", 1.0), ("tabular", 1.5), ("unknown", 1.5)])
def test_a_fixer_counts_slow_film_half_as_much_again(grain: Grain, counted: float) -> None:
    """Common practice, tabular x 1.5: fixer counts, stop bath takes the plain area of one roll."""
    sink = opened(of_grain(grain))
    for second, bath in ((0, "A.develop"), (600, "A.stop"), (700, "A.fix")):
        sink.do(PourBath(bath), second)
        sink.do(DrainBath(bath, held=True), second + 90)
    back = {one.line.bottle: one.line for one in charges(sink.state) if one.line.kind == "returned"}

    assert (1.0, counted) == (back[FIXER].area_units, back[FIXER].counted_units)
    assert (1.0, 1.0) == (back[STOP].area_units, back[STOP].counted_units)


def test_a_test_piece_is_booked_with_its_values() -> None:
    """The ledger can judge it later: film, seconds, temperature, fresh or not."""
    sink = opened(plan("A"))
    sink.do(TimeTest(FIXER, "river 100", "clearing", 45.0, 20.0, fresh=True), 0)
    (line,) = [one.line for one in charges(sink.state) if one.line.kind == "tested"]

    assert BathTest("clearing", "river 100", 45.0, 20.0, fresh=True) == line.test


def test_a_test_that_is_restated_or_withdrawn_is_told_by_a_new_line() -> None:
    """'It was 54 s' books the new value, taking it back books that nothing stands; then nothing is owed."""
    sink = opened(plan("A"))
    (first, *_) = sink.do(TimeTest(FIXER, "river 100", "clearing", 45.0, 20.0), 0)
    booked = list(difference(charges(sink.state), ()))
    sink.do(RestateNote(first.id, Timed(FIXER, "river 100", "clearing", 54.0, 20.0)), 5)
    (restated,) = difference(charges(sink.state), booked)
    booked.append(restated)
    sink.do(WithdrawNote(first.id), 9)
    (gone,) = difference(charges(sink.state), booked)

    assert BathTest("clearing", "river 100", 54.0, 20.0) == restated.line.test
    assert gone.line.test is None
    assert () == difference(charges(sink.state), (*booked, gone))
