"""What follows from a definition, worked out a second way: another library, another route, or by hand."""

from __future__ import annotations

from statistics import NormalDist

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import linprog

from tankside.core.development.contrast import contrast_at, contrast_ratio, rate_constant
from tankside.core.development.equivalent_time import counted_so_far
from tankside.core.doubt.distributions import rounded, standard_normal
from tankside.core.doubt.groups import uniform_draws
from tankside.core.fits.lines import slopes_through
from tankside.core.fits.nonlinear import jacobian
from tankside.core.rates import Q10, Arrhenius
from tankside.core.solutions.dilution import StockAndWater, strength_error
from tankside.core.solutions.notation import Dilution
from tankside.core.solutions.volumes import tank_needed
from tankside.core.thermal.drift import mean_temp, start_for, tau_from_two_readings, temp_at
from tankside.core.thermal.mixing import Water, ice_to_cool

DRIFT = {"room_c": 16.0, "tau_min": 106.0}


@pytest.mark.checks(of=strength_error)
def test_strength_by_hand() -> None:
    """6 mL in 300 are 1 in 50; for 1+50 that is 51/50, 2 % too strong."""
    assert 51 / 50 - 1 == pytest.approx(strength_error(StockAndWater(6, 294), Dilution(1, 50)))


@pytest.mark.checks(of=tank_needed)
def test_tank_by_hand() -> None:
    """MS1 of the worked rows: 100 mL at 1+3 need 400."""
    assert 400 == tank_needed(100, Dilution(1, 3))


@pytest.mark.checks(of=mean_temp)
@pytest.mark.parametrize("time_s", [60.0, 570.0, 3600.0])
def test_mean_by_numeric_integration(time_s: float) -> None:
    """QUADPACK integrates the same drift."""
    total, _ = quad(lambda t: float(temp_at(t, start_c=20, **DRIFT)), 0, time_s)

    assert total / time_s == pytest.approx(mean_temp(time_s, start_c=20, **DRIFT), abs=1e-9)


@pytest.mark.checks(of=start_for)
@pytest.mark.parametrize("time_s", [0.0, 60.0, 1800.0])
def test_back_along_the_drift_and_forth(time_s: float) -> None:
    """The start found leads to the reading."""
    start_c = start_for(19.2, time_s=time_s, **DRIFT)

    assert 19.2 == pytest.approx(float(temp_at(time_s, start_c=start_c, **DRIFT)))


@pytest.mark.checks(of=tau_from_two_readings)
def test_time_constant_by_hand_and_by_draws() -> None:
    """By hand 240 s / ln(3.2/2.9); the interval by a million readings drawn within their marks."""
    found = tau_from_two_readings(19.2, 18.9, apart_s=240, room_c=16)
    draws = np.random.default_rng(1)
    first, second = 3.2 + draws.uniform(-0.1, 0.1, 10**6), 2.9 + draws.uniform(-0.1, 0.1, 10**6)
    fell = first > second
    taus = np.where(fell, 4 / np.log(np.where(fell, first / second, 2.0)), np.inf)

    assert 4 / np.log(3.2 / 2.9) == pytest.approx(found.value)
    assert np.quantile(taus, [0.05, 0.95], method="lower") == pytest.approx((found.low, found.high), rel=0.03)


@pytest.mark.checks(of=ice_to_cool)
def test_ice_by_hand() -> None:
    """Heat given up by a litre from 26 to 20 C over heat taken by a gram of ice (4.18 J/(g K), 333.5 J/g)."""
    by_hand_g = 997 * 4.18 * 6 / (333.5 + 4.19 * 20)

    assert by_hand_g == pytest.approx(ice_to_cool(Water(1000, 26), target_c=20), rel=0.005)


@pytest.mark.checks(of=contrast_ratio)
@pytest.mark.parametrize("counted_s", [300.0, 570.0, 700.0])
def test_ratio_of_two_contrasts(counted_s: float) -> None:
    """The contrast made over the one aimed at, by the curve itself."""
    k_per_s = rate_constant(0.56, time_s=570, c_inf=0.95)
    made = float(contrast_at(counted_s, c_inf=0.95, k_per_s=k_per_s))

    assert made / 0.56 == pytest.approx(
        float(contrast_ratio(counted_s, due_s=570, c_inf_over_ci=0.95 / 0.56)), rel=1e-9
    )


@pytest.mark.checks(of=counted_so_far)
@pytest.mark.parametrize("law", [Q10(2.2), Arrhenius(60.0)], ids=["factor", "energy"])
def test_count_by_numeric_integration(law: Q10 | Arrhenius) -> None:
    """QUADPACK integrates the rate along the same straight pieces."""
    times, temps = np.array([0.0, 120, 400, 600]), np.array([22.0, 20.5, 19.0, 21.0])
    total, _ = quad(
        lambda t: float(law.factor(float(np.interp(t, times, temps)))), 0, 600, points=[120, 400], epsabs=1e-9
    )

    assert total == pytest.approx(float(counted_so_far(times, temps, law)[-1]), rel=1e-6)


@pytest.mark.checks(of=standard_normal)
@pytest.mark.parametrize("p", [1e-9, 0.05, 0.3, 0.5, 0.95, 0.999])
def test_normal_deviates_by_the_standard_library(p: float) -> None:
    """`statistics.NormalDist` inverts the same integral by another approximation."""
    assert NormalDist().inv_cdf(p) == pytest.approx(float(standard_normal(p)), rel=1e-9, abs=1e-12)


@pytest.mark.checks(of=rounded)
def test_rounding_by_the_guide() -> None:
    """Rectangular, its standard deviation half the step over the root of three (JCGM 101, from memory)."""
    found = rounded(9.5, step=0.5)

    assert 0.25 / np.sqrt(3) == pytest.approx((found.high - found.low) / np.sqrt(12))
    assert 9.5 == (found.low + found.high) / 2


@pytest.mark.checks(of=uniform_draws)
def test_one_draw_from_each_stratum() -> None:
    """The property that names a Latin hypercube, and no column orders another."""
    draws = uniform_draws(3, count=1000, columns=4)
    strata = np.sort(np.floor(draws * 1000).astype(int), axis=0)

    assert (strata == np.arange(1000)[:, None]).all()
    assert np.abs(np.corrcoef(draws.T) - np.eye(4)).max() < 0.15


@pytest.mark.checks(of=slopes_through)
def test_slopes_by_linear_programming() -> None:
    """scipy's HiGHS finds the same least and largest slope."""
    x = np.array([18.0, 20.0, 21.1, 22.2, 24.0])
    middle = np.array([2.4, 2.25, 2.18, 2.08, 1.95])
    found = slopes_through(x, middle - 0.02, middle + 0.02)
    lines = np.column_stack([np.ones_like(x), x])
    rows, bounds = np.vstack([lines, -lines]), np.append(middle + 0.02, 0.02 - middle)
    low, high = (
        sign * linprog([0, sign], A_ub=rows, b_ub=bounds, bounds=(None, None)).fun for sign in (1, -1)
    )

    assert (low, high) == pytest.approx((found.low, found.high), abs=1e-9)


@pytest.mark.checks(of=jacobian)
def test_derivatives_by_hand() -> None:
    """Of a (1 - exp(-b x)), as written on paper."""
    x, a, b = np.array([0.5, 1.0, 3.0]), 2.0, 0.7
    found = jacobian(lambda p: p[0] * (1 - np.exp(-p[1] * x)), np.array([a, b]))

    assert np.allclose(np.column_stack([1 - np.exp(-b * x), a * x * np.exp(-b * x)]), found, rtol=1e-14)
