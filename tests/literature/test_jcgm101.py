"""Monte Carlo against the worked examples of JCGM 101:2008, clause 9.

data/jcgm101.csv says which values are *exact* (they follow from the inputs) and which are *memory*,
confirmed by an independent simulation. Clause 9.5 (gauge block) is left out: it needs Student and trapezoid
distributions that nothing here uses. data/reading-error.csv: first-order rules (*derived*).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import pytest
from literature.tables import rows_of

from tankside.core.doubt.distributions import Normal, Uniform
from tankside.core.doubt.groups import Group, Input, alone, draws_for
from tankside.core.doubt.monte_carlo import Outcome, propagate, propagate_until

ROOT3 = math.sqrt(3)
UNIT = Uniform(-ROOT3, ROOT3)
SUMS: dict[str, Sequence[Group]] = {
    "9.2.2": [alone(f"x{i}", Normal(0, 1)) for i in range(4)],
    "9.2.3": [alone(f"x{i}", UNIT) for i in range(4)],
    "9.2.4": [*[alone(f"x{i}", UNIT) for i in range(3)], alone("x3", Uniform(-10 * ROOT3, 10 * ROOT3))],
}
ADDITIVE = [row for row in rows_of("jcgm101.csv") if row["clause"] in SUMS]


def drawn(groups: Sequence[Group], model: object, count: int = 200_000) -> Outcome:
    """One outcome with many draws."""
    return propagate(model, groups, draws_for(groups, seed=101, count=count))  # type: ignore[arg-type]


@pytest.mark.checks(of=propagate)
@pytest.mark.parametrize("row", ADDITIVE, ids=lambda row: f"{row['clause']}-{row['quantity']}")
def test_sums_of_four(row: dict[str, str]) -> None:
    """Standard uncertainty and 95 % interval of a sum of four inputs."""
    out = drawn(SUMS[row["clause"]], lambda v: sum(v.values()))
    published = [float(part) for part in row["published"].split(";")]
    found = [out.sd] if row["quantity"] == "u" else list(out.interval(0.95))

    assert published == pytest.approx(found, abs=0.06 if row["clause"] == "9.2.4" else 0.015)


@pytest.mark.checks(of=propagate)
def test_mass_calibration() -> None:
    """9.3: mean 1.2340 mg, standard uncertainty 0.0754 mg, shortest 95 % interval 1.0834 to 1.3825 mg."""
    groups = [
        alone("m_r", Normal(100_000.0, 0.050)),
        alone("dm_r", Normal(1.234, 0.020)),
        alone("air", Uniform(1.10, 1.30)),
        alone("rho_w", Uniform(7000, 9000)),
        alone("rho_r", Uniform(7950, 8050)),
    ]

    def model(v: dict[str, np.ndarray]) -> np.ndarray:
        buoyancy = 1 + (v["air"] - 1.2) * (1 / v["rho_w"] - 1 / v["rho_r"])
        return (v["m_r"] + v["dm_r"]) * buoyancy - 100_000.0

    out = drawn(groups, model)

    assert pytest.approx(1.2340, abs=0.0005) == out.mean
    assert pytest.approx(0.0754, abs=0.0003) == out.sd
    assert pytest.approx((1.0834, 1.3825), abs=0.004) == out.shortest(0.95)


@pytest.mark.checks(of=propagate)
@pytest.mark.parametrize(("x1", "r"), [(0.0, 0.0), (0.010, 0.0), (0.050, 0.0), (0.0, 0.9), (0.050, 0.9)])
def test_comparison_loss(x1: float, r: float) -> None:
    """9.4: mean and variance of X1^2 + X2^2 with correlated normal inputs (*exact*)."""
    u = 0.005
    pair = Group("x", (Input("x1", Normal(x1, u)), Input("x2", Normal(0.0, u))), ((1.0, r), (r, 1.0)))
    out = drawn([pair], lambda v: v["x1"] ** 2 + v["x2"] ** 2)
    variance = 4 * u**2 * x1**2 + 4 * u**4 * (1 + r**2)

    assert pytest.approx(x1**2 + 2 * u**2, rel=0.01) == out.mean
    assert pytest.approx(math.sqrt(variance), rel=0.01) == out.sd


@pytest.mark.checks(of=propagate_until)
def test_draws_until_steady() -> None:
    """7.9: the blocks stop when mean, sd and ends are steady to the tolerance, and are then within it."""
    out = propagate_until(lambda v: v["x"], [alone("x", Normal(0.0, 1.0))], seed=1, tolerance=0.02)

    assert pytest.approx(0.0, abs=0.02) == out.mean
    assert pytest.approx(1.0, abs=0.02) == out.sd
    assert pytest.approx((-1.645, 1.645), abs=0.03) == out.interval()


@pytest.mark.checks(of=propagate)
def test_reading_errors_reach_a_gradient_as_first_order_says() -> None:
    """Reading errors of 0.02 in density are 0.0189 in gradient and 0.0564 in log exposure (*derived*)."""
    row = next(row for row in rows_of("reading-error.csv") if "exact" in row["method"])
    groups = [alone("high", Normal(1.0, 0.02)), alone("low", Normal(0.1, 0.02))]
    gradient = drawn(groups, lambda v: (v["high"] - v["low"]) / 1.5)
    speed_point = drawn(groups[1:], lambda v: v["low"] / 0.355)

    assert float(row["sd_Gbar"]) == pytest.approx(gradient.sd, abs=2e-4)
    assert float(row["sd_logHm"]) == pytest.approx(speed_point.sd, abs=2e-4)
