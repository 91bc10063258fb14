"""Contrast against time, fitted.

data/kinetics-constructed.csv: exact values of the law (*arithmetic*). Misra1a and BoxBOD of NIST's
Statistical Reference Datasets follow the same law (*published*, certified); BoxBOD has a false valley.
"""

from __future__ import annotations

import numpy as np
import pytest
from literature.tables import rows_of
from literature.test_reference_fits import correct_digits, reference_set

from tankside.core.development.kinetics import by_doubled_time, kinetics_of
from tankside.core.refusals import Refused

EXACT = {"K1": (1.2, np.log(2) / 5, 0.0), "K2": (1.35, 0.11, 0.8)}


def series(name: str) -> tuple[np.ndarray, np.ndarray]:
    """Times in s and contrasts of one constructed set."""
    rows = [row for row in rows_of("kinetics-constructed.csv") if row["set"] == name]
    return np.array([60 * float(row["t_min"]) for row in rows]), np.array(
        [float(row["gamma"]) for row in rows]
    )


@pytest.mark.checks(of=kinetics_of)
@pytest.mark.parametrize("name", sorted(EXACT))
def test_constructed_sets_give_back_what_made_them(name: str) -> None:
    """From values of six places, induction time free: c_inf to 2e-5, k to 1e-4 of it, start to 0.1 s."""
    c_inf, k_per_min, induction_min = EXACT[name]
    found = kinetics_of(*series(name), induction_s=None)

    assert c_inf == pytest.approx(found.c_inf.value, abs=2e-5)
    assert k_per_min == pytest.approx(60 * found.k_per_s.value, rel=1e-4)
    assert 60 * induction_min == pytest.approx(found.induction_s.value, abs=0.1)


@pytest.mark.checks(of=kinetics_of)
def test_exact_values_to_the_last_digit() -> None:
    """Values that are not rounded give k, c_inf and start to 1e-12."""
    times_s = 60 * np.array([4.0, 6, 8, 10, 12, 16])
    found = kinetics_of(times_s, 1.35 * (1 - np.exp(-0.11 * (times_s / 60 - 0.8))), induction_s=None)

    assert (1.35, 0.11, 48.0) == pytest.approx(
        (found.c_inf.value, 60 * found.k_per_s.value, found.induction_s.value), rel=1e-11
    )


@pytest.mark.checks(of=kinetics_of)
def test_an_induction_time_forgotten_ruins_the_velocity() -> None:
    """4 and 8 minutes of K2 by the doubling rule: 0.042 and 2.56 instead of 0.110 and 1.35 (*derived*)."""
    _, contrasts = series("K2")
    c_inf, k = by_doubled_time(contrasts[0], contrasts[2], time_s=240)

    assert (2.56, 0.042) == (round(c_inf, 2), round(60 * k, 3))


@pytest.mark.checks(of=by_doubled_time)
@pytest.mark.parametrize(
    ("first", "second", "minutes", "c_inf", "k"),
    [(0.6, 0.9, 5, 1.2, 0.138629436), (0.45, 0.70, 4, 1.0125, 0.146946666)],
)
def test_time_and_double_time(first: float, second: float, minutes: float, c_inf: float, k: float) -> None:
    """Two exact cases; where the second contrast is twice the first there is no answer."""
    found = by_doubled_time(first, second, time_s=60 * minutes)

    assert (c_inf, k) == pytest.approx((found[0], 60 * found[1]), abs=1e-9)
    with pytest.raises(Refused):
        by_doubled_time(first, 2 * first, time_s=60 * minutes)


@pytest.mark.checks(of=kinetics_of)
@pytest.mark.parametrize("name", ["Misra1a", "BoxBOD"])
def test_certified_sets_of_the_same_law(name: str) -> None:
    """Both certified parameters to nine digits, without any start value."""
    given = reference_set(name)
    found = kinetics_of(given.x, given.y, induction_s=0.0)

    assert correct_digits(given.parameters, np.array([found.c_inf.value, found.k_per_s.value])) >= 9
    assert given.sds[0] == pytest.approx((found.c_inf.high - found.c_inf.value) / 1.6448536, rel=1e-6)


@pytest.mark.checks(of=kinetics_of)
def test_what_does_not_level_off_is_refused() -> None:
    """A straight or an upward line tells nothing of where it leads."""
    times_s = np.array([120.0, 240, 480, 960])

    for contrasts in (0.001 * times_s, 1e-6 * times_s**2):
        with pytest.raises(Refused) as no:
            kinetics_of(times_s, contrasts, induction_s=0.0)
        assert "never-levels-off" == no.value.refusal.code
