"""Distributions: quantiles that rise, meet their stated points and their median."""

from __future__ import annotations

import numpy as np
import pytest

from tankside.core.doubt.distributions import Distribution, LogNormal, Normal, Triangular, Uniform, rounded

EACH: list[Distribution] = [
    Normal(20.0, 0.1),
    LogNormal(1.5, 2.9),
    Uniform(-1.0, 3.0),
    Triangular(0.0, 30.0, 60.0),
    Triangular(0.0, 0.0, 1.0),
]


@pytest.mark.parametrize("one", EACH, ids=repr)
def test_quantiles_rise_through_the_median(one: Distribution) -> None:
    """Values rise with probability, half of them below the median."""
    values = one.at(np.linspace(0.001, 0.999, 999))

    assert np.all(np.diff(values) > 0)
    assert pytest.approx(one.median) == values[499]


def test_stated_points() -> None:
    """5 and 95 % of a log-normal, quarter points of a triangle, the whole width of a rounding step."""
    assert (1.5, 2.9) == pytest.approx(tuple(LogNormal(1.5, 2.9).at(np.array([0.05, 0.95]))))
    assert 60 - 30 * np.sqrt(0.5) == pytest.approx(float(Triangular(0, 30, 60).at(0.75)))
    assert Uniform(19.75, 20.25) == rounded(20.0, step=0.5)


@pytest.mark.parametrize("wrong", [(2.0, 2.0), (0.0, 1.0), (3.0, 2.0)])
def test_a_log_normal_needs_rising_positive_points(wrong: tuple[float, float]) -> None:
    """Points that do not rise from above zero are a mistake of the program."""
    with pytest.raises(ValueError, match="log-normal"):
        LogNormal(*wrong)


def test_other_impossible_shapes() -> None:
    """A triangle without width, a uniform that runs backwards."""
    with pytest.raises(ValueError, match="triangle"):
        Triangular(1.0, 1.0, 1.0)
    with pytest.raises(ValueError, match="uniform"):
        Uniform(2.0, 1.0)
