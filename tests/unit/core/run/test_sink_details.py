"""Smaller things that the sink says: cues due, beads, the wash, misses, skips, changes of plan."""

from __future__ import annotations

from dataclasses import replace

import pytest
from unit.core.run.evening import STOP, Sink, at, opened, plan

from tankside.core.permanence.washing import FLOOR_G_M2, HALF_LIFE_PLANNED_S, Held, residual_after_fills
from tankside.core.refusals import Refused
from tankside.core.run.commands import (
    AnswerDoubt,
    ChangePlan,
    ChangeWater,
    CloseRun,
    DrainBath,
    EndTankful,
    NoteAgitation,
    PourBath,
    SkipBath,
    TakeReading,
)
from tankside.core.run.cue_script import due
from tankside.core.run.sink_view import TankfulView, sink_view
from tankside.core.run.upcast import upcast


def developing() -> Sink:
    """A developer poured at 20:00."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    return sink


def shown(sink: Sink, seconds: float) -> TankfulView:
    """Tankful A at that second."""
    return sink_view(sink.state, at(seconds)).tankfuls[0]


def test_cues_fall_due_once() -> None:
    """Between 0:59 and 2:01 there are two inversions; after an early end there is none."""
    sink = developing()
    first = due(sink.state, at(59).wall_us, at(121).wall_us)
    assert [one.id for one in first] == ["A.develop.invert-1", "A.develop.invert-2"]
    sink.do(DrainBath("A.develop", held=True), 130)
    assert due(sink.state, at(131).wall_us, at(400).wall_us)[0].id == "A.stop.pour"


def test_inversions_are_beads_done_unless_missed() -> None:
    """The second was missed: an open bead at its own time."""
    sink = developing()
    sink.do(NoteAgitation("A.develop"), 125)
    inversions = [one for one in shown(sink, 190).beads if one.kind == "invert"]
    assert [(one.n, one.done) for one in inversions] == [(0, True), (1, True), (2, False), (3, True)]


def test_the_wash_is_reckoned_from_its_true_soaks() -> None:
    """Fills of 5:00, 4:00 and one under way; judged by the model of the wash."""
    sink = developing()
    for asked, seconds in (
        (DrainBath("A.develop"), 570),
        (PourBath("A.fix"), 600),
        (DrainBath("A.fix"), 900),
        (PourBath("A.wash"), 1000),
        (ChangeWater("A.wash", 2), 1300),
        (ChangeWater("A.wash", 3), 1540),
    ):
        sink.do(asked, seconds)
    view = shown(sink, 1600).bath
    assert view is not None
    assert (view.fill, view.fills) == (3, 4)
    assert view.end_us == at(1840).wall_us
    assert view.wash is not None
    assert view.wash.start_g_m2 == pytest.approx(0.002 * 119.8 / 0.0516128)
    expected = residual_after_fills(
        soaks_s=(300, 240, 60), fill_ml=500, half_life_s=HALF_LIFE_PLANNED_S, held=Held()
    )
    told = [one.slow_g_m2 for one in (*view.wash.done, view.wash.now)]
    assert told == [pytest.approx(one) if one >= FLOOR_G_M2 else None for one in expected]
    assert view.wash.last.n == 4


def test_a_bath_is_skipped_with_a_reason() -> None:
    """Without a reason no; with one the fixer comes next."""
    sink = developing()
    with pytest.raises(Refused):
        sink.do(SkipBath("A.stop", " "), 10)
    sink.do(SkipBath("A.stop", "water instead"), 11)
    sink.do(DrainBath("A.develop"), 570)
    assert shown(sink, 575).next_bath == "A.fix"


def test_a_change_of_plan_keeps_what_happened_and_may_not_drop_what_is_in_the_tank() -> None:
    """A second tankful joins; a plan without A's developer is refused, an old number too."""
    sink = developing()
    more = replace(plan("AB"), number=2)
    sink.do(ChangePlan(more, "a second roll"), 100)
    assert [one.letter for one in sink.state.tankfuls] == ["A", "B"]
    assert shown(sink, 100).bath is not None
    for bad, code in ((replace(plan("B"), number=3), "plan-drops-bath"), (more, "plan-outdated")):
        with pytest.raises(Refused) as no:
            sink.do(ChangePlan(bad, "why not"), 110)
        assert no.value.refusal.code == code


def test_a_run_closes_once_nothing_is_open_or_when_it_is_broken_off() -> None:
    """A tankful under way is named; given up, the run may close, and then no request is taken."""
    sink = developing()
    with pytest.raises(Refused) as no:
        sink.do(CloseRun(), 10)
    assert no.value.refusal.numbers["tankfuls"] == "A"
    sink.do(EndTankful("A", "given up"), 11)
    sink.do(CloseRun(), 12)
    with pytest.raises(Refused) as no:
        sink.do(SkipBath("A.stop", "late"), 13)
    assert no.value.refusal.code == "run-closed"
    sink.do(DrainBath("A.develop"), 600)
    assert sink.state.tankful("A").in_tank is None


def test_a_doubt_is_cleared_by_an_answer() -> None:
    """Poured twice, more than 20 s apart: asked once, answered, gone."""
    sink = developing()
    sink.do(PourBath("A.develop"), 60)
    (doubt,) = sink_view(sink.state, at(61)).doubts
    assert (doubt.code, doubt.by_s) == ("poured-twice", 60.0)
    sink.do(AnswerDoubt(doubt.id, "as noted"), 62)
    assert sink_view(sink.state, at(63)).doubts == ()
    with pytest.raises(Refused):
        sink.do(AnswerDoubt(doubt.id, "as noted"), 64)


def test_a_newer_body_is_not_guessed_at() -> None:
    """A program that is too old for a log says so."""
    with pytest.raises(ValueError, match="newer program"):
        upcast("bath-poured", 2, {})
    with pytest.raises(ValueError, match="newer program"):
        upcast("bath-sung-to", 1, {})


def test_the_next_bath_may_be_measured_before_its_ring() -> None:
    """At 3:00 the main act is still the draining; measuring stands among the others, ready to be sent."""
    sink = developing()
    view = shown(sink, 180)
    assert view.main is not None
    assert view.main.cue.kind == "drain"
    (early,) = [one for one in view.others if one.code == "measure-now"]
    assert early.asked is not None
    sink.do(early.asked, 185)
    later = shown(sink, 520)
    assert later.main is not None
    assert later.main.cue.kind == "drain"
    assert [one.kind for one in later.beads if one.bath == "A.stop"] == ["measured"]


def test_a_wrong_bottle_is_no_developer_for_the_end() -> None:
    """A reading in stop bath that was taken for the developer moves no end."""
    sink = opened(plan("A", room_c=16.0))
    sink.do(PourBath("A.develop", bottle=STOP), 0)
    assert [one.kind for one in sink.do(TakeReading("tank", "A", 17.0), 60)] == ["reading-taken"]
