"""Laws of development time: longer and warmer count more, and what counts adds up."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.development.contrast import contrast_at
from tankside.core.development.equivalent_time import equivalent_time, time_needed
from tankside.core.rates import Q10

PATH = st.lists(st.floats(15, 27), min_size=3, max_size=9)
FACTOR = st.floats(1.2, 4)


def on_a_grid(temps_c: list[float]) -> tuple[np.ndarray, np.ndarray]:
    """A path with a point each minute."""
    return np.linspace(0, 60.0 * (len(temps_c) - 1), len(temps_c)), np.array(temps_c)


@given(temps_c=PATH, q10=FACTOR, by_k=st.floats(0.05, 3))
def test_warmer_counts_more_and_needs_less(temps_c: list[float], q10: float, by_k: float) -> None:
    """The whole path by the same degrees: more has counted, and the same is reached sooner."""
    times_s, path_c = on_a_grid(temps_c)
    law = Q10(q10)
    needed_s = 0.9 * float(equivalent_time(times_s, path_c, law))

    assert equivalent_time(times_s, path_c + by_k, law) > equivalent_time(times_s, path_c, law)
    assert time_needed(needed_s, times_s, path_c + by_k, law) < time_needed(needed_s, times_s, path_c, law)


@given(temps_c=PATH, q10=FACTOR, cut=st.integers(1, 8))
def test_what_counts_adds_up(temps_c: list[float], q10: float, cut: int) -> None:
    """A development in two parts counts as both together, and more of it never as less."""
    times_s, path_c = on_a_grid(temps_c)
    at, law = min(cut, len(temps_c) - 2), Q10(q10)
    first = float(equivalent_time(times_s[: at + 1], path_c[: at + 1], law))
    second = float(equivalent_time(times_s[at:] - times_s[at], path_c[at:], law))

    assert 0 < first < float(equivalent_time(times_s, path_c, law))
    assert first + second == pytest.approx(float(equivalent_time(times_s, path_c, law)))


@given(
    time_s=st.floats(60, 1800),
    more_s=st.floats(1, 600),
    c_inf=st.floats(0.7, 1.4),
    k_min=st.floats(0.03, 0.4),
)
def test_longer_never_gives_less_contrast(time_s: float, more_s: float, c_inf: float, k_min: float) -> None:
    """It rises, ever more slowly, and never past what the film can give."""
    soon, late, latest = (
        float(contrast_at(time_s + n * more_s, c_inf=c_inf, k_per_s=k_min / 60)) for n in (0, 1, 2)
    )

    assert 0 <= soon <= late <= latest <= c_inf
    assert latest - late <= late - soon + 1e-12
