"""The live shell over a real database: once, durably, in order, and the ledger with it."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

import pytest
from bench import RUN, Bench, left_to_book, phone, stands
from evening import PLAN, key
from evening_clock import CountingDice, at

from tankside.core.refusals import Refusal, Refused
from tankside.core.run.commands import (
    CloseRun,
    Command,
    DrainBath,
    EndTankful,
    HangFilm,
    PourBath,
    WithdrawNote,
    WriteNote,
)
from tankside.core.run.decide.drafts import Answer
from tankside.sink.live_runs import LiveRuns
from tankside.workflows.note_at_sink import note_at_sink
from tankside.workflows.open_run import open_run


def test_the_run_opens_with_the_bench_as_the_ledger_has_it(bench: Bench) -> None:
    """It should freeze plan and bottles into the first event, and opened again stay one run."""
    run = bench.live.look(RUN)
    assert run is not None
    assert PLAN == run.state.plan
    assert [("F9QD-2", 1000.0, 0.2), ("K7M4-T", 1000.0, 0.05)] == [
        (one.code, one.ml, one.stock_share) for one in run.state.bench
    ]
    open_run(bench.desk, bench.live, RUN, PLAN.key, at(5.0))
    assert 1 == len(bench.desk.run_log.after(RUN))


def test_a_run_without_a_plan_is_refused(bench: Bench) -> None:
    """It should say that there is no such plan, and open nothing."""
    with pytest.raises(Refused, match="no-such-plan"):
        open_run(bench.desk, bench.live, key(8), key(99), at(0.0))
    assert bench.live.look(key(8)) is None


def test_a_bath_poured_and_returned_is_in_the_ledger_at_once(bench: Bench) -> None:
    """It should draw 600 mL at the pour, and bring them back with two rolls of area at the return."""
    bench.live.note(RUN, phone(1, PourBath("A.stop", "K7M4-T")), at(600.0))
    assert (400.0, 0.0) == stands(bench.desk, "K7M4-T")
    bench.live.note(RUN, phone(2, DrainBath("A.stop", "K7M4-T", held=True)), at(660.0))
    assert (1000.0, 2.0) == stands(bench.desk, "K7M4-T")
    assert [RUN, RUN] == bench.told


def test_a_command_sent_twice_is_carried_out_once(bench: Bench) -> None:
    """It should give the same answer again, from this shell and from another, and write nothing."""
    first = bench.live.note(RUN, phone(1, PourBath("A.stop", "K7M4-T")), at(600.0))
    events, lines = bench.desk.run_log.after(RUN), bench.desk.ledger.all()
    assert first == bench.live.note(RUN, phone(1, PourBath("A.stop", "K7M4-T")), at(900.0))
    assert first == bench.shell(2_000_000).note(RUN, phone(1, PourBath("A.stop", "K7M4-T")), at(900.0))
    assert events == bench.desk.run_log.after(RUN)
    assert lines == bench.desk.ledger.all()
    assert isinstance(first.said, Answer)


def test_a_refusal_is_an_answer_and_stays_one(bench: Bench) -> None:
    """It should refuse to close with film in the tank, and refuse the same command for ever."""
    bench.live.note(RUN, phone(1, PourBath("A.develop")), at(0.0))
    refused = bench.live.note(RUN, phone(2, CloseRun()), at(10.0))
    assert isinstance(refused.said, Refusal)
    assert "tankfuls-open" == refused.said.code
    assert (None, None) == (refused.from_seq, refused.to_seq)
    assert refused == bench.live.note(RUN, phone(2, CloseRun("broken off")), at(10.0))


def test_two_shells_see_what_the_other_wrote(bench: Bench) -> None:
    """It should catch up before each decision, so that numbers go on from the other's."""
    other = bench.shell(2_000_000)
    bench.live.note(RUN, phone(1, PourBath("A.develop")), at(0.0))
    second = other.note(RUN, replace(phone(2, WriteNote("fan on")), id="terminal:1"), at(20.0))
    third = bench.live.note(RUN, phone(3, WriteNote("fan off")), at(40.0))
    assert second.to_seq is not None
    assert second.to_seq + 1 == third.from_seq
    run = other.look(RUN)
    assert run is not None
    assert third.to_seq == run.last_seq


def test_who_was_overtaken_catches_up_and_decides_again(bench: Bench) -> None:
    """It should meet the other's row at the commit, and write its own behind it."""
    overtaker = bench.shell(2_000_000)
    overtaking = [replace(phone(9, WriteNote("first")), id="terminal:1")]

    @contextmanager
    def after_somebody_else() -> Iterator[None]:
        if overtaking:
            overtaker.note(RUN, overtaking.pop(), at(30.0))
        with bench.desk.together():
            yield

    late = replace(bench.desk, together=after_somebody_else)
    overtaken = LiveRuns(late, CountingDice(3_000_000), written=bench.told.append)
    answer = overtaken.note(RUN, phone(1, WriteNote("second")), at(31.0))
    assert ["", "first", "second"] == [getattr(one.body, "text", "") for one in bench.desk.run_log.after(RUN)]
    assert 3 == answer.from_seq


