"""Contrast against time.

data/kinetics-constructed.csv: exact values of the law itself (*arithmetic*).
data/kinetics-ives-1920.csv: two developers on one plate, H. E. Ives, Airplane Photography (1920) ch. XXII
(*published* constants; the gammas at given times were *derived* from them outside this project).
"""

from __future__ import annotations

import numpy as np
import pytest
from literature.tables import rows_of

from tankside.core.development.contrast import contrast_at, rate_constant, time_for_contrast
from tankside.core.refusals import Refused

SETS = {
    "K1": {"c_inf": 1.2, "k_per_s": np.log(2) / 300, "induction_s": 0.0},
    "K2": {"c_inf": 1.35, "k_per_s": 0.11 / 60, "induction_s": 48.0},
}
IVES = {row["developer"]: row for row in rows_of("kinetics-ives-1920.csv")}
IVES_MIN = [1.0, 2.0, 2.5, 3.0, 5.0, 6.0, 10.0]
IVES_GAMMA = {
    "pyro-metol": [0.397, 0.685, 0.798, 0.895, 1.157, 1.237, 1.391],
    "chlorhydroquinone-metol": [0.699, 1.167, 1.340, 1.481, 1.833, 1.928, 2.081],
}


@pytest.mark.checks(of=contrast_at)
@pytest.mark.parametrize("row", rows_of("kinetics-constructed.csv"), ids=lambda r: f"{r['set']}-{r['t_min']}")
def test_constructed_rise(row: dict[str, str]) -> None:
    """The law at each time of the two constructed sets, one of them with an induction time."""
    found = contrast_at(60 * float(row["t_min"]), **SETS[row["set"]])

    assert pytest.approx(float(row["gamma"]), abs=6e-7) == float(found)


@pytest.mark.checks(of=time_for_contrast)
@pytest.mark.parametrize("row", rows_of("kinetics-constructed.csv"), ids=lambda r: f"{r['set']}-{r['t_min']}")
def test_constructed_rise_inverted(row: dict[str, str]) -> None:
    """The time for a contrast, and the constant from one point, give back what made the set."""
    told = SETS[row["set"]]
    gamma, time_s = float(row["gamma"]), 60 * float(row["t_min"])
    k = rate_constant(gamma, time_s=time_s, c_inf=told["c_inf"], induction_s=told["induction_s"])

    assert pytest.approx(time_s, rel=1e-4) == float(time_for_contrast(gamma, **told))
    assert pytest.approx(told["k_per_s"], rel=1e-4) == float(k)


@pytest.mark.checks(of=contrast_at)
@pytest.mark.parametrize("developer", sorted(IVES))
def test_two_old_developers(developer: str) -> None:
    """Gammas at seven times, and at the time that the old rule of first appearance gives."""
    row = IVES[developer]
    told = {"c_inf": float(row["gamma_inf"]), "k_per_s": float(row["k_per_min"]) / 60, "induction_s": 0.0}
    by_appearance_s = float(row["watkins_factor"]) * float(row["time_of_appearance_s"])
    ruled = {"pyro-metol": 0.706, "chlorhydroquinone-metol": 0.601}

    assert IVES_GAMMA[developer] == pytest.approx(contrast_at(60 * np.array(IVES_MIN), **told), abs=6e-4)
    assert pytest.approx(ruled[developer], abs=6e-4) == float(contrast_at(by_appearance_s, **told))


@pytest.mark.checks(of=rate_constant)
def test_what_aerial_plates_asked_for() -> None:
    """Ives ch. XVIII: gamma near 2 of 2.5 in 2.5 min (*published*) needs 0.644 a minute (*derived*)."""
    assert pytest.approx(0.644, abs=5e-4) == 60 * float(
        rate_constant(2.0, time_s=150, c_inf=2.5, induction_s=0.0)
    )


@pytest.mark.checks(of=time_for_contrast)
def test_a_third_exact_case() -> None:
    """0.45 at 4 and 0.70 at 8 minutes mean 1.0125 at the end, and 5.788464 min for 0.58; 1.02 is refused."""
    told = {"c_inf": 1.0125, "k_per_s": 0.146946666 / 60, "induction_s": 0.0}

    assert [0.45, 0.70] == pytest.approx(contrast_at(np.array([240.0, 480.0]), **told), abs=1e-6)
    assert pytest.approx(5.788464, abs=1e-5) == float(time_for_contrast(0.58, **told)) / 60
    with pytest.raises(Refused):
        time_for_contrast(1.02, **told)
