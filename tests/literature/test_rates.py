"""Rates against temperature and time that counts.

Rows of data/thermal.csv in these groups follow from the laws themselves (*arithmetic*: closed forms and
quadrature agree). The legal chart of data/kinetics-xray.csv is *published*; its fitted coefficient was
*derived* from it by ordinary least squares. R is that of CODATA 2018.
"""

from __future__ import annotations

import numpy as np
import pytest
from literature.tables import inputs_of, rows_of
from literature.thermal_rows import ROWS, expected_of, numbers_of, of_group
from scipy.integrate import quad

from tankside.core.development.equivalent_time import (
    equivalent_time,
    equivalent_time_of_drift,
    time_needed,
)
from tankside.core.fits.lines import line_with_belief
from tankside.core.rates import GAS_CONSTANT, Q10, ZERO_C, Arrhenius, RateLaw, energy_of_q10, q10_of_energy
from tankside.core.thermal.drift import temp_at

NO_BELIEF = 1e6


def law_of(told: dict[str, float]) -> RateLaw:
    """The rate law of a row."""
    return Q10(told["Q10"]) if "Q10" in told else Arrhenius(told["Ea_kJ"])


def path_of(row: dict[str, str], *, until_s: float) -> tuple[np.ndarray, np.ndarray]:
    """The temperatures of a row as times in s and C."""
    told = numbers_of(row)
    if "T_room_C" in told:
        times = np.linspace(0, until_s, int(until_s) // 5 + 1)
        temps = temp_at(times, start_c=told["T0_C"], room_c=told["T_room_C"], tau_min=told["tau_min"])
        return times, temps
    if "points(min:C)" in inputs_of(row):
        pairs = [point.split(":") for point in inputs_of(row)["points(min:C)"].split(",")]
        return np.array([60 * float(m) for m, _ in pairs]), np.array([float(c) for _, c in pairs])
    if "A_K" in told:
        times = np.linspace(0, until_s, 6001)
        return times, 20 + told["A_K"] * np.sin(2 * np.pi * times / 300)
    ends = (told.get("T0_C", told.get("T_C")), told.get("T1_C", told.get("T_C")))
    return np.array([0.0, until_s]), np.array(ends, dtype=float)


@pytest.mark.checks(of=energy_of_q10)
@pytest.mark.parametrize("row", of_group("Q10 to Ea"))
def test_factor_to_activation_energy(row: dict[str, str]) -> None:
    """The activation energy that matches a factor per 10 K, and back."""
    told = numbers_of(row)
    energy = energy_of_q10(told["Q10"], from_c=told["T1_C"], to_c=told["T2_C"])

    assert expected_of(row) == energy
    assert told["Q10"] == pytest.approx(q10_of_energy(energy, from_c=told["T1_C"], to_c=told["T2_C"]))


@pytest.mark.checks(of=Arrhenius.factor)
@pytest.mark.parametrize("row", of_group("Arrhenius factor"))
def test_arrhenius_factor(row: dict[str, str]) -> None:
    """The factor of a rate at a temperature, from its activation energy."""
    told = numbers_of(row)

    assert expected_of(row) == float(Arrhenius(told["Ea_kJ"]).factor(told["T_C"]))


@pytest.mark.checks(of=equivalent_time)
@pytest.mark.parametrize("row", of_group("equivalent time", output="t_eq20"))
def test_equivalent_time(row: dict[str, str]) -> None:
    """Steady, ramped, drifting, logged and swinging temperatures count what the row says."""
    told = numbers_of(row)
    until_s = 60 * told.get("t_min", 10.0)
    found = float(equivalent_time(*path_of(row, until_s=until_s), law_of(told))) / 60

    assert expected_of(row) == found


@pytest.mark.checks(of=equivalent_time_of_drift)
@pytest.mark.parametrize("row", of_group("equivalent time", output="t_eq20"))
def test_equivalent_time_of_drift_in_closed_form(row: dict[str, str]) -> None:
    """Where the row is a drift with a factor per 10 K, the closed form agrees; elsewhere quadrature does."""
    told = numbers_of(row)
    if "T_room_C" not in told:
        times, temps = path_of(row, until_s=60 * told.get("t_min", 10.0))
        law = law_of(told)
        counted, _ = quad(
            lambda t: float(law.factor(np.interp(t, times, temps))),
            0,
            times[-1],
            limit=400,
            points=times[1:-1:600],
        )
        assert counted == pytest.approx(float(equivalent_time(times, temps, law)), rel=1e-5)
    elif "Q10" in told:
        found = equivalent_time_of_drift(
            60 * told["t_min"],
            start_c=told["T0_C"],
            room_c=told["T_room_C"],
            tau_min=told["tau_min"],
            q10=told["Q10"],
        )
        assert expected_of(row) == found / 60


@pytest.mark.checks(of=time_needed)
@pytest.mark.parametrize("row", of_group("equivalent time", output="t_needed"))
def test_time_needed(row: dict[str, str]) -> None:
    """The time on the clock that makes the time that counts right."""
    told = numbers_of(row)
    law = law_of(told) if "Q10" in told else Q10(2.5)
    needed_s = 60 * told.get("t20_min", 10.0)
    found = float(time_needed(needed_s, *path_of(row, until_s=1200), law)) / 60

    assert expected_of(row) == found


@pytest.mark.checks(of=line_with_belief)
def test_legal_chart_of_x_ray_film() -> None:
    """A state's developing chart (NMAC 20.3.6.612, *published*) fits 3.79 per 10 K, 95.8 kJ/mol."""
    rows = rows_of("kinetics-xray.csv")
    temps = np.array([float(row["temp_C"]) for row in rows])
    logs = np.log([float(row["time_min"]) for row in rows])
    even = np.ones_like(temps)
    by_c = line_with_belief(temps, logs, even, slope=0.0, slope_sd=NO_BELIEF, x_ref=20.0)
    by_k = line_with_belief(
        1 / (temps + ZERO_C), logs, even, slope=0.0, slope_sd=1e9, x_ref=1 / (20 + ZERO_C)
    )
    worst = np.max(np.abs(np.expm1([by_c.at(t) for t in temps] - logs)))

    assert pytest.approx(3.79, abs=0.005) == float(np.exp(-10 * by_c.slope))
    assert pytest.approx(5.03, abs=0.005) == float(np.exp(by_c.level))
    assert pytest.approx(95.8, abs=0.1) == by_k.slope * GAS_CONSTANT
    assert pytest.approx(5.00, abs=0.01) == float(np.exp(by_k.level))
    assert 0.10 <= worst <= 0.12


@pytest.mark.checks(of=Q10)
def test_old_temperature_coefficients() -> None:
    """Ives, Airplane Photography (1920) ch. XXII: factors for 7 C (*published*) as 1.62 and 2.69 per 10 K."""
    per_7k = {row["developer"]: float(row["temp_coeff_per_7C"]) for row in rows_of("kinetics-ives-1920.csv")}
    per_10k = {
        row["developer"]: float(row["K10"])
        for row in rows_of("kinetics-temperature-coefficients.csv")
        if row["table"] == "Ives"
    }

    found = {developer: float(Q10(factor).factor(27.0)) for developer, factor in per_10k.items()}

    assert per_7k == pytest.approx(found, abs=0.001)


def test_every_thermal_row_is_asked_for() -> None:
    """No group of data/thermal.csv is left unread by the literature tests."""
    read = {
        "mix", "inverse mix", "simple-rule bound", "salt solution + water", "tank", "tank in water bath",
        "pour-in", "drift 10 min", "Q10 to Ea", "Arrhenius factor", "equivalent time",
    }  # fmt: skip

    assert {row["group"] for row in ROWS} == read