def test_who_is_overtaken_for_ever_says_so(bench: Bench) -> None:
    """It should refuse after three tries, keep nothing, and keep it when asked again in peace."""
    overtaker = bench.shell(2_000_000)
    numbers = iter(range(100))

    @contextmanager
    def after_somebody_else() -> Iterator[None]:
        number = next(numbers)
        overtaker.note(RUN, replace(phone(0, WriteNote("")), id=f"terminal:{number}"), at(30.0))
        with bench.desk.together():
            yield

    late = replace(bench.desk, together=after_somebody_else)
    overtaken = LiveRuns(late, CountingDice(3_000_000), written=bench.told.append)
    with pytest.raises(Refused, match="run-busy"):
        overtaken.note(RUN, phone(1, WriteNote("mine")), at(31.0))
    assert 3 == next(numbers)
    assert bench.desk.answers.find("phone:1") is None
    assert 5 == bench.live.note(RUN, phone(1, WriteNote("mine")), at(32.0)).from_seq


def test_many_threads_lose_nothing(bench: Bench) -> None:
    """It should give each command of four threads its own number."""

    def device(name: str) -> None:
        for number in range(5):
            command = Command(f"{name}:{number}", WriteNote(f"{name} {number}"), name, run=RUN)
            bench.live.note(RUN, command, at(float(number)))

    threads = [threading.Thread(target=device, args=(f"d{number}",)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    events = bench.desk.run_log.after(RUN)
    assert list(range(1, 22)) == [one.seq for one in events]
    assert 20 == len({one.id for one in events[1:]})


def test_a_disk_that_does_not_take_it_acknowledges_nothing(bench: Bench) -> None:
    """It should answer what came before, name the trouble, and carry out the rest when sent again."""
    queue = [phone(number, WriteNote(f"{number} " + "x" * 3000)) for number in range(1, 30)]
    with bench.database._writer.connect() as connection:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar_one()
        connection.exec_driver_sql(f"PRAGMA max_page_count = {pages + 5}")
    noted = note_at_sink(bench.live, RUN, queue, at(10.0))
    assert noted.trouble is not None
    assert "disk-full" == noted.trouble.code
    assert 0 < len(noted.answers) < 29
    assert 1 + len(noted.answers) == len(bench.desk.run_log.after(RUN))
    with bench.database._writer.connect() as connection:
        connection.exec_driver_sql("PRAGMA max_page_count = 1000000")
    again = note_at_sink(bench.live, RUN, queue, at(20.0))
    assert noted.answers == again.answers[: len(noted.answers)]
    assert 30 == len(bench.desk.run_log.after(RUN))


def test_a_withdrawn_pour_moves_the_ledger_by_a_new_row(bench: Bench) -> None:
    """It should leave the old rows as they are and add one that brings the bottle back to a litre."""
    bench.live.note(RUN, phone(1, PourBath("A.stop", "K7M4-T", ml=500.0)), at(600.0))
    before = bench.desk.ledger.all()
    bench.live.note(RUN, phone(2, WithdrawNote("phone:1/0", "it was the other tank")), at(610.0))
    assert before == bench.desk.ledger.all()[: len(before)]
    assert len(before) + 1 == len(bench.desk.ledger.all())
    assert (1000.0, 0.0) == stands(bench.desk, "K7M4-T")
    assert () == left_to_book(bench.desk)


def rolls_stand(bench: Bench) -> set[str]:
    """Where the rolls of tankful A stand."""
    return {one.standing for one in bench.desk.rolls.all()}


def test_rolls_follow_their_tankful(bench: Bench) -> None:
    """They should be in the tank once developer is poured, done once they hang, and back if withdrawn."""
    assert {"waiting"} == rolls_stand(bench)
    bench.live.note(RUN, phone(1, PourBath("A.develop")), at(600.0))
    assert {"in the tank"} == rolls_stand(bench)
    bench.live.note(RUN, phone(2, HangFilm("A")), at(4000.0))
    assert {"done"} == rolls_stand(bench)
    noted = [one for one in bench.desk.run_log.after(RUN) if one.kind in ("film-hung", "tankful-ended")]
    for number, note in enumerate(noted):
        bench.live.note(RUN, phone(3 + number, WithdrawNote(note.id)), at(4010.0))
    assert {"in the tank"} == rolls_stand(bench)


def test_a_roll_changed_by_hand_stays_so(bench: Bench) -> None:
    """It should write a standing only when a note moves it."""
    bench.live.note(RUN, phone(1, PourBath("A.develop")), at(600.0))
    for roll in bench.desk.rolls.all():
        bench.desk.rolls.keep(replace(roll, standing="lost"))
    bench.live.note(RUN, phone(2, WriteNote("dropped on the floor")), at(700.0))
    assert {"lost"} == rolls_stand(bench)


def test_an_image_lost_is_a_roll_lost(bench: Bench) -> None:
    """It should mark the rolls of a tankful whose image is gone."""
    bench.live.note(RUN, phone(1, PourBath("A.stop", "K7M4-T")), at(600.0))
    bench.live.note(RUN, phone(2, EndTankful("A", "image lost")), at(700.0))
    assert {"lost"} == rolls_stand(bench)
