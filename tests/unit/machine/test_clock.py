"""The machine's clock and the paced one of the demo."""

from __future__ import annotations

import time
from pathlib import Path

import pytest
from evening_clock import SetClock

from tankside.core.run.instants import Instant
from tankside.machine.clock import MachineClock, PacedClock

START = Instant(wall_us=1_000_000_000, elapsed_us=0, boot="evening")


def test_the_wall_time_is_that_of_the_system() -> None:
    """An instant lies between two looks at the system's own clock."""
    before = time.time_ns() // 1000
    wall_us = MachineClock().now().wall_us
    assert before <= wall_us <= time.time_ns() // 1000


def test_elapsed_time_never_runs_back() -> None:
    """A hundred looks in a row are in order."""
    clock = MachineClock()
    elapsed = [clock.now().elapsed_us for _ in range(100)]
    assert sorted(elapsed) == elapsed


def test_two_clocks_of_one_boot_name_the_same_boot(tmp_path: Path) -> None:
    """The kernel's name of the boot is taken as it stands."""
    named = tmp_path / "boot_id"
    named.write_text("5a1e\n", encoding="ascii")
    assert {"5a1e"} == {MachineClock(named).now().boot, MachineClock(named).now().boot}


def test_without_a_name_of_the_boot_each_process_is_its_own(tmp_path: Path) -> None:
    """Two stand-ins differ, so that wall time decides between them."""
    missing = tmp_path / "nothing"
    assert MachineClock(missing).now().boot != MachineClock(missing).now().boot


def test_a_paced_clock_begins_at_its_start() -> None:
    """Nothing has gone by yet."""
    now = PacedClock(SetClock(), pace=30, start=START).now()
    assert (START.wall_us, START.elapsed_us) == (now.wall_us, now.elapsed_us)


def test_a_paced_clock_runs_as_many_times_faster() -> None:
    """At pace 30 two seconds are one minute, on both of its times."""
    under = SetClock()
    paced = PacedClock(under, pace=30, start=START)
    first = paced.now()
    under.pass_s(2)
    second = paced.now()
    assert second.seconds_since(first) == 60.0
    assert second.wall_us - first.wall_us == 60_000_000


def test_a_jump_of_the_wall_clock_does_not_move_a_paced_clock() -> None:
    """It counts on elapsed time underneath."""
    under = SetClock()
    paced = PacedClock(under, pace=10, start=START)
    first = paced.now()
    under.set_wall_by_s(3600)
    assert first == paced.now()


def test_two_paced_clocks_are_two_boots() -> None:
    """The elapsed time of one says nothing about that of the other."""
    under = SetClock()
    first = PacedClock(under, pace=10, start=START).now()
    under.pass_s(1)
    assert first.boot != PacedClock(under, pace=10, start=START).now().boot


def test_a_clock_that_stands_still_is_no_clock() -> None:
    """A pace of nothing is a mistake of the program."""
    with pytest.raises(ValueError, match="forward"):
        PacedClock(SetClock(), pace=0, start=START)
