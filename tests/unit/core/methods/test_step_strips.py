"""Tablets and strips as they were read: order, places, what may fall and what may not."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from uuid import UUID

import pytest

from tankside.core.methods.step_strips import (
    Exposed,
    StepStrip,
    Tablet,
    curve_strip,
    even_tablet,
    latest,
    read_through,
)
from tankside.core.refusals import Refused

FIVE = even_tablet(5, step=0.3)
STRIP = StepStrip(
    UUID(int=1), datetime(2026, 11, 25, tzinfo=UTC), UUID(int=2), "", (1.4, 1.0, None, 0.5, 0.3), "mine", FIVE
)  # fmt: skip
SIX = replace(STRIP, densities=(1.4, 1.2, 1.0, None, 0.5, 0.3), patches=even_tablet(6, step=0.3))


def test_the_common_tablet_ends_at_3_05() -> None:
    """21 steps of 0.15, as an owner of one notes from its maker's data."""
    assert (21, 3.05) == (len(even_tablet()), even_tablet()[-1])


def test_either_end_may_be_read_first() -> None:
    """The clearest patch is the densest on the film, and that tells the order."""
    assert read_through("0.3 0.4 0.6 0.9 1.3", FIVE) == read_through("1.3 0.9 0.6 0.4 0.3", FIVE)


def test_a_table_of_steps_leaves_gaps() -> None:
    """Steps that were not read stay unread."""
    assert (1.3, None, 0.6, 0.4, None) == read_through("step,density\n1,1.3\n3,0.6\n4,0.4", FIVE).densities


def test_exposure_is_what_the_tablet_lets_through() -> None:
    """Log exposure through a patch is that through clear less its density; lowest first, gaps left out."""
    told = curve_strip(replace(SIX, exposed=Exposed(log_h0=-0.2)))

    assert [-1.75, -1.45, -0.85, -0.55, -0.25] == pytest.approx(list(told.log_h))
    assert [0.3, 0.5, 1.0, 1.2, 1.4] == list(told.density)


@pytest.mark.parametrize(("falls_by", "refused"), [(0.08, False), (0.09, True)])
def test_a_density_may_fall_by_its_error_and_no_more(falls_by: float, refused: bool) -> None:
    """Three standard deviations of a difference of two readings to 0.02 are 0.085."""
    strip = replace(SIX, densities=(1.4 - falls_by, 1.4, 1.0, None, 0.5, 0.3))
    if not refused:
        assert 5 == len(curve_strip(strip).density)
        return
    with pytest.raises(Refused) as caught:
        curve_strip(strip)
    assert ("density-falls", 0.09, 0.08) == (
        caught.value.refusal.code, caught.value.refusal.numbers["by"], caught.value.refusal.numbers["limit"],
    )  # fmt: skip


@pytest.mark.parametrize(
    ("densities", "code"),
    [
        ((0.1, 0.2, 0.3, 0.4), "tablet-steps-out-of-range"),
        ((0.1, 0.2, 0.2, 0.4, 0.5), "tablet-not-rising"),
        ((-0.1, 0.2, 0.3, 0.4, 0.5), "step-density-out-of-range"),
        ((0.1, 0.2, 0.3, 0.4, 7.0), "step-density-out-of-range"),
    ],
)
def test_what_is_no_tablet(densities: tuple[float, ...], code: str) -> None:
    """Too few, not rising, or none of a density."""
    with pytest.raises(Refused) as caught:
        Tablet(UUID(int=3), "odd", densities)

    assert code == caught.value.refusal.code


@pytest.mark.parametrize(("steps", "step"), [(4, 0.15), (61, 0.15), (21, 0.01), (21, 0.7)])
def test_what_is_no_even_tablet(steps: int, step: float) -> None:
    """Of too few or too many steps, or steps nobody makes."""
    with pytest.raises(Refused):
        even_tablet(steps, step=step)


def test_only_the_newest_reading_of_a_strip_counts() -> None:
    """Replaced once and twice."""
    second = replace(STRIP, key=UUID(int=5), replaces=STRIP.key)
    third = replace(STRIP, key=UUID(int=6), replaces=second.key)

    assert (third,) == latest([STRIP, second, third])
