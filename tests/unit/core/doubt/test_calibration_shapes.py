"""Shapes of certificates: they meet JCGM 101:2008, 6.4, in their moments and in the way it draws them."""

from __future__ import annotations

import math

import numpy as np
import pytest

from tankside.core.doubt.calibration_shapes import Arcsine, CurvedTrapezoid, Student
from tankside.core.doubt.distributions import Distribution

STRATA = (np.arange(200_000) + 0.5) / 200_000
EACH: list[Distribution] = [
    Student(215.0, 6.0, freedom=24),
    Arcsine(-0.5, 0.5),
    CurvedTrapezoid(-1.0, 3.0, give=0.5),
    CurvedTrapezoid(9.5e-6, 13.5e-6, give=1e-9),
    CurvedTrapezoid(0.0, 1.0, give=0.4999),
]


@pytest.mark.parametrize("one", EACH, ids=repr)
def test_quantiles_rise_through_the_median(one: Distribution) -> None:
    """Values rise with probability, as far above the median as below it."""
    values = one.at(np.linspace(1e-6, 1 - 1e-6, 2001))

    assert np.all(np.diff(values) > 0)
    assert pytest.approx(one.median) == values[1000]
    assert values[:1000] + values[:1000:-1] == pytest.approx(np.full(1000, 2 * one.median))


@pytest.mark.checks(of=Student)
@pytest.mark.parametrize(
    ("freedom", "chance", "deviate"),
    [(5, 0.975, 2.571), (8, 0.995, 3.355), (18, 0.975, 2.101), (24, 0.95, 1.711), (1, 0.75, 1.0)],
)
def test_student_meets_the_tables(freedom: int, chance: float, deviate: float) -> None:
    """Percentage points of Student's t as handbook tables print them (from memory; one degree is exact)."""
    one = Student(10.0, 2.0, freedom=freedom)

    assert 10 + 2 * deviate == pytest.approx(float(one.at(chance)), abs=2 * 0.0006)


@pytest.mark.checks(of=Student)
def test_student_is_wider_than_its_scale() -> None:
    """6.4.9.4: variance nu / (nu - 2) times the scale squared."""
    assert 4.0 * math.sqrt(18 / 16) == pytest.approx(Student(0.0, 4.0, freedom=18).at(STRATA).std(), rel=3e-4)


@pytest.mark.checks(of=Arcsine)
def test_arcsine_is_a_sine_at_a_uniform_phase() -> None:
    """6.4.6: variance an eighth of the width squared; a sine seen at evenly spaced phases has the same."""
    values = Arcsine(2.0, 6.0).at(STRATA)
    phases = np.sort(4.0 + 2.0 * np.sin(2 * np.pi * STRATA))

    assert 4.0 / math.sqrt(8) == pytest.approx(values.std(), rel=1e-5)
    assert np.abs(phases - values).max() < 1e-4


@pytest.mark.checks(of=CurvedTrapezoid)
@pytest.mark.parametrize("one", [one for one in EACH if isinstance(one, CurvedTrapezoid)], ids=repr)
def test_curved_trapezoid_has_its_stated_moments(one: CurvedTrapezoid) -> None:
    """6.4.3.3: the middle, and width squared over 12 with give squared over 9."""
    values = one.at(STRATA)
    variance = (one.high - one.low) ** 2 / 12 + one.give**2 / 9

    assert (one.low + one.high) / 2 == pytest.approx(values.mean())
    assert math.sqrt(variance) == pytest.approx(values.std(), rel=1e-5)
    assert one.low - one.give <= values[0] < values[-1] <= one.high + one.give


@pytest.mark.checks(of=CurvedTrapezoid)
def test_curved_trapezoid_is_drawn_as_its_source_draws_it() -> None:
    """6.4.3.4: a lower end drawn within its give, the upper one mirrored, and a value between them."""
    one = CurvedTrapezoid(-1.0, 3.0, give=0.5)
    first, second = np.meshgrid((np.arange(2000) + 0.5) / 2000, (np.arange(2000) + 0.5) / 2000)
    low = one.low - one.give + 2 * one.give * first
    drawn = low + (one.low + one.high - 2 * low) * second
    chances = np.array([0.001, 0.01, 0.05, 0.2, 0.5, 0.9, 0.99, 0.999])

    assert np.quantile(drawn, chances) == pytest.approx(one.at(chances), abs=2e-3)


def test_impossible_shapes() -> None:
    """No scale, no width, a give that is nothing or reaches the middle."""
    with pytest.raises(ValueError, match="Student"):
        Student(0.0, 0.0, freedom=3)
    with pytest.raises(ValueError, match="arcsine"):
        Arcsine(1.0, 1.0)
    for give in (0.0, 1.0):
        with pytest.raises(ValueError, match="trapezoid"):
            CurvedTrapezoid(0.0, 2.0, give=give)
