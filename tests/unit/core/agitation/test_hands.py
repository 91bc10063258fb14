"""What the hands do: count, spacing, softness, and nothing past the end."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.agitation.hands import cycle_at, hand_movements, hands_free_s
from tankside.core.agitation.patterns import ROTARY, STAND, Agitation, inversions_in

patterns = st.builds(
    Agitation,
    st.sampled_from(["inversion", "rotation"]),
    st.sampled_from([0.0, 10.0, 30.0, 60.0]),
    st.sampled_from([5.0, 10.0, 15.0]),
    st.sampled_from([20.0, 30.0, 60.0, 180.0]),
    st.sampled_from([0.0, 5.0, 10.0]),
)
ends = st.integers(30, 1500).map(float)


def test_an_evening_as_one_counts_it() -> None:
    """9:30, 30 s then 10 s each minute, pour 15: a first movement of 15 s and nine of 10."""
    moved = hand_movements(Agitation("inversion"), pour_s=15, end_s=570)

    assert [(15.0, 15.0), *((60.0 * n, 10.0) for n in range(1, 10))] == [
        (one.start_s, one.lasts_s) for one in moved
    ]


@given(pattern=patterns, end_s=ends)
def test_none_goes_past_the_end(pattern: Agitation, end_s: float) -> None:
    """Each is over by the pour-out, begun as late as it may too."""
    for one in hand_movements(pattern, pour_s=15, end_s=end_s):
        assert one.earliest_s <= one.start_s <= one.latest_s
        assert one.latest_s + one.lasts_s <= end_s + 1e-9


@given(pattern=patterns, end_s=ends, least_s=ends)
def test_none_past_what_is_needed(pattern: Agitation, end_s: float, least_s: float) -> None:
    """Beyond a bath's least time nothing need be moved; what comes before is the same."""
    needed = hand_movements(pattern, pour_s=15, end_s=end_s, needed_s=least_s)
    whole = hand_movements(pattern, pour_s=15, end_s=end_s)

    assert all(one.end_s <= min(least_s, end_s) + 1e-9 for one in needed)
    assert [one for one in whole if one.n and one.end_s <= least_s] == [one for one in needed if one.n]


@given(pattern=patterns, end_s=ends)
def test_evenly_spaced(pattern: Agitation, end_s: float) -> None:
    """Cycles stand one `every_s` apart, numbered on, the first once the first movement is over."""
    cycles = [one for one in hand_movements(pattern, pour_s=15, end_s=end_s) if one.n]

    assert all(later.start_s - one.start_s == pattern.every_s for one, later in pairwise(cycles))
    assert all(one.start_s == one.n * pattern.every_s for one in cycles)
    assert not cycles or cycles[0].start_s >= hands_free_s(pattern, pour_s=15)


@given(pattern=patterns, end_s=ends)
def test_as_many_as_fit(pattern: Agitation, end_s: float) -> None:
    """Their count is what the minutes hold: none is left out between the first movement and the end."""
    cycles = [one.n for one in hand_movements(pattern, pour_s=15, end_s=end_s) if one.n]
    free_s = hands_free_s(pattern, pour_s=15)
    wanted = [
        n
        for n in range(1, 100)
        if free_s <= n * pattern.every_s and n * pattern.every_s + pattern.then_s <= end_s
    ]

    assert wanted == cycles


@given(pattern=patterns, end_s=ends)
def test_no_two_at_once(pattern: Agitation, end_s: float) -> None:
    """At their own moments one is over before the next begins."""
    moved = hand_movements(pattern, pour_s=15, end_s=end_s)

    assert all(one.end_s <= later.start_s for one, later in pairwise(moved))


def test_continuous_is_one_movement() -> None:
    """Rolled from the pour to the pour-out."""
    (one,) = hand_movements(ROTARY, pour_s=15, end_s=570)

    assert (0, 15.0, 570.0) == (one.n, one.start_s, one.end_s)
    assert 0 == cycle_at(ROTARY, 300)


def test_stand_is_left_alone() -> None:
    """Half a minute at the start, then nothing, however long it stands."""
    (one,) = hand_movements(STAND, pour_s=15, end_s=3600)

    assert (15.0, 30.0) == (one.start_s, one.end_s)


@pytest.mark.parametrize("pattern", [None, Agitation("none")])
def test_nobody_moves_a_wash(pattern: Agitation | None) -> None:
    """No pattern, or none: no movement."""
    assert () == hand_movements(pattern, pour_s=15, end_s=300)


@pytest.mark.parametrize(("had_s", "cycle"), [(0, 0), (59, 0), (60, 1), (185, 3)])
def test_which_was_due_last(had_s: float, cycle: int) -> None:
    """'I missed one' means the last that was due."""
    assert cycle == cycle_at(Agitation("inversion"), had_s)


def test_four_inversions_in_ten_seconds() -> None:
    """Common practice."""
    assert [4, 2, 12] == [inversions_in(for_s) for for_s in (10, 5, 30)]
