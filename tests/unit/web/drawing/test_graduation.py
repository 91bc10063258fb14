"""Laws of the engraved scale."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.web.drawing.graduation import Graduation, graduation

SCALES = st.builds(
    graduation,
    low=st.floats(-50, 50),
    high=st.floats(60, 5000),
    unit=st.sampled_from([0.1, 0.25, 1.0, 1 / 6, 10.0, 50.0]),
    length_px=st.floats(20, 1200),
    middle=st.sampled_from([2, 3, 5]),
    long=st.sampled_from([4, 6, 10]),
    upward=st.booleans(),
)


def gaps(places: list[float]) -> list[float]:
    """Distances between neighbours."""
    return [after - before for before, after in pairwise(places)]


@given(SCALES)
def test_marks_stand_at_least_4_px_apart(scale: Graduation) -> None:
    """However short the scale."""
    assert [] == [gap for gap in gaps([mark.at_px for mark in scale.marks]) if gap < 4 - 0.002]


@given(SCALES)
def test_numerals_stand_at_least_22_px_apart(scale: Graduation) -> None:
    """However short the scale, and only at long marks."""
    places = [one.at_px for one in scale.numerals]

    assert [] == [gap for gap in gaps(places) if gap < 22 - 0.002]
    assert set(places) <= {mark.at_px for mark in scale.marks if mark.size == "long"}


@given(SCALES)
def test_marks_stay_on_their_scale_and_where_their_value_is(scale: Graduation) -> None:
    """A mark stands where its own value is read."""
    assert all(-0.01 <= mark.at_px <= scale.length_px + 0.01 for mark in scale.marks)
    assert [mark.at_px for mark in scale.marks] == [scale.at(mark.value) for mark in scale.marks]


def test_ten_minutes_by_ten_seconds() -> None:
    """Long at minutes, middle at half minutes, numerals at each minute; counted by hand."""
    scale = graduation(
        low=0, high=600, unit=10, middle=3, long=6, length_px=600, words=lambda s: f"{s / 60:g}"
    )

    assert (11, 10, 40) == tuple(
        sum(mark.size == size for mark in scale.marks) for size in ("long", "middle", "short")
    )
    assert [str(n) for n in range(11)] == [one.text for one in scale.numerals]
    assert 60.0 == scale.numerals[1].at_px


def test_a_short_scale_drops_the_tens_of_seconds_first() -> None:
    """At 0.35 px a second tens of seconds would be 3.5 px apart: half minutes stay, minutes stay numbered."""
    scale = graduation(low=0, high=600, unit=10, middle=3, long=6, length_px=210)

    assert {"middle", "long"} == {mark.size for mark in scale.marks}
    assert [0, 120, 240, 360, 480, 600] == [float(one.text) for one in scale.numerals]


def test_volume_runs_up_as_in_glass() -> None:
    """The foot is nothing, the top is full."""
    scale = graduation(low=0, high=300, unit=20, length_px=150, upward=True)

    assert (150.0, 0.0) == (scale.at(0), scale.at(300))


def test_marks_are_counted_from_zero() -> None:
    """A scale from 3 to 23 has its long marks at 10 and 20."""
    scale = graduation(low=3, high=23, unit=1, length_px=200)

    assert [10, 20] == [mark.value for mark in scale.marks if mark.size == "long"]


def test_a_scale_needs_a_length_and_a_range() -> None:
    """Nothing can be engraved on nothing."""
    for wrong in ({"high": 0.0}, {"length_px": 0.0}, {"unit": 0.0}):
        with pytest.raises(ValueError, match="a scale needs"):
            graduation(**{"low": 0.0, "high": 10.0, "unit": 1.0, "length_px": 100.0, **wrong})
