"""A straight calibration: NIST/SEMATECH e-Handbook, section mpc3673 (*published* with fit and 95 % band)."""

from __future__ import annotations

import numpy as np
import pytest
from literature.tables import rows_of

from tankside.core.fits.lines import line_through
from tankside.core.refusals import Refused
from tankside.core.sensitometry.calibration import Calibration, calibrate

ROWS = rows_of("calibration-line.csv")


def calibrated() -> Calibration:
    """The line through the forty readings."""
    x = np.array([float(row["x_reference"]) for row in ROWS])
    return calibrate(x, np.array([float(row["y_reading"]) for row in ROWS]))


@pytest.mark.checks(of=calibrate)
@pytest.mark.checks(of=line_through)
def test_line_and_its_deviations() -> None:
    """Intercept, slope, their standard deviations and the scatter to every printed digit."""
    found = calibrated()

    assert (0.2357623, 0.9870377) == (
        pytest.approx(found.intercept, abs=1e-7),
        pytest.approx(found.line.slope, abs=1e-7),
    )
    assert (0.0243003, 0.0034406) == (
        pytest.approx(found.line.sd_at(0.0), abs=1e-7),
        pytest.approx(found.line.slope_sd, abs=1e-7),
    )
    assert (0.0620320, 38) == (pytest.approx(found.residual_sd, abs=1e-7), found.degrees_of_freedom)


@pytest.mark.checks(of=Calibration.band)
@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['x_reference']}-{row['y_reading']}")
def test_fit_and_band(row: dict[str, str]) -> None:
    """Fit and both ends of the band in each of the forty rows, to 1E-06."""
    found = calibrated()
    low, high = found.band(float(row["x_reference"]))

    assert [float(row[name]) for name in ("fit", "lower95", "upper95")] == pytest.approx(
        [found.line.at(float(row["x_reference"])), low, high], abs=1e-6
    )


@pytest.mark.checks(of=Calibration.true_of)
def test_a_reading_turned_back() -> None:
    """The reading of a reference gives it back; beyond those calibrated there is no number."""
    found = calibrated()
    told = found.true_of(found.line.at(7.0))

    assert pytest.approx(7.0) == told.value
    assert pytest.approx(0.107, abs=0.003) == told.high - told.value
    with pytest.raises(Refused):
        found.true_of(0.5)
