"""Two scales on one vessel."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.web.drawing.stock import long_step, stock


def test_level_and_stripe_answer_different_questions() -> None:
    """A litre at 940 mL stands 6 % under the brim; 9 to 15 of 25 rolls leave 10 used and 6 doubtful."""
    one = stock(capacity_ml=1000, holds_ml=940, rolls_at_most=25, rolls_left=(9, 15), top=0, height_px=100)

    assert 6 == pytest.approx(one.level_px)
    assert (40, 24, 36) == pytest.approx((one.used.height, one.doubtful.height, one.left.height))
    assert (one.used.bottom, one.doubtful.bottom, 100) == pytest.approx(
        (one.doubtful.y, one.left.y, one.left.bottom)
    )


def test_words_without_room_are_dropped() -> None:
    """A part under 18 px has no word inside the glass."""
    one = stock(capacity_ml=500, holds_ml=100, rolls_at_most=20, rolls_left=(1, 1), height_px=100)

    assert one.used_word_px is not None
    assert one.left_word_px is None


def test_more_left_than_ever_was_is_a_fault() -> None:
    """The stripe cannot rise above its scale."""
    with pytest.raises(ValueError, match="rolls left rise"):
        stock(capacity_ml=500, holds_ml=100, rolls_at_most=20, rolls_left=(5, 21))


@given(st.floats(1, 5000), st.floats(60, 400))
def test_numbered_steps_are_round_and_apart(high: float, length_px: float) -> None:
    """1, 2 or 5 times a power of ten, at least 22 px."""
    step = long_step(high, length_px)

    assert step * length_px / high >= 22 - 1e-6
    assert f"{step:.0e}"[0] in "125"


@given(st.floats(1, 100))
def test_rolls_are_never_split(most: float) -> None:
    """No mark stands for part of a roll."""
    one = stock(capacity_ml=1000, holds_ml=500, rolls_at_most=most, rolls_left=(0, 0))

    assert all(mark.value == pytest.approx(round(mark.value)) for mark in one.rolls.marks)
