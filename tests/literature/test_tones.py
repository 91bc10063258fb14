"""From subject to paper.

data/contrast-targets.csv: gradients *derived* from ranges (2.20 and 1.05, 1.20 over 2.10: seen).
data/paper-grades.csv: RIT course exercise (*published*). Transmittances: Radiography in Modern
Industry p. 65 (*published*).
"""

from __future__ import annotations

import pytest
from literature.tables import rows_of

from tankside.core.refusals import Refused
from tankside.core.sensitometry.calibration import density_by_times, density_of
from tankside.core.sensitometry.tones import (
    GRADES,
    flare_from_veil,
    negative_range,
    paper_grade,
    wanted_contrast,
)


@pytest.mark.checks(of=wanted_contrast)
@pytest.mark.checks(of=negative_range)
@pytest.mark.parametrize("row", rows_of("contrast-targets.csv"), ids=lambda row: f"{row['model']} {row['N']}")
def test_contrast_for_a_subject(row: dict[str, str]) -> None:
    """The gradient of each row, and the density range back from it."""
    subject, flare = float(row["log_subject_range"]), float(row["log_flare"])
    found = wanted_contrast(subject, flare_log=flare, density_range=float(row["density_range"]))

    assert float(row["aim_gradient"]) == pytest.approx(found, abs=6e-5)
    assert float(row["density_range"]) == pytest.approx(
        negative_range(subject, flare_log=flare, contrast=found)
    )


@pytest.mark.checks(of=flare_from_veil)
@pytest.mark.checks(of=negative_range)
def test_a_worked_subject() -> None:
    """1.80, after flare 1.50, at 0.50 gives 0.75 (French notes, seen); the veil is 1.028 (*derived*)."""
    flare = flare_from_veil(1.80, veil=1.028)

    assert 0.30 == round(flare, 2)
    assert 0.75 == round(negative_range(1.80, flare_log=flare, contrast=0.50), 2)


@pytest.mark.checks(of=paper_grade)
@pytest.mark.parametrize("row", rows_of("paper-grades.csv"), ids=lambda row: row["grade"])
def test_paper_grades(row: dict[str, str]) -> None:
    """Both ends of each window belong to its grade, as does the worked 1.30 - 0.20 to grade 2."""
    low, high = float(row["density_range_low"]), float(row["density_range_high"])

    assert (int(row["grade"]), low, high) in GRADES
    assert int(row["grade"]) == paper_grade(low) == paper_grade(high)
    assert 2 == paper_grade(1.30 - 0.20)
    with pytest.raises(Refused):
        paper_grade(0.4)


@pytest.mark.checks(of=density_of)
@pytest.mark.parametrize(
    ("transmittance", "density"),
    [(0.5, 0.3), (0.25, 0.6), (0.1, 1.0), (0.01, 2.0), (0.001, 3.0), (1e-4, 4.0)],
)
def test_transmittance_to_density(transmittance: float, density: float) -> None:
    """The table of p. 65, to the tenth that it prints."""
    assert density == round(density_of(transmittance), 1)


@pytest.mark.checks(of=density_by_times)
def test_density_by_two_printing_times() -> None:
    """13 s against 10 s is 0.114 (worked example, seen)."""
    assert 0.114 == round(density_by_times(13, clear_time_s=10), 3)
