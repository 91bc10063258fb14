"""Laws of words beside a scale."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import minimize

from tankside.web.drawing.leaders import Words, elbow, spread

WISHES = st.lists(
    st.builds(Words, at_px=st.floats(0, 600), height_px=st.floats(14, 60), rank=st.integers(0, 3)),
    max_size=12,
).map(lambda words: sorted(words, key=lambda one: one.at_px))


@given(WISHES, st.floats(40, 700))
def test_words_keep_order_room_and_distance(wishes: list[Words], bottom: float) -> None:
    """Placed words stand in the order of their marks, inside their room, and never on each other."""
    placed = spread(wishes, top_px=0, bottom_px=bottom)
    shown = [
        (one.words_px, wish.height_px)
        for one, wish in zip(placed, wishes, strict=True)
        if one.words_px is not None
    ]

    assert all(y - h / 2 >= -0.01 and y + h / 2 <= bottom + 0.01 for y, h in shown)
    assert all(below - above >= (h + k) / 2 - 0.01 for (above, h), (below, k) in pairwise(shown))


@given(WISHES, st.floats(40, 700))
def test_dropped_words_keep_their_marks(wishes: list[Words], bottom: float) -> None:
    """Every mark is answered where it stands, whether its words found room or not."""
    assert [one.at_px for one in wishes] == [one.at_px for one in spread(wishes, top_px=0, bottom_px=bottom)]


@given(WISHES, st.floats(40, 400))
def test_nothing_is_dropped_without_need(wishes: list[Words], bottom: float) -> None:
    """Words are dropped only where all together are taller than the room."""
    assume(sum(one.height_px for one in wishes) <= bottom)

    assert all(one.words_px is not None for one in spread(wishes, top_px=0, bottom_px=bottom))


@given(WISHES, st.floats(40, 300))
def test_the_least_rank_goes_first(wishes: list[Words], bottom: float) -> None:
    """No word is dropped while one of lower rank is kept."""
    placed = list(zip(spread(wishes, top_px=0, bottom_px=bottom), wishes, strict=True))
    dropped = [wish.rank for one, wish in placed if one.words_px is None]
    kept = [wish.rank for one, wish in placed if one.words_px is not None]

    assert not dropped or not kept or max(dropped) <= min(kept)


@pytest.mark.parametrize("seed", range(8))
def test_shifts_are_least_by_another_solver(seed: int) -> None:
    """The sum of squared shifts is the one that SciPy's SLSQP finds for the same constraints."""
    draws = np.random.default_rng(seed)
    at, heights = np.sort(draws.uniform(0, 300, 7)), draws.uniform(14, 40, 7)
    wishes = [Words(float(y), float(h)) for y, h in zip(at, heights, strict=True)]
    apart = (heights[1:] + heights[:-1]) / 2
    bounds = [(h / 2, 320 - h / 2) for h in heights]
    keep_apart = {"type": "ineq", "fun": lambda y: np.diff(y) - apart}
    judge = minimize(
        lambda y: float(np.sum((y - at) ** 2)),
        np.linspace(20, 300, 7),
        jac=lambda y: 2 * (y - at),
        method="SLSQP",
        bounds=bounds,
        constraints=[keep_apart],
        options={"maxiter": 500, "ftol": 1e-9},
    )

    ours = np.array([one.words_px for one in spread(wishes, top_px=0, bottom_px=320)], dtype=float)

    assert judge.success
    assert judge.fun == pytest.approx(float(np.sum((ours - at) ** 2)), rel=1e-4, abs=1e-3)


def test_a_crowd_gives_up_its_least_word() -> None:
    """Three words at one mark, none further than 12 px: the one of least rank goes, a lone one stays."""
    wishes = [Words(50, 20, 2), Words(50, 20, 1), Words(50, 20, 2), Words(200, 20, 0)]

    placed = spread(wishes, top_px=0, bottom_px=300, farthest_px=12)

    assert [40.0, None, 60.0, 200.0] == [one.words_px for one in placed]


def test_words_come_in_the_order_of_their_marks() -> None:
    """A wish out of order is a fault of the caller."""
    with pytest.raises(ValueError, match="in the order of their marks"):
        spread([Words(20, 10), Words(10, 10)], top_px=0, bottom_px=100)


def test_an_elbow_to_the_left() -> None:
    """Out of the mark, slanted, level into words that stand at the left."""
    assert "M100 10h-8L68 30H60" == elbow(from_x=100, from_y=10, to_x=60, to_y=30)
