"""The rate that a plan carries: one factor, or a table read between its knots."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from tankside.core.development.equivalent_time import counted_so_far, equivalent_time, time_needed
from tankside.core.development.printed_rows import Row
from tankside.core.development.rate import rate_of, time_at
from tankside.core.rates import BelievedRate, RateTable

BENT = (Row(18.0, 900), Row(20.0, 600), Row(22.0, 540), Row(24.0, 330))
"""Invented: steep, flat, steep; no one slope passes."""

RATE = rate_of(BENT)
temperatures = st.floats(18.0, 24.0)


def test_rows_are_met_exactly() -> None:
    """At each row the law gives the printed time."""
    told = [RATE.time_s.value / float(RATE.believed.law.factor(row.temp_c)) for row in BENT]

    assert [row.time_s for row in BENT] == pytest.approx(told)


def test_its_own_slope_between_rows() -> None:
    """Between 18 and 20 it is steep, between 20 and 22 nearly flat; half way lies the geometric mean."""
    assert [(900 * 600) ** 0.5, (600 * 540) ** 0.5] == pytest.approx(
        [time_at(RATE, 19.0).value, time_at(RATE, 21.0).value]
    )


@given(first=temperatures, last=temperatures)
def test_a_straight_path_is_counted_exactly(first: float, last: float) -> None:
    """Across knots too, the integral of the law is that of numerical quadrature."""
    law = RATE.believed.law
    wanted, _ = quad(
        lambda share: float(law.factor(first + (last - first) * share)),
        0,
        1,
        points=(0.25, 0.5, 0.75),
        limit=200,
    )

    assert wanted == pytest.approx(
        float(equivalent_time(np.array([0.0, 1.0]), np.array([first, last]), law)), rel=2e-5
    )


@given(start=temperatures, end=temperatures, needed_s=st.floats(60, 900))
def test_the_end_is_where_enough_has_counted(start: float, end: float, needed_s: float) -> None:
    """Counting to the time needed gives back what was needed."""
    law = RATE.believed.law
    times = np.linspace(0, 600, 41)
    temps = np.linspace(start, end, 41)
    found = float(time_needed(needed_s, times, temps, law))
    until = np.append(times[times < found], found)
    there = np.interp(until, times, temps)

    assert needed_s == pytest.approx(float(equivalent_time(until, there, law)), rel=1e-6)


def test_drawn_laws_stay_within_the_rounding_of_their_rows() -> None:
    """From 5 to 95 % a row is off by 0.45 of its printed step, steeper to both sides of the reference."""
    shallow, told, steep = (
        float(RATE.believed.drawn(np.array([share])).factor(np.array([24.0]))[0])
        for share in (0.05, 0.5, 0.95)
    )

    assert [330 * (1 + 13.5 / 330) ** sign for sign in (1, 0, -1)] == pytest.approx(
        [600 / shallow, 600 / told, 600 / steep], rel=2e-3
    )


def test_one_law_a_draw() -> None:
    """A thousand laws count a thousand paths as they would one by one."""
    uniforms = np.array([0.1, 0.5, 0.9])
    times, paths = (
        np.linspace(0, 600, 9),
        np.array([[18.5 + row + 0.2 * n for n in range(9)] for row in range(3)]),
    )
    together = counted_so_far(times, paths, RATE.believed.drawn(uniforms))
    alone = [
        counted_so_far(times, paths[n : n + 1], RATE.believed.drawn(uniforms[n : n + 1]))[0] for n in range(3)
    ]

    assert np.allclose(alone, together)


def test_the_reference_counts_as_itself() -> None:
    """At the reference every law, drawn or told, counts a second as a second."""
    laws = [RATE.believed.law, *RATE.believed.ends, BelievedRate().law, *BelievedRate().ends]

    assert [1.0] * len(laws) == pytest.approx([float(law.factor(20.0)) for law in laws])


def test_outside_the_rows_a_wide_range() -> None:
    """One spacing beyond the last row the law runs from level to twice as steep; no number is told."""
    law = RATE.believed.law
    shallow, steep = (float(one.factor(26.0)) for one in RATE.believed.ends)

    assert isinstance(law, RateTable)
    assert shallow < float(law.factor(24.0)) < float(law.factor(26.0)) < steep
    assert [True, False, False] == [RATE.believed.knows(temp_c) for temp_c in (24.0, 24.1, 17.9)]


def test_two_leaflets_that_differ_at_one_temperature() -> None:
    """Their middle is taken, as wide as both."""
    rate = rate_of([*BENT, Row(20.0, 480)])

    assert (480 * 600) ** 0.5 == pytest.approx(time_at(rate, 20.0).value)
    assert time_at(rate, 20.0).high - time_at(rate, 20.0).low == pytest.approx(0.9 * 120)
