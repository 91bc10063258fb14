"""Monte Carlo against the worked examples of JCGM 101:2008, clause 9.

data/jcgm101.csv says which values are *exact* (they follow from the inputs) and which are *memory*,
confirmed by an independent simulation. Of clause 9.5 (a gauge block) the inputs are from memory as well: they
stand in `GAUGE_BLOCK`. data/reading-error.csv: first-order rules (*derived*).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np
import pytest
from literature.tables import rows_of

from tankside.core.doubt.calibration_shapes import Arcsine, CurvedTrapezoid, Student
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
GAUGE_BLOCK: Sequence[Group] = [
    alone("standard", Student(50_000_623, 25, freedom=18)),
    alone("difference", Student(215, 6, freedom=24)),
    alone("at random", Student(0, 4, freedom=5)),
    alone("of the comparator", Student(0, 7, freedom=8)),
    alone("expansion", Uniform(9.5e-6, 13.5e-6)),
    alone("room", Normal(-0.1, 0.2)),
    alone("cycle", Arcsine(-0.5, 0.5)),
    alone("expansions differ", CurvedTrapezoid(-1e-6, 1e-6, give=0.1e-6)),
    alone("blocks differ", CurvedTrapezoid(-0.050, 0.050, give=0.025)),
]
"""Inputs of clause 9.5, all from memory: lengths in nm, expansion in 1/K, temperatures from 20 C in K."""

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


def gauge_block(v: Mapping[str, np.ndarray]) -> np.ndarray:
    """How much longer than 50 mm the block is, in nm: the model of clause 9.5 (from memory)."""
    warmth = v["room"] + v["cycle"]
    standard = v["standard"] * (1 + v["expansion"] * (warmth - v["blocks differ"]))
    compared = standard + v["difference"] + v["at random"] + v["of the comparator"]
    return compared / (1 + (v["expansion"] + v["expansions differ"]) * warmth) - 50e6


@pytest.mark.checks(of=propagate)
def test_gauge_block() -> None:
    """9.5: mean 838 nm, u 36 nm, shortest 99 % interval 745 to 932 nm, all printed whole and from memory.

    Within half a unit of print and four standard errors, which replicate blocks give.
    """
    blocks = [
        propagate(gauge_block, GAUGE_BLOCK, draws_for(GAUGE_BLOCK, seed=seed, count=25_000))
        for seed in range(16)
    ]
    all_drawn = np.sort(np.concatenate([block.drawn for block in blocks]))
    found, each = (
        np.array([(one.mean, one.sd, *one.shortest(0.99)) for one in some])
        for some in ([Outcome(all_drawn, blocks[0].told)], blocks)
    )
    error = each.std(axis=0, ddof=1) / np.sqrt(len(blocks))
    printed = ";".join(row["published"] for row in rows_of("jcgm101.csv") if row["clause"] == "9.5")

    assert np.all(error < (0.1, 0.1, 1.0, 1.0))
    for published, ours, doubt in zip(printed.split(";"), found[0], error, strict=True):
        assert float(published) == pytest.approx(ours, abs=0.5 + 4 * doubt)


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
