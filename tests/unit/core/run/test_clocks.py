"""Clocks that part, boots that begin anew, and what the person says of them."""

from __future__ import annotations

from unit.core.run.evening import START_US, opened, plan

from tankside.core.run.commands import Command, PourBath, SettleClock, WriteNote
from tankside.core.run.decide import decide
from tankside.core.run.doubts import doubts
from tankside.core.run.events import ClockDoubted
from tankside.core.run.instants import Instant
from tankside.core.run.replay import follow
from tankside.core.run.state import Run
from tankside.web.screen.doubted import doubted_s


def noted(run: Run, number: int, asked: WriteNote | PourBath | SettleClock, now: Instant) -> Run:
    """One command more."""
    return follow(run, decide(run, Command(f"desk:{number}", asked), now).events)


def boot_two(seconds: float) -> Instant:
    """A second of the evening as the machine sees it after it was started anew at 20:05."""
    return Instant(START_US + round(seconds * 1e6), round((seconds - 300) * 1e6), "second")


def test_across_a_restart_the_wall_clock_counts_on() -> None:
    """Poured before the restart, drained after it: the bath had 9:30."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    run = noted(sink.run, 1, WriteNote("back"), boot_two(570))
    apart_us = run.state.timeline.at_us(boot_two(570)) - run.state.tankful("A").passes[0].poured.at_us
    assert apart_us == 570_000_000
    assert run.state.clock_doubts == ()


def test_a_boot_that_begins_in_the_past_is_doubted_and_can_be_settled() -> None:
    """The second boot's clock is an hour slow; the person says that the first one was right."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    slow = Instant(START_US - 3_600_000_000, 1_000_000, "second")
    run = noted(sink.run, 1, WriteNote("back"), slow)
    (doubt,) = run.state.clock_doubts
    assert (doubt.by_s, doubt.across) == (-3600.0, True)
    run = noted(run, 2, SettleClock("elapsed"), slow.before(seconds=-5))
    assert run.state.clock_doubts[0].settled
    assert run.state.timeline.at_us(slow) == START_US


def test_a_boot_that_begins_in_the_past_doubts_only_what_was_poured_before_it() -> None:
    """Three minutes slow: as much less may be left of the developer, nothing of a bath poured since."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    sink.do(WriteNote("still here"), 240)
    slow = Instant(START_US + 60_000_000, 1_000_000, "second")
    run = noted(sink.run, 1, WriteNote("back"), slow)
    assert 180.0 == doubted_s(run, run.state.tankful("A"))
    later = noted(run, 2, PourBath("A.stop"), slow.before(seconds=-300))
    assert 0.0 == doubted_s(later, later.state.tankful("A"))
    settled = noted(run, 2, SettleClock("elapsed"), slow.before(seconds=-5))
    assert 0.0 == doubted_s(settled, settled.state.tankful("A"))


def test_a_jump_is_doubted_once_and_settling_moves_no_interval() -> None:
    """The wall clock jumps an hour within a boot: one doubt, then none, and the bath keeps its seconds."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    sink.wall_jump_s = 3600.0
    for seconds in (10, 20, 30):
        sink.do(WriteNote("still here"), seconds)
    doubted = [one for one in sink.run.events if isinstance(one.body, ClockDoubted)]
    assert [one.body.by_s for one in doubted] == [3600.0]  # type: ignore[union-attr]
    before = [one.mark.at_us for one in sink.state.written]
    sink.do(SettleClock("wall"), 40)
    after = [one.mark.at_us for one in sink.state.written]
    assert [b - a for a, b in zip(before, after, strict=True)] == [3_600_000_000] * 3
    assert sink.state.clock_doubts[0].settled
    sink.do(WriteNote("quiet"), 50)
    assert len(sink.state.clock_doubts) == 1


def test_two_questions_about_one_boot_are_two() -> None:
    """A boot that began in the past, and whose clock then jumped: answering the one leaves the other."""
    sink = opened(plan("A"))
    slow = Instant(START_US - 3_600_000_000, 1_000_000, "second")
    run = noted(sink.run, 1, WriteNote("back"), slow)
    jumped = Instant(slow.wall_us + 60_000_000, slow.elapsed_us + 5_000_000, "second")
    run = noted(run, 2, WriteNote("on"), jumped)
    assert [(one.across, one.by_s) for one in run.state.clock_doubts] == [(True, -3540.0), (False, 55.0)]
    run = noted(run, 3, SettleClock("elapsed"), jumped.before(seconds=-1))
    assert [(one.across, one.settled) for one in run.state.clock_doubts] == [(True, False), (False, True)]
    run = noted(run, 4, SettleClock("wall"), jumped.before(seconds=-2))
    assert all(one.settled for one in run.state.clock_doubts)


def test_the_doubt_that_is_answered_is_the_one_that_was_asked() -> None:
    """Two boots, two doubts on the screen: the way beside the first settles the first."""
    sink = opened(plan("A"))
    sink.wall_jump_s = 90.0
    sink.do(WriteNote("still here"), 10)
    slow = Instant(START_US - 3_600_000_000, 1_000_000, "second")
    run = noted(sink.run, 1, WriteNote("back"), slow)
    of_first = next(one for one in doubts(run.state) if one.code == "clock")
    way = of_first.ways[0].asked
    assert isinstance(way, SettleClock)
    run = noted(run, 2, way, slow.before(seconds=-5))
    assert ["clock-across"] == [one.code for one in doubts(run.state)]
