"""Inputs that are shared stay shared: what two answers have in common cancels between them."""

from __future__ import annotations

from math import sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.doubt.calibration_shapes import Arcsine, CurvedTrapezoid, Student
from tankside.core.doubt.distributions import Distribution, LogNormal, Normal, Triangular, Uniform
from tankside.core.doubt.groups import Group, Input, alone, draws_for
from tankside.core.doubt.monte_carlo import propagate

SHAPES: list[Distribution] = [
    Normal(20.0, 0.1), LogNormal(1.5, 2.9), Uniform(-1.0, 3.0), Triangular(0.0, 30.0, 60.0),
    Student(0.0, 4.0, freedom=5), Arcsine(-0.5, 0.5), CurvedTrapezoid(-1.0, 1.0, give=0.25),
]  # fmt: skip


@given(shape=st.sampled_from(SHAPES), other=st.sampled_from(SHAPES), by=st.floats(-3, 3))
def test_what_is_shared_cancels(shape: Distribution, other: Distribution, by: float) -> None:
    """Two answers with one input in common differ by what is their own alone."""
    groups = [alone("shared", shape), alone("own", other)]
    draws = draws_for(groups, seed=1, count=500)
    difference = propagate(lambda v: (v["shared"] * by + v["own"]) - v["shared"] * by, groups, draws)
    own = propagate(lambda v: v["own"], groups, draws)

    assert own.sd == pytest.approx(difference.sd)
    assert own.told == pytest.approx(difference.told)


@given(r=st.floats(-0.95, 0.95), first=st.floats(0.1, 5), second=st.floats(0.1, 5))
def test_a_sum_and_a_difference_feel_the_correlation(r: float, first: float, second: float) -> None:
    """Variances add, and twice the covariance with them: more in the sum, less in the difference."""
    pair = Group(
        "pair", (Input("a", Normal(0.0, first)), Input("b", Normal(0.0, second))), ((1.0, r), (r, 1.0))
    )
    draws = draws_for([pair], seed=2, count=4000)
    plus, minus = (propagate(lambda v, s=sign: v["a"] + s * v["b"], [pair], draws).sd for sign in (1, -1))
    between = sqrt(first**2 + second**2)

    for found, sign in ((plus, 1), (minus, -1)):
        exact = sqrt(first**2 + second**2 + sign * 2 * r * first * second)
        assert exact == pytest.approx(found, abs=0.05 * between)


def test_one_group_leaves_the_others_as_they_are() -> None:
    """Tying two inputs together changes no other: its column of draws is its own."""
    tied = Group("tied", (Input("a", Normal(0, 1)), Input("b", Normal(0, 1))), ((1.0, 0.9), (0.9, 1.0)))
    free = Group("tied", tied.inputs)
    last = alone("c", Uniform(0.0, 1.0))
    draws = draws_for([tied, last], seed=3, count=2000)
    with_tie, without = (propagate(lambda v: v["c"], [one, last], draws).drawn for one in (tied, free))
    drawn = tied.at(draws[:, :2])

    assert np.array_equal(with_tie, without)
    assert abs(np.corrcoef(drawn["a"], draws[:, 2])[0, 1]) < 0.1
