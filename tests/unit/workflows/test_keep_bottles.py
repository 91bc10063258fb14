"""Acts at the shelf: a new line each, and nothing is ever edited."""

from __future__ import annotations

import pytest
from bench import RUN, lay_out
from evening import PLAN
from evening_clock import CountingDice, at
from fakes import memory_house

from tankside.core.refusals import Refusal, Refused
from tankside.core.run.commands import Command, ConfirmBottle, DrainBath, PourBath, WithdrawNote
from tankside.core.shelf.accounts import Account
from tankside.workflows.house import House
from tankside.workflows.keep_bottles import contaminate, discard, stands, take_back
from tankside.workflows.open_run import bench, open_run

DICE = CountingDice(9_000_000)


@pytest.fixture
def house() -> House:
    """A house in memory with two bottles of a litre."""
    house = memory_house()
    lay_out(house.desk)
    return house


def test_a_bottle_poured_away_is_empty_and_off_the_bench(house: House) -> None:
    """It should book all that was in it, keep its code, and refuse a second time."""
    discard(house.desk, DICE, "K7M4-T", at(0.0), words="cloudy")
    empty = Account(0.0, 0.0, contaminated=False, discarded=True, put_in_ml=1000.0)
    assert empty == stands(house.desk, "K7M4-T")
    assert ["F9QD-2"] == [one.code for one in bench(house.desk)]
    with pytest.raises(Refused, match="already-discarded"):
        discard(house.desk, DICE, "K7M4-T", at(1.0))


def test_a_mistake_at_the_shelf_is_taken_back_by_a_line_that_names_it(house: House) -> None:
    """It should bring the litre back, keep both lines, and be taken back once only."""
    discard(house.desk, DICE, "K7M4-T", at(0.0))
    mistake = house.desk.ledger.of_bottle("K7M4-T")[-1]
    take_back(house.desk, DICE, mistake.key, at(5.0))
    full = Account(1000.0, 0.0, contaminated=False, discarded=False, put_in_ml=1000.0)
    assert full == stands(house.desk, "K7M4-T")
    assert mistake.key == house.desk.ledger.of_bottle("K7M4-T")[-1].line.reverses
    assert 3 == len(house.desk.ledger.of_bottle("K7M4-T"))
    with pytest.raises(Refused, match="taken-back-already"):
        take_back(house.desk, DICE, mistake.key, at(6.0))


def test_what_got_into_a_bottle_is_noted_until_taken_back(house: House) -> None:
    """It should stand without a volume, and no longer once the note is taken back."""
    contaminate(house.desk, DICE, "F9QD-2", at(0.0), words="a splash of stop bath")
    assert stands(house.desk, "F9QD-2").contaminated
    take_back(house.desk, DICE, house.desk.ledger.of_bottle("F9QD-2")[-1].key, at(5.0))
    assert not stands(house.desk, "F9QD-2").contaminated


def test_a_wrong_return_contaminates_until_the_note_is_withdrawn(house: House) -> None:
    """It should follow the run: fixer poured back into the stop bath, then put right."""
    open_run(house.desk, house.live_runs, RUN, PLAN.key, at(0.0))
    house.live_runs.note(RUN, Command("phone:1", PourBath("A.fix", "F9QD-2")), at(600.0))
    house.live_runs.note(RUN, Command("phone:2", DrainBath("A.fix", "K7M4-T", held=True)), at(900.0))
    assert stands(house.desk, "K7M4-T").contaminated
    fate = next(one for one in house.desk.run_log.after(RUN) if one.kind == "bath-returned")
    wrong = next(one for one in house.desk.ledger.of_bottle("K7M4-T") if one.line.kind == "contaminated")
    with pytest.raises(Refused, match="put-right-in-the-run"):
        take_back(house.desk, DICE, wrong.key, at(905.0))
    house.live_runs.note(RUN, Command("phone:3", WithdrawNote(fate.id, "it was the other")), at(910.0))
    assert not stands(house.desk, "K7M4-T").contaminated


def test_a_bottle_spoilt_in_an_earlier_session_is_refused_at_the_sink(house: House) -> None:
    """It should stand on the bench as contaminated, be offered for nothing, and be refused in the hand."""
    contaminate(house.desk, DICE, "K7M4-T", at(0.0), words="fixer went in")
    assert {"K7M4-T": True, "F9QD-2": False} == {one.code: one.contaminated for one in bench(house.desk)}
    open_run(house.desk, house.live_runs, RUN, PLAN.key, at(0.0))
    asked = Command("phone:1", ConfirmBottle("A.stop", "K7M4-T"))
    answer = house.live_runs.note(RUN, asked, at(600.0)).said
    assert isinstance(answer, Refusal)
    assert "bottle-contaminated" == answer.code


def test_what_is_not_there_is_said(house: House) -> None:
    """It should refuse a bottle and a line that nobody knows."""
    with pytest.raises(Refused, match="no-such-bottle"):
        discard(house.desk, DICE, "ZZZZ-D", at(0.0))
    with pytest.raises(Refused, match="no-such-booking"):
        take_back(house.desk, DICE, RUN, at(0.0))
