"""Scenario: a litre of rapid fixer with mixed film behind it, and its test piece."""

from __future__ import annotations

import pytest

from tankside.core.permanence.capacity import Fixed, capacity_left
from tankside.core.permanence.clearing import ClearingTest, judge_clearing
from tankside.core.refusals import Refused

SEASON = (Fixed(7.0), Fixed(2.0), Fixed(6 * 0.25), Fixed(3.0, tabular=True))


def test_a_litre_after_a_season() -> None:
    """Seven 135, two 120, six sheets and three tabular rolls are 15 units; 5 to 10 are left."""
    left = capacity_left(SEASON, working_ml=1000)

    assert (left.used_units, left.left_planned, left.left_named) == (15.0, 5.0, 10.0)
    assert (left.ordinary_rolls, left.tabular_rolls) == (5, 3)


def test_one_more_tabular_roll_is_counted_half_again() -> None:
    """A fourth tabular roll leaves 3.5 units: three ordinary or two tabular rolls."""
    left = capacity_left((*SEASON, Fixed(1.0, tabular=True)), working_ml=1000)

    assert (left.left_planned, left.ordinary_rolls, left.tabular_rolls) == (3.5, 3, 2)


def test_a_cold_test_piece_is_judged_at_the_fresh_temperature() -> None:
    """75 s at 15 C against 45 s at 20 C is 1.18 times: good, and the real time gives the fix."""
    answer = judge_clearing(ClearingTest(45, 20), ClearingTest(75, 15))

    assert (round(answer.ratio, 2), answer.verdict) == (1.18, "good")
    assert (answer.fix_s, answer.fix_tabular_s) == (150.0, 225.0)


@pytest.mark.parametrize(("seconds", "ratio", "verdict"), [(92, 2.04, "discard"), (89, 1.98, "good")])
def test_doubled_clearing_ends_the_fixer(seconds: float, ratio: float, verdict: str) -> None:
    """92 s at 20 C ends it though five units are left by count; 89 s does not."""
    answer = judge_clearing(ClearingTest(45, 20), ClearingTest(seconds, 20))

    assert (ratio, verdict) == (round(answer.ratio, 2), answer.verdict)


@pytest.mark.parametrize(("water_parts", "planned"), [(3, 20.0), (4, 20.0), (7, 12.5), (9, 10.0)])
def test_thinner_fixer_counts_for_less(water_parts: float, planned: float) -> None:
    """Half the concentrate, half the count; stronger than 1+4 is counted for no more."""
    assert planned == capacity_left([], working_ml=1000, water_parts=water_parts).left_planned


def test_too_thin_to_fix_film() -> None:
    """Past 1+9 nothing is counted."""
    with pytest.raises(Refused) as no:
        capacity_left([], working_ml=1000, water_parts=14)

    assert "fixer-too-thin" == no.value.refusal.code
