"""Taking back, retiming and restating: the log keeps both, the state holds what was right."""

from __future__ import annotations

import pytest
from unit.core.run.evening import DEVELOPER, STOP, Sink, at, opened, plan

from tankside.core.refusals import Refused
from tankside.core.run.charges import charges, difference
from tankside.core.run.commands import (
    DrainBath,
    HangFilm,
    PourBath,
    RestateNote,
    RetimeNote,
    TakeReading,
    WithdrawNote,
    WriteNote,
)
from tankside.core.run.events import BathPoured, EndMoved, NoteWritten


def moved(sink: Sink, asked: WithdrawNote | RetimeNote | RestateNote, seconds: float) -> EndMoved | None:
    """The end that is told because something was put right."""
    events = sink.do(asked, seconds)
    return next((one.body for one in events if isinstance(one.body, EndMoved)), None)


def read_cold() -> tuple[Sink, str]:
    """A developer read at one minute, and the id of that reading."""
    sink = opened(plan("A", room_c=16.0))
    sink.do(PourBath("A.develop"), 0)
    events = sink.do(TakeReading("tank", "A", 19.2), 60)
    return sink, events[0].id


def test_a_withdrawn_reading_brings_the_planned_end_back() -> None:
    """No reading, no moved end; the person is told so."""
    sink, reading = read_cold()
    assert sink.state.tankful("A").told_end_s("A.develop") > 590
    told = moved(sink, WithdrawNote(reading, "read the jug"), 90)
    assert told is not None
    assert told.end_after_s == 570
    assert sink.state.readings == ()


def test_a_restated_reading_is_told_without_the_threshold() -> None:
    """19.2 was really 19.1: less than 3 %, told all the same."""
    sink, reading = read_cold()
    before = sink.state.tankful("A").told_end_s("A.develop")
    body = sink.state.readings[0].body
    told = moved(sink, RestateNote(reading, type(body)("tank", "A", "glass rod", 19.1)), 90)
    assert told is not None
    assert 1 <= told.end_after_s - before < 0.03 * before


def test_a_retimed_pour_moves_its_bath_and_its_confirming() -> None:
    """'I poured fifteen seconds earlier': end and confirming move with it."""
    sink = opened(plan("A"))
    (first, *_) = sink.do(PourBath("A.develop"), 15)
    sink.do(RetimeNote(first.id, 25.0), 25)
    one = sink.state.tankful("A")
    assert one.passes[0].poured.at_us == at(0).wall_us
    assert one.confirmed[0].mark.at_us == at(0).wall_us


def test_taking_a_drain_back_takes_its_return_back_and_the_ledger_follows() -> None:
    """The stop bath is in the tank again, and what was booked as returned is booked out."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    sink.do(DrainBath("A.develop"), 570)
    sink.do(PourBath("A.stop"), 585)
    (first, *_) = sink.do(DrainBath("A.stop"), 645)
    booked = charges(sink.state)
    sink.do(WithdrawNote(first.id), 650)
    assert sink.state.tankful("A").in_tank is not None
    (row,) = difference(charges(sink.state), booked)
    assert (row.line.bottle, row.line.kind, row.line.ml, row.line.area_units) == (STOP, "returned", -500, -1)


def test_a_restated_volume_moves_the_ledger_by_a_new_row() -> None:
    """300 mL were poured, not 500: of the stock 100 mL fewer."""
    sink = opened(plan("A"))
    (first, *_) = sink.do(PourBath("A.develop"), 0)
    booked = charges(sink.state)
    sink.do(RestateNote(first.id, BathPoured("A.develop", DEVELOPER, 300.0)), 20)
    (row,) = difference(charges(sink.state), booked)
    assert (row.line.kind, row.line.ml) == ("drawn", 100.0)
    assert difference(charges(sink.state), (*booked, row)) == ()


def test_a_withdrawal_that_is_withdrawn_stands_no_more() -> None:
    """The pour that was taken back by mistake happened after all."""
    sink = opened(plan("A"))
    (first, *_) = sink.do(PourBath("A.develop"), 0)
    taken_back = sink.do(WithdrawNote(first.id), 5)
    assert sink.state.tankful("A").passes == ()
    for event in taken_back:
        sink.do(WithdrawNote(event.id), 8)
    assert len(sink.state.tankful("A").passes) == 1


def test_what_cannot_be_put_right_is_refused() -> None:
    """An unknown note, another kind, the opening itself."""
    sink = opened(plan("A"))
    (note,) = sink.do(WriteNote("fan on"), 0)
    for asked, code in (
        (WithdrawNote("phone:99/0"), "unknown-note"),
        (RestateNote(note.id, BathPoured("A.develop")), "another-kind"),
        (WithdrawNote("phone:0/0"), "not-withdrawn"),
        (RetimeNote("phone:0/0", 3.0), "not-retimed"),
    ):
        with pytest.raises(Refused) as no:
            sink.do(asked, 5)
        assert no.value.refusal.code == code
    sink.do(RestateNote(note.id, NoteWritten("fan off")), 6)
    assert sink.state.written[0].text == "fan off"


def test_hanging_is_one_note_a_roll() -> None:
    """Two rolls hang, two events of one command."""
    sink = opened(plan("AB"))
    assert [one.kind for one in sink.do(HangFilm("A", ("AROLL-0", "AROLL-1")), 10)] == ["film-hung"] * 2
