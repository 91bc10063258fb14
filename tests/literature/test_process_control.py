"""Process control.

Data seen, results *memory*: data/control-nist-*.csv (NIST/SEMATECH e-Handbook 6.3.2.2 to 6.3.2.4),
control-montgomery-shift30.csv (Montgomery, Introduction to Statistical Quality Control, ch. 9), and
drift-mavro.csv (NIST StRD, univariate). *Published*: control-sas-tires-imr.csv (user guide, example 9.4),
control-montgomery-concentration.csv (Montgomery and Runger, tables 16-7 and 16-8), process-limits.csv (21 CFR
900.12(e)(1), NAVEDTRA 14208). control-constants.csv: customary table, *memory*. control-weco-arl.csv: 91.75
seen, the other combinations *memory*; its own values from a Markov chain outside this project.
"""

from __future__ import annotations

import numpy as np
import pytest
from literature.run_lengths import mean_run_length
from literature.tables import rows_of

from tankside.core.sensitometry.control import Cusum, cusum, ewma, individuals, lag_one
from tankside.core.sensitometry.limits import LIMITS, beyond_published
from tankside.core.sensitometry.range_constants import range_constants
from tankside.core.sensitometry.run_rules import broken_rules

CONCENTRATION = rows_of("control-montgomery-concentration.csv")
SHIFT = rows_of("control-montgomery-shift30.csv")
GROUPS = rows_of("control-nist-cusum.csv")
AVERAGES = rows_of("control-nist-ewma.csv")


def column(rows: list[dict[str, str]], name: str) -> np.ndarray:
    """One column as numbers."""
    return np.array([float(row[name]) for row in rows if row[name]])


@pytest.mark.checks(of=range_constants)
@pytest.mark.parametrize("row", rows_of("control-constants.csv"), ids=lambda row: row["n"])
def test_constants_of_the_range(row: dict[str, str]) -> None:
    """Within 4e-5 of an integration outside, and within 0.0006 of the customary three decimals."""
    found = range_constants(int(row["n"]))
    told = {"d2": found.d2, "d3": found.d3, "A2": found.a2, "D3": found.lower, "D4": found.upper}

    for name, value in told.items():
        assert float(row[name]) == pytest.approx(value, abs=4e-5)
        assert float(row[f"{name}_printed"]) == pytest.approx(value, abs=6.2e-4)


@pytest.mark.checks(of=individuals)
def test_flow_of_ten_batches() -> None:
    """50.81, 1.8778, 55.8041 and 45.8159 with d2 = 1.128; every moving range as listed (*memory*)."""
    rows = rows_of("control-nist-flowrate.csv")
    flow = column(rows, "flowrate")
    found = individuals(flow, d2=1.128)

    assert (50.81, 1.8778, 55.8041, 45.8159) == (
        round(found.mean, 2),
        round(found.mean_range, 4),
        round(found.upper, 4),
        round(found.lower, 4),
    )
    assert column(rows, "moving_range") == pytest.approx(np.abs(np.diff(flow)))
    assert not found.enough_for_limits


@pytest.mark.checks(of=individuals)
def test_thirty_tyres() -> None:
    """Every printed digit of the published example, which computes d2 and d3."""
    found = individuals(column(rows_of("control-sas-tires-imr.csv"), "diameter"))

    assert (23.8571, 24.0083, 24.1596) == (
        round(found.lower, 4),
        round(found.mean, 4),
        round(found.upper, 4),
    )
    assert (0.056897, 0.18585, 0.050423) == (
        round(found.mean_range, 6),
        round(found.range_upper, 5),
        round(found.sigma, 6),
    )
    assert found.enough_for_limits


@pytest.mark.checks(of=individuals)
def test_limits_of_a_concentration() -> None:
    """105.98 and 92.21 with a mean range of 2.59 (*memory*)."""
    found = individuals(column(CONCENTRATION, "x"))

    assert (105.98, 92.21, 2.59) == (round(found.upper, 2), round(found.lower, 2), round(found.mean_range, 2))


@pytest.mark.checks(of=cusum)
@pytest.mark.parametrize("i", range(len(CONCENTRATION)))
def test_sums_of_a_concentration(i: int) -> None:
    """Both one-sided sums and the plain one of each row, exactly."""
    found = cusum(column(CONCENTRATION, "x"), target=99, slack=1, limit=10)

    assert [float(CONCENTRATION[i][name]) for name in ("S_H_published", "S_L_published", "cumsum_exact")] == (
        pytest.approx([found.high[i], found.low[i], found.plain[i]], abs=1e-9)
    )
    assert found.first_signal is None


def groups() -> Cusum:
    """The sums of the e-Handbook's example."""
    return cusum(column(GROUPS, "xbar"), target=325, slack=0.3175, limit=4.1959)


