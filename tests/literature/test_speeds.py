"""Film speeds, standard and old.

data/iso-speeds.csv: pairs of the standard (series *from memory*, its bottom seen), exposures *derived* from
S = 0.8/Hm. data/old-speeds.csv: M. J. Martin, The Wireless Transmission of Photographs (1921), *published*.
"""

from __future__ import annotations

import numpy as np
import pytest
from literature.tables import rows_of

from tankside.core.doubt.estimate import Estimate
from tankside.core.sensitometry.inertia import hd_speed, watkins_speed, wynne_speed
from tankside.core.sensitometry.speed import (
    ARITHMETIC,
    condition_of,
    degrees_of,
    exposure_index,
    fractional_gradient_offset,
    speed_of,
)

STEADY = Estimate(0.80, 0.79, 0.81, "")
SPEEDS = rows_of("iso-speeds.csv")
OLD = rows_of("old-speeds.csv")


def sure(value: float) -> Estimate:
    """A value without doubt."""
    return Estimate(value, value, value, "log lx s")


@pytest.mark.checks(of=speed_of)
@pytest.mark.checks(of=degrees_of)
@pytest.mark.parametrize("row", SPEEDS, ids=lambda row: row["iso_arith"])
def test_standard_pairs(row: dict[str, str]) -> None:
    """Centre and both ends of each window round to its pair; every arithmetic speed to its own degree."""
    low, high = float(row["log10Hm_window_low"]), float(row["log10Hm_window_high"])
    for log_hm in (float(row["log10Hm_centre"]), low + 2e-4, high - 2e-4):
        found = speed_of(sure(log_hm), STEADY, stated_light=True)
        assert (float(row["iso_arith"]), int(row["iso_deg"])) == (found.arithmetic, found.degrees)

    assert int(row["iso_deg"]) == degrees_of(float(row["iso_arith"]))
    assert float(row["Hm_centre_lux_s"]) == pytest.approx(10 ** float(row["log10Hm_centre"]), rel=2e-4)


@pytest.mark.checks(of=speed_of)
@pytest.mark.parametrize(("hm", "pair"), [(0.0080, (100, 21)), (0.0020, (400, 27)), (0.0064, (125, 22))])
def test_three_exposures(hm: float, pair: tuple[int, int]) -> None:
    """0.0080, 0.0020 and 0.0064 lux-seconds are 100/21, 400/27 and 125/22 (*derived*)."""
    found = speed_of(sure(float(np.log10(hm))), STEADY, stated_light=True)

    assert pair == (found.arithmetic, found.degrees)
    assert len(SPEEDS) == len(ARITHMETIC)


@pytest.mark.checks(of=condition_of)
@pytest.mark.parametrize(
    ("rise", "condition", "kind"),
    [
        ((0.80, 0.78, 0.82), "met", "ISO speed"),
        ((0.80, 0.74, 0.86), "straddles", "exposure index"),
        ((0.56, 0.52, 0.60), "not met", "exposure index"),
    ],
)
def test_the_condition_of_the_standard(rise: tuple[float, float, float], condition: str, kind: str) -> None:
    """0.80 over 1.30 (ISO 6:1993, seen), within 0.05 (*memory*); straddled, it is an index."""
    found = speed_of(sure(-2.0969), Estimate(*rise, ""), stated_light=True)

    assert (condition, kind) == (condition_of(Estimate(*rise, "")), found.kind)
    assert "exposure index" == speed_of(sure(-2.0969), STEADY, stated_light=False).kind


@pytest.mark.checks(of=exposure_index)
def test_a_metered_tone_lies_three_and_a_third_stops_up() -> None:
    """8.1/S over 0.8/S is 10.2 times, 3.34 stops (ISO 2720 constants, *memory*): that index is itself."""
    found = exposure_index(Estimate(-1.0054, -1.0554, -0.9554, "log"), metered_index=100)

    assert pytest.approx(100, rel=1e-3) == found.value
    assert pytest.approx(10**0.05, rel=1e-6) == found.high / found.value


@pytest.mark.checks(of=fractional_gradient_offset)
def test_fractional_gradient_point() -> None:
    """0.296 below the 0.10 point where the rise is 0.80 (Nelson and Simonds 1956, seen)."""
    assert 0.296 == round(fractional_gradient_offset(0.80), 3)


@pytest.mark.checks(of=hd_speed)
@pytest.mark.checks(of=watkins_speed)
@pytest.mark.checks(of=wynne_speed)
def test_the_worked_inertia() -> None:
    """Inertia 1/5: 170, 250 and 101."""
    assert (170, 250, 101) == (round(hd_speed(0.2)), round(watkins_speed(0.2)), int(wynne_speed(250)))


@pytest.mark.checks(of=watkins_speed)
@pytest.mark.checks(of=wynne_speed)
@pytest.mark.parametrize("row", OLD, ids=lambda row: row["HD"])
def test_the_old_table(row: dict[str, str]) -> None:
    """Watkins within 1.5 (up to 80 by a rule of 3:2), Wynne within 1.2; 28 and 103 look like misprints."""
    watkins = watkins_speed(34 / float(row["HD"]))
    wynne = wynne_speed(watkins)

    by_rule = float(row["HD"]) * 1.5 if float(row["HD"]) <= 80 else watkins
    assert float(row["watkins_printed"]) == pytest.approx(by_rule, abs=1.5)
    assert float(row["watkins_formula"]) == pytest.approx(watkins, abs=0.06)
    assert float(row["wynne_formula"]) == pytest.approx(wynne, abs=0.06)
    if row["wynne_printed"] not in {"28", "103"}:
        assert float(row["wynne_printed"]) == pytest.approx(wynne, abs=1.35)
