"""What every desk owes the run log: each kind of event comes back as it was written, once, in order."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evening import MADE, PLAN, key
from evening_clock import at

from tankside.core.run.envelope import Event
from tankside.core.run.events import (
    EVENTS,
    AgitationNoted,
    BathDiscarded,
    BathDrained,
    BathPoured,
    BathReturned,
    BathSkipped,
    BenchBottle,
    Body,
    BottleConfirmed,
    ClockDoubted,
    ClockSettled,
    DoubtAnswered,
    EndMoved,
    FilmHung,
    LiquidPrepared,
    NoteRestated,
    NoteRetimed,
    NoteWithdrawn,
    NoteWritten,
    PlanAmended,
    ReadingTaken,
    RollMarked,
    RunClosed,
    RunOpened,
    TankfulEnded,
    TankLoaded,
    WaterChanged,
)
from tankside.core.run.events import TestTimed as Timed
from tankside.workflows.ports import Desk
from tankside.workflows.records import Conflict, RunHeading

RUN = key(7)
BENCH = (BenchBottle("K7M4-T", "stop bath", "Stop", 480.0, 0.05, "green", "left"),)
BODIES: tuple[Body, ...] = (
    RunOpened(PLAN, "Europe/Berlin", ("one",), ("invented-1",), "0.1.0", BENCH),
    PlanAmended(replace(PLAN, number=2), "a second roll", ("tankful B",)),
    ReadingTaken("tank", "A", "glass", 19.5, -0.3),
    LiquidPrepared("develop-A", 600.0, "K7M4-T", "F9QD-2", 300.0, "1+1", 20.8, "cylinder"),
    NoteWritten("fan on, 'quotes' and ü"),
    ClockDoubted(3.25, "one"),
    ClockSettled("wall", "one", 3.25),
    DoubtAnswered("phone:3/0", "yes"),
    RunClosed("broken off", ("A",)),
    TankLoaded("tall tank", ("7MPA-4", "R5TN-6"), True),
    BottleConfirmed("A.stop", "K7M4-T", "scan"),
    BathPoured("A.develop", None, 590.0, 12.5),
    AgitationNoted("A.develop", 3, False),
    EndMoved("A.develop", 613.0, (592.0, 629.0), "reading", "invented-1"),
    BathDrained("A.develop"),
    BathReturned("A.stop", "K7M4-T", 590.0),
    BathDiscarded("A.develop", None),
    Timed("F9QD-2", "Ferry 125", "clearing", 45.0, 20.0),
    WaterChanged("A.wash", 2, 18.1),
    BathSkipped("A.wetting", "none left"),
    RollMarked("7MPA-4", "torn"),
    FilmHung("7MPA-4", "shower rail"),
    TankfulEnded("hung"),
    NoteWithdrawn("phone:3/0", "wrong tank"),
    NoteRetimed("phone:3/0", at(12.5), "late"),
    NoteRestated("phone:3/0", BathDrained("A.stop"), "not the developer"),
)


def events(*bodies: Body, first: int = 1) -> tuple[Event, ...]:
    """Bodies as rows, ten seconds apart, noted two seconds late."""
    return tuple(
        Event(
            run=RUN,
            seq=number,
            id=f"phone:{number}/0",
            tankful="A" if number % 2 else None,
            happened=at(10.0 * (number - 1)),
            recorded=at(10.0 * (number - 1) + 2.0, "two"),
            device="phone",
            how="queued",
            within_s=1.5,
            body=body,
        )
        for number, body in enumerate(bodies, start=first)
    )


def test_the_bodies_here_are_of_every_kind() -> None:
    """It should leave no kind of event untried."""
    assert set(EVENTS) == {body.kind for body in BODIES}


def test_every_kind_of_event_comes_back_as_it_was_written(desk: Desk) -> None:
    """It should give the same values, floats digit for digit, in the order of their numbers."""
    written = events(*BODIES)
    desk.run_log.append(written[:3])
    desk.run_log.append(written[3:])
    assert written == desk.run_log.after(RUN)
    assert written[20:] == desk.run_log.after(RUN, 20)
    assert () == desk.run_log.after(key(8))


def test_a_number_is_written_once(desk: Desk) -> None:
    """It should report a conflict for a number or an event that is taken, and write none of the rest."""
    first = events(BODIES[0], NoteWritten("a"))
    desk.run_log.append(first)
    taken = events(NoteWritten("b"), NoteWritten("c"), first=2)
    with pytest.raises(Conflict):
        desk.run_log.append([replace(one, id=f"tablet:{one.seq}/0") for one in taken])
    with pytest.raises(Conflict):
        desk.run_log.append([replace(events(NoteWritten("d"))[0], seq=3)])
    assert first == desk.run_log.after(RUN)


def test_runs_are_listed_the_latest_first(desk: Desk) -> None:
    """It should tell when each was opened, how far it is, and whether it was closed."""
    desk.run_log.append(events(BODIES[0], RunClosed("finished")))
    later = replace(events(BODIES[0])[0], run=key(9), id="tablet:1/0", happened=at(3600.0))
    desk.run_log.append([later])
    listed = desk.run_log.headings()
    assert (key(9), RUN) == tuple(one.run for one in listed)
    assert RunHeading(RUN, MADE, 2, True) == listed[1]
    assert not listed[0].closed


def test_a_closing_that_was_taken_back_closes_nothing(desk: Desk) -> None:
    """It should list the run as open, and as closed again once the taking back is taken back."""
    rows = events(BODIES[0], RunClosed("finished"))
    back = NoteWithdrawn(rows[1].id)
    desk.run_log.append([*rows, *events(back, first=3)])
    assert [False] == [one.closed for one in desk.run_log.headings()]
    desk.run_log.append(events(NoteWithdrawn(events(back, first=3)[0].id), first=4))
    assert [True] == [one.closed for one in desk.run_log.headings()]