@pytest.mark.checks(of=cusum)
@pytest.mark.parametrize("i", range(len(GROUPS)))
def test_sums_of_twenty_groups(i: int) -> None:
    """Each row within the printed hundredth; group 14 is the first beyond the limit (*memory*)."""
    found = groups()

    assert [float(GROUPS[i][name]) for name in ("S_hi_published", "S_lo_published")] == pytest.approx(
        [found.high[i], found.low[i]], abs=0.0051
    )
    assert float(GROUPS[i]["cumsum_exact"]) == pytest.approx(found.plain[i], abs=1e-9)
    assert 14 - 1 == found.first_signal
    assert 19.04 == pytest.approx(found.high[-1], abs=0.0051)


@pytest.mark.checks(of=ewma)
@pytest.mark.parametrize("i", range(len(AVERAGES)))
def test_twenty_weighted_averages(i: int) -> None:
    """Each within the printed hundredth; limits 52.5884 and 47.4115 (*memory*); in control."""
    found = ewma(column(AVERAGES, "x"), target=50, sigma=2.0539, weight=0.3, settled=True)

    assert float(AVERAGES[i]["ewma_published"]) == pytest.approx(found.points[i], abs=0.0051)
    assert (52.5884, 47.4115) == pytest.approx((found.upper[i], found.lower[i]), abs=1.1e-4)
    assert found.first_outside is None


@pytest.mark.checks(of=ewma)
@pytest.mark.parametrize("i", range(len(SHIFT)))
def test_a_shift_of_one_sigma_by_weighted_averages(i: int) -> None:
    """Thirty averages; limits 9.73/10.27, 9.64/10.36 and 9.38/10.62; z30 is 10.6341 (*memory*)."""
    found = ewma(column(SHIFT, "x"), target=10, sigma=1, weight=0.10, width=2.7)

    assert float(SHIFT[i]["ewma_computed"]) == pytest.approx(found.points[i], abs=6e-5)
    assert [9.73, 9.64, 9.38] == [round(float(found.lower[k]), 2) for k in (0, 1, 29)]
    assert [10.27, 10.36, 10.62] == [round(float(found.upper[k]), 2) for k in (0, 1, 29)]
    assert 29 - 1 == found.first_outside


@pytest.mark.checks(of=cusum)
def test_a_shift_of_one_sigma_by_sums() -> None:
    """Period 29 signals with 5.28 (*memory*)."""
    found = cusum(column(SHIFT, "x"), target=10, slack=0.5, limit=5)

    assert (29 - 1, 5.28) == (found.first_signal, round(float(found.high[28]), 2))


@pytest.mark.checks(of=broken_rules)
@pytest.mark.parametrize("row", rows_of("control-weco-arl.csv"), ids=lambda row: row["rules"])
def test_how_often_chance_breaks_the_rules(row: dict[str, str]) -> None:
    """Mean points to a false alarm, exactly, by a chain over everything the rules can still see."""
    numbers = [int(one) for one in row["rules"].split("+")]

    assert float(row["ARL_published"]) == pytest.approx(
        mean_run_length(numbers), abs=0.0051 if row["rules"] != "1" else 0.06
    )


@pytest.mark.checks(of=lag_one)
@pytest.mark.checks(of=individuals)
def test_a_drift_that_limits_of_neighbours_do_not_fit() -> None:
    """Mean, sd and lag-1 correlation of NIST's filter (*memory*); 29 of 50 points are outside (*derived*)."""
    reading = column(rows_of("drift-mavro.csv"), "reading")
    found = individuals(reading)

    assert pytest.approx(2.001856, abs=5e-13) == found.mean
    assert pytest.approx(0.000429123454003053, rel=1e-9) == float(np.std(reading, ddof=1))
    assert pytest.approx(0.937989183438248, rel=1e-9) == lag_one(reading)
    assert 9.41e-5 == round(individuals(reading, d2=1.128).sigma, 7)
    assert 29 == int(np.sum((reading > found.upper) | (reading < found.lower)))


@pytest.mark.checks(of=beyond_published)
@pytest.mark.parametrize(
    ("patch", "limit"),
    [("base+fog", "+0.03"), ("mid-density step", "+-0.15"), ("density difference", "+-0.15"),
     ("gamma", "+-0.05"), ("mean density", "+-0.07")],
)  # fmt: skip
def test_published_limits(patch: str, limit: str) -> None:
    """Each limit of a monitored silver process as its row prints it; base and fog may fall."""
    row = next(row for row in rows_of("process-limits.csv") if row["parameter"] == patch)
    name = patch.removesuffix(" step")
    size = float(limit.removeprefix("+").removeprefix("-"))

    assert (limit, "seen") == (row["limit"], row["status"])
    assert size == LIMITS[name].above
    assert 0.0 == beyond_published(name, 1.0 + size - 1e-9, level=1.0)
    assert pytest.approx(0.01) == beyond_published(name, 1.0 + size + 0.01, level=1.0)
    assert (limit.startswith("+-")) == (beyond_published(name, 1.0 - size - 0.01, level=1.0) > 0)
