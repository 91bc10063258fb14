"""What every desk owes: ledger, answers, proposals, photographs, and acts that stand together."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from hashlib import sha256

import pytest
from evening import COMBINATION, MADE, key

from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import Refusal
from tankside.core.review.evidence import NextMorning, NotAsked, Strips, TwoDensities
from tankside.core.review.proposals import Proposal
from tankside.core.run.decide.drafts import Answer
from tankside.core.shelf.bookings import Booking, opposite
from tankside.core.shelf.ledger import BathTest, LedgerLine
from tankside.workflows.ports import Desk
from tankside.workflows.records import Conflict, KeptAnswer, KeptEvidence, KeptProposal, Photograph

DRAWN = Booking(
    key(61), LedgerLine("K7M4-T", "drawn", ml=-600.0, because="phone:3/1"), "phone:3/1", 0, MADE, key(7)
)
BACK = Booking(
    key(62), LedgerLine("K7M4-T", "returned", 590.0, 2.0, "phone:4/2"), "phone:4/2", 0, MADE, key(7)
)
NOTED = KeptAnswer("phone:3", key(7), Answer("noted", "phone:3/0", 12, {"ml": 600.0}), 2, 3)
PICTURE = b"\xff\xd8\xff invented picture"
PHOTOGRAPH = Photograph(
    sha256(PICTURE).hexdigest(), "roll", key(1), "image/jpeg", len(PICTURE), MADE, "window"
)


def test_lines_are_booked_in_order(desk: Desk) -> None:
    """It should tell the lines of a bottle, of a run and of everything in the order they were booked."""
    desk.ledger.append([DRAWN, BACK])
    mixed = Booking(key(63), LedgerLine("F9QD-2", "mixed", ml=1000.0), "shelf:1", 0, MADE)
    desk.ledger.append([mixed])
    desk.ledger.append([])
    assert (DRAWN, BACK) == desk.ledger.of_bottle("K7M4-T")
    assert (DRAWN, BACK) == desk.ledger.of_run(key(7))
    assert (DRAWN, BACK, mixed) == desk.ledger.all()


def test_a_test_and_what_film_counted_for_come_back_digit_for_digit(desk: Desk) -> None:
    """It should keep every value of a test piece and of a strip, and film as the fixer counted it."""
    back = LedgerLine("F9QD-2", "returned", 590.0, 2.0, "phone:4/2", counted_units=3.0)
    cleared = BathTest("clearing", "Ferry 125", 41.7, 19.3, fresh=True)
    strip = BathTest("indicator", ph=5.4, spent=True)
    tests = [
        LedgerLine("F9QD-2", "tested", because=str(n), test=one) for n, one in enumerate((cleared, strip))
    ]
    for number, line in enumerate((back, *tests)):
        desk.ledger.append([Booking(key(70 + number), line, f"shelf:{number}", 0, MADE)])
    assert [back, *tests] == [one.line for one in desk.ledger.of_bottle("F9QD-2")]


def test_a_line_of_an_event_is_booked_once(desk: Desk) -> None:
    """It should report a conflict for the second booking, and book none of the lines beside it."""
    desk.ledger.append([DRAWN])
    with pytest.raises(Conflict):
        desk.ledger.append([BACK, replace(DRAWN, key=key(64))])
    assert (DRAWN,) == desk.ledger.all()


def test_a_line_is_taken_back_once(desk: Desk) -> None:
    """It should report a conflict where a line is taken back a second time."""
    desk.ledger.append([DRAWN, Booking(key(65), opposite(DRAWN), "phone:9/1", 0, MADE, key(7))])
    with pytest.raises(Conflict):
        desk.ledger.append([Booking(key(66), opposite(DRAWN), "phone:10/1", 0, MADE, key(7))])
    assert 2 == len(desk.ledger.all())


def test_a_command_has_one_answer(desk: Desk) -> None:
    """It should find the answer that was given, refusals too, and take no second one."""
    given = NOTED
    refused = KeptAnswer("phone:4", key(7), Refusal("screen-behind", {"last_seq": 9}, None, ("look-again",)))
    desk.answers.keep(given)
    desk.answers.keep(refused)
    assert given == desk.answers.find("phone:3")
    assert refused == desk.answers.find("phone:4")
    assert desk.answers.find("phone:5") is None
    with pytest.raises(Conflict):
        desk.answers.keep(replace(given, said=Answer("agreed")))
    assert given == desk.answers.find("phone:3")


def test_a_proposal_keeps_what_it_offered(desk: Desk) -> None:
    """It should note that it was accepted and leave the old and the new value as they were offered."""
    desk.combinations.keep(COMBINATION)
    nothing = Estimate(0.0, 0.0, 0.0, "%")
    slower = Proposal("time", 570.0, 545.0, None, Estimate(8.0, 5.0, 11.0, "%"), nothing)
    offered = KeptProposal(key(71), MADE, slower, key(7), COMBINATION.key, key(42))
    later = replace(offered, key=key(72), made=MADE + timedelta(days=1))
    desk.proposals.keep(offered)
    desk.proposals.keep(later)
    accepted = replace(offered, standing="accepted", decided=MADE + timedelta(hours=1))
    desk.proposals.keep(replace(accepted, proposal=replace(slower, old=1.0)))
    assert accepted == desk.proposals.by_key(key(71))
    assert (later, accepted) == desk.proposals.all()
    assert desk.proposals.by_key(key(99)) is None


def test_a_photograph_is_kept_once(desk: Desk) -> None:
    """It should keep a picture by its hash and what it shows, and change nothing the second time."""
    desk.photographs.keep(PHOTOGRAPH, PICTURE)
    desk.photographs.keep(PHOTOGRAPH, PICTURE)
    assert (PHOTOGRAPH,) == desk.photographs.of(key(1))
    assert PICTURE == desk.photographs.picture(PHOTOGRAPH.sha256)
    assert () == desk.photographs.of(key(2))
    assert desk.photographs.picture("0" * 64) is None


def test_acts_together_are_all_or_none(desk: Desk) -> None:
    """It should undo everything inside when the last act fails, and show it inside before."""
    desk.preferences.keep("kept", "yes")

    def several() -> None:
        with desk.together():
            desk.preferences.keep("kept", "no")
            desk.ledger.append([DRAWN])
            assert (DRAWN,) == desk.ledger.all()
            with desk.together():
                desk.answers.keep(NOTED)
            desk.ledger.append([DRAWN])

    with pytest.raises(Conflict):
        several()
    assert {"kept": "yes"} == desk.preferences.all()
    assert () == desk.ledger.all()
    assert desk.answers.find("phone:3") is None


def test_acts_together_are_kept(desk: Desk) -> None:
    """It should keep everything when all acts went well."""
    with desk.together():
        desk.ledger.append([DRAWN])
        desk.answers.keep(NOTED)
    assert (DRAWN,) == desk.ledger.all()
    assert desk.answers.find("phone:3") is not None


def test_what_the_negatives_said_is_kept_in_order(desk: Desk) -> None:
    """It should keep every answer of a run, the latest last, each kind as it was, and nothing twice."""
    said = (
        NextMorning("thin", "harsh"),
        TwoDensities(0.18, 1.03, 0.35, 1.20, 0.5),
        Strips((0.59, 0.585), 0.56),
        NotAsked(),
    )
    noted = tuple(
        KeptEvidence(key(90 + n), key(7), "A", one, MADE + timedelta(hours=n)) for n, one in enumerate(said)
    )
    other = KeptEvidence(key(99), key(8), "B", NotAsked(), MADE)
    for one in (*reversed(noted), other, noted[0]):
        desk.evidence.keep(one)
    desk.evidence.keep(replace(noted[0], said=NotAsked()))

    assert noted == desk.evidence.of_run(key(7))
    assert {*noted, other} == set(desk.evidence.all())
    assert () == desk.evidence.of_run(key(9))
