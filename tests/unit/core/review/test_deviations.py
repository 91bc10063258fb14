"""What differed between plan and run: nothing where nothing did, and each difference with its meaning."""

from __future__ import annotations

from typing import TypeVar

import pytest
from hypothesis import given
from hypothesis import strategies as st
from unit.core.review.invented_run import carried_out, closed
from unit.core.run.evening import FIXER, STOP, Sink, opened, plan

from tankside.core.review.beside import beside
from tankside.core.review.deviations import deviations
from tankside.core.review.differed import (
    Begun,
    Drained,
    EndMoved,
    LeftOut,
    Missed,
    Noted,
    OtherBottle,
    PutRight,
    Spoilt,
    Timed,
    Warmth,
    Washed,
)
from tankside.core.run.commands import (
    ChangeWater,
    DrainBath,
    EndTankful,
    NoteAgitation,
    PourBath,
    RetimeNote,
    SkipBath,
    TakeReading,
    WriteNote,
)

Kind = TypeVar("Kind")


def found(sink: Sink, kind: type[Kind], letter: str = "A") -> list[Kind]:
    """The deviations of one kind."""
    return [one.what for one in deviations(sink.run, letter) if isinstance(one.what, kind)]


@given(
    time_s=st.sampled_from([420.0, 570.0, 720.0]),
    room_c=st.sampled_from([18.0, 20.0, 23.0]),
    jitter=st.sampled_from([-4.0, 0.0, 4.0]),
)
def test_a_run_that_went_to_plan_has_none(time_s: float, room_c: float, jitter: float) -> None:
    """Whatever was planned: taps at their time, give or take 4 s, are no deviation."""
    late = max(jitter, 0.0)
    sink = carried_out(
        lambda cue: late if cue.endswith("drain") else 0.0, planned=plan("A", time_s=time_s, room_c=room_c)
    )

    assert () == deviations(closed(sink).run, "A")


def test_nine_seconds_late_are_too_small_to_see() -> None:
    """The drain against its end, and what that alone did to the contrast."""
    (late,) = found(carried_out(lambda cue: 9.0 if cue == "A.develop.drain" else 0.0), Drained)

    assert 9.0 == late.by_s
    assert late.contrast is not None
    assert "too small to see" == late.contrast.size


def test_two_minutes_ten_late_will_show() -> None:
    """9:30 due, out at 11:40: contrast 13 % up (10-17), as the sink said at the time."""
    (late,) = found(carried_out(lambda cue: 130.0 if cue == "A.develop.drain" else 0.0), Drained)

    assert late.contrast is not None
    percent = late.contrast.percent
    assert (13, 10, 17) == (round(percent.value), round(percent.low), round(percent.high))
    assert "will show" == late.contrast.size


@pytest.mark.parametrize(
    ("cue", "late_s", "stayed"),
    [
        ("A.fix.drain", 47.0, "longer"),
        ("A.fix.drain", 310.0, "too long"),
        ("A.stop.drain", 90.0, "too long"),
        ("A.wetting.drain", 20.0, "longer"),
    ],
)
def test_baths_that_are_at_least(cue: str, late_s: float, stayed: str) -> None:
    """A longer stay is said, and beyond the most it is said as such."""
    (timed,) = found(carried_out(lambda at: late_s if at == cue else 0.0), Timed)

    assert (stayed, late_s) == (timed.stayed, timed.by_s)


def test_a_stop_bath_under_its_least() -> None:
    """Drained after 20 s where 30 s are its least."""
    sink = opened(plan("A"))
    for asked, seconds in (
        (PourBath("A.develop"), 0.0),
        (DrainBath("A.develop", "drain"), 570.0),
        (PourBath("A.stop", STOP), 585.0),
        (DrainBath("A.stop", STOP, held=True), 605.0),
    ):
        sink.do(asked, seconds)

    assert [("too short", 30.0)] == [(one.stayed, one.limit_s) for one in found(sink, Timed)]


@pytest.mark.parametrize(("cycle", "first"), [(0, True), (4, False)])
def test_a_missed_inversion_matters_in_the_first_minute_only(cycle: int, first: bool) -> None:
    """Evenness is decided at the beginning; later there is no correction."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0.0)
    sink.do(NoteAgitation("A.develop", cycle), 60.0 * cycle + 5)

    assert [Missed((cycle,), first)] == found(sink, Missed)


def test_a_cold_reading_and_the_end_moved_for_it() -> None:
    """18.5 at 2:00 where 20.0 was planned: the end moves, and at that end little of it is left."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0.0)
    sink.do(TakeReading("tank", "A", 18.5), 120.0)
    sink.do(DrainBath("A.develop", "drain"), sink.state.tankful("A").told_end_s("A.develop"))
    (warmth,), (moved,) = found(sink, Warmth), found(sink, EndMoved)

    assert (18.5, 20.0) == (warmth.read_c, warmth.planned_c)
    assert moved.to_s > moved.from_s + 30
    assert warmth.contrast is not None
    assert "too small to see" == warmth.contrast.size
    assert [] == found(sink, Drained)


