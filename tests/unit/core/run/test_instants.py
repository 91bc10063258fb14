"""Instants: elapsed time within a boot, wall time across boots."""

from __future__ import annotations

from tankside.core.run.instants import Instant


def test_within_a_boot_a_jump_of_the_wall_clock_changes_nothing() -> None:
    """The wall clock is set back an hour between two taps 30 s apart."""
    first = Instant(wall_us=3_700_000_000, elapsed_us=10_000_000, boot="a")
    second = Instant(wall_us=130_000_000, elapsed_us=40_000_000, boot="a")
    assert second.seconds_since(first) == 30.0


def test_across_boots_the_wall_clock_decides() -> None:
    """After a restart the elapsed clock begins again at nothing."""
    before = Instant(wall_us=1_000_000_000, elapsed_us=900_000_000, boot="a")
    after = Instant(wall_us=1_330_000_000, elapsed_us=5_000_000, boot="b")
    assert after.seconds_since(before) == 330.0
