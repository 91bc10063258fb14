"""Time that counts: forward and back, many draws at once, starts that make it right."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.development.equivalent_time import (
    counted_so_far,
    equivalent_time,
    equivalent_time_of_drift,
    start_that_makes_it_right,
    time_needed,
)
from tankside.core.rates import Q10, Arrhenius
from tankside.core.refusals import Refused

TEMPS = st.lists(st.floats(15, 27), min_size=3, max_size=12)


@given(temps=TEMPS, q10=st.floats(1.2, 4), share=st.floats(0.02, 0.98))
def test_time_needed_undoes_equivalent_time(temps: list[float], q10: float, share: float) -> None:
    """The time at which part of the whole has counted counts that part."""
    times = np.linspace(0, 15.0 * (len(temps) - 1), len(temps))
    path = np.array(temps)
    wanted = share * float(equivalent_time(times, path, Q10(q10)))
    at = float(time_needed(wanted, times, path, Q10(q10)))
    cut = np.union1d(times[times < at], [at])
    counted = float(equivalent_time(cut, np.interp(cut, times, path), Q10(q10)))

    assert wanted == pytest.approx(counted, rel=1e-4)


def test_at_the_reference_time_counts_itself() -> None:
    """At 20 C a minute is a minute, by either law."""
    times = np.array([0.0, 100.0, 600.0])

    assert pytest.approx(600) == float(equivalent_time(times, np.full(3, 20.0), Q10(2.9)))
    assert pytest.approx(600) == float(equivalent_time(times, np.full(3, 20.0), Arrhenius(80.0)))


def test_beyond_its_end_the_path_stays() -> None:
    """A needed time longer than the path goes on at the last temperature."""
    needed = time_needed(700, np.array([0.0, 600.0]), np.array([20.0, 20.0]), Q10())

    assert pytest.approx(700) == float(needed)


def test_draws_agree_with_one_at_a_time() -> None:
    """Rows of paths with a factor each give what each gives alone."""
    times = np.linspace(0, 900, 61)
    paths = np.array([[19.0], [20.5], [22.0]]) - times / 2000
    factors = np.array([1.6, 2.2, 2.8])
    together = time_needed(570, times, paths, Q10(factors))
    alone = [float(time_needed(570, times, path, Q10(f))) for path, f in zip(paths, factors, strict=True)]

    assert alone == pytest.approx(together)
    assert counted_so_far(times, paths, Q10(factors)).shape == paths.shape


def test_the_closed_form_agrees_with_the_pieces() -> None:
    """Exponential integral and Gauss-Legendre agree on a drift to a millisecond."""
    times = np.linspace(0, 600, 41)
    temps = 16 + 4 * np.exp(-times / 6360)
    closed = equivalent_time_of_drift(600, start_c=20, room_c=16, tau_min=106, q10=2.2)

    assert pytest.approx(closed, abs=1e-3) == float(equivalent_time(times, temps, Q10(2.2)))


def test_a_start_out_of_reach_is_refused() -> None:
    """No start between 10 and 35 C makes 5:00 out of an hour."""
    with pytest.raises(Refused, match="no-start-makes-it-right"):
        start_that_makes_it_right(
            lambda c: (np.array([0.0, 60.0]), np.array([c, c])), time_s=60, needed_s=3600, law=Q10()
        )