def test_the_same_reading_with_the_planned_time_kept_is_flat() -> None:
    """Drained at 9:30 all the same: early against the end told, and flat by as much."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0.0)
    sink.do(TakeReading("tank", "A", 18.5), 120.0)
    sink.do(DrainBath("A.develop", "drain", held=True), 570.0)
    (early,) = found(sink, Drained)

    assert early.by_s < -30
    assert early.contrast is not None
    assert early.contrast.percent.value < -3


def test_a_wash_of_three_fills_says_what_half_life_would_do() -> None:
    """Three fills for four: the question is asked the other way round."""
    assert [] == found(carried_out_with_fills(4), Washed)
    (washed,) = found(carried_out_with_fills(3), Washed)

    assert (3, 4) == (washed.fills, washed.planned)
    assert washed.enough_if_s is not None
    assert washed.enough_if_s > 60
    assert not washed.void


def carried_out_with_fills(fills: int) -> Sink:
    """The evening with another number of fills, five minutes each."""
    sink = opened(plan("A"))
    acts = [
        (PourBath("A.develop"), 0.0),
        (DrainBath("A.develop", "drain"), 570.0),
        (PourBath("A.stop", STOP), 585.0),
        (DrainBath("A.stop", STOP), 645.0),
        (PourBath("A.fix", FIXER), 660.0),
        (DrainBath("A.fix", FIXER), 960.0),
        (PourBath("A.wash"), 975.0),
    ]
    for asked, seconds in acts:
        sink.do(asked, seconds)
    for n in range(2, fills + 1):
        sink.do(ChangeWater("A.wash", n), 975.0 + 300 * (n - 1))
    sink.do(PourBath("A.wetting"), 975.0 + 300 * fills)
    return sink


def test_a_wrong_bottle_and_a_wrong_return() -> None:
    """Fixer poured as stop bath is an other bottle; fixer into the stop's bottle spoils it."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0.0)
    sink.do(DrainBath("A.develop", "drain"), 570.0)
    sink.do(PourBath("A.stop", FIXER), 585.0)
    sink.do(DrainBath("A.stop", STOP, held=True), 600.0)

    assert [("fix", "stop")] == [(one.poured, one.owed) for one in found(sink, OtherBottle)]
    assert [STOP] == [one.contamination.bottle for one in found(sink, Spoilt)]


def test_what_was_left_out_is_said_once_it_is_over() -> None:
    """A skipped bath with its reason, and baths that nobody poured before the tankful was ended."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0.0)
    sink.do(DrainBath("A.develop", "drain"), 570.0)
    sink.do(SkipBath("A.stop", "bottle empty"), 575.0, saw=sink.run.last_seq)
    assert [LeftOut("stop", "bottle empty", noted=True)] == found(sink, LeftOut)
    sink.do(EndTankful("A", "given up"), 600.0, saw=sink.run.last_seq)

    assert ["stop", "fix", "wash", "wetting"] == [one.bath for one in found(sink, LeftOut)]


def test_a_note_put_right_stands_where_it_belongs() -> None:
    """Drained 9 s earlier than first noted: the deviation goes, the putting right is said."""
    sink = carried_out(lambda cue: 40.0 if cue == "A.develop.drain" else 0.0)
    assert [40.0] == [one.by_s for one in found(sink, Drained)]
    drain = next(one for one in sink.run.events if one.kind == "bath-drained")
    sink.do(RetimeNote(drain.id, happened_age_s=3000.0 - 570.0, why="telephone"), 3000.0, saw=None)

    assert [] == found(sink, Drained)
    assert [("retimed", -40.0, "telephone")] == [
        (one.way, one.by_s, one.why) for one in found(sink, PutRight)
    ]


def test_own_words_stand_beside_their_tankful() -> None:
    """Words about A are not said beside B, words about the session beside both."""
    sink = opened(plan("AB"))
    sink.do(WriteNote("telephone", "A"), 5.0)
    sink.do(WriteNote("fan on"), 6.0)

    assert [Noted("telephone"), Noted("fan on")] == found(carried_out(sink=sink), Noted)
    assert [Noted("fan on")] == [
        one.what
        for one in deviations(carried_out(sink=sink, letter="B").run, "B")
        if isinstance(one.what, Noted)
    ]


def test_begun_late_is_no_fault_of_the_columns() -> None:
    """Both columns begin at the first pour; how late that was is said."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 600.0)
    sink.do(DrainBath("A.develop", "drain"), 1170.0)
    shown = beside(sink.run, "A")

    assert [Begun(600.0)] == found(sink, Begun)
    assert shown is not None
    assert (0.0, 0.0) == (shown.planned[0].start_s, shown.happened[0].start_s)
    assert (570.0, 570.0) == (shown.planned[0].for_s, shown.happened[0].for_s)
    assert [] == found(sink, Drained)


def test_nothing_poured_nothing_beside() -> None:
    """Before the first pour there is nothing to lay beside the plan."""
    sink = opened(plan("A"))

    assert beside(sink.run, "A") is None
    assert () == deviations(sink.run, "A")
