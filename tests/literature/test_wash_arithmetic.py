"""Washing, fixer strength and units against worked rows (arithmetic), pint and teaching rules (outside)."""

from __future__ import annotations

import pint
import pytest
from literature.tables import inputs_of, rows_of

from tankside.core.permanence.diffusion import (
    half_lives_needed,
    left_in_running_water,
    share_left,
    slowest_half_life_s,
)
from tankside.core.permanence.fixing_time import fixing_time
from tankside.core.permanence.strength import (
    from_concentrate_g_l,
    from_crystals_g_l,
    silver_in_rinse_mg_l,
)
from tankside.core.permanence.units import ROLL_M2, g_m2_from_mg_in2, mg_per_roll, ug_per_cm2
from tankside.core.permanence.washing import LIMIT_G_M2, equilibrium_reduction

ROWS = {row["id"]: row for row in rows_of("washing.csv")}
UNIT = pint.UnitRegistry()


def number(name: str) -> float:
    """The expected value of a row."""
    return float(ROWS[name]["expected"])


def of(prefix: str) -> list[object]:
    """The rows whose id begins so."""
    return [pytest.param(row, id=name) for name, row in ROWS.items() if name.startswith(prefix)]


@pytest.mark.checks(of=share_left)
@pytest.mark.parametrize("row", of("DF"))
def test_diffusion_out_of_a_layer(row: dict[str, str]) -> None:
    """Share left in a layer with one face sealed, worked rows."""
    told = {name: float(value) for name, value in inputs_of(row).items()}
    found = share_left(told["t_s"], diffusion_m2_s=told["D_m2s"], depth_m=told["L_m"])

    assert float(row["expected"]) == pytest.approx(found, abs=1e-6)


@pytest.mark.checks(of=slowest_half_life_s)
def test_diffusion_is_a_matter_of_seconds() -> None:
    """Late in the series a half-life halves what is left, so its first term alone counts."""
    layer = {"diffusion_m2_s": 4e-10, "depth_m": 4e-5}
    half_s = slowest_half_life_s(**layer)

    assert share_left(10, **layer) / 2 == pytest.approx(share_left(10 + half_s, **layer), rel=1e-6)


@pytest.mark.checks(of=equilibrium_reduction)
@pytest.mark.parametrize("name", ["N1", "N2", "N3", "N4"])
def test_least_changes(name: str) -> None:
    """The fewest complete changes that reach the limit, and what they leave, worked rows."""
    told = {key: float(value) for key, value in inputs_of(ROWS[name]).items()}

    def left(fills: int) -> float:
        thinned = equilibrium_reduction(retained_ml=told["v_mL"], fill_ml=told["V_mL"], fills=fills)
        return told["c0_gL"] / thinned * told["v_f_mL"] / 1000 / told["A_m2"]

    fewest = next(fills for fills in range(1, 10) if left(fills) <= LIMIT_G_M2)

    assert number(name) == fewest
    assert number(f"{name}r") == pytest.approx(left(fewest), rel=0.005)


@pytest.mark.checks(of=mg_per_roll)
def test_limit_on_a_roll() -> None:
    """U3: 0.014 g/m2 on 80 in2, as pint converts it."""
    library = (0.014 * UNIT.gram / UNIT.meter**2 * 80 * UNIT.inch**2).to("milligram").magnitude

    assert number("U3") == pytest.approx(mg_per_roll(0.014), abs=1e-5)
    assert library == pytest.approx(mg_per_roll(0.014), rel=1e-9)


@pytest.mark.checks(of=ug_per_cm2)
def test_limit_in_micrograms() -> None:
    """U4, and published: 0.014 g/m2 and 1.4 ug/cm2 are one limit (ANSI IT9.1-1996; ISO 18917:1999)."""
    assert number("U4") == pytest.approx(ug_per_cm2(0.02), abs=1e-5)
    assert pytest.approx(1.4) == ug_per_cm2(0.014)


@pytest.mark.checks(of=g_m2_from_mg_in2)
def test_older_unit() -> None:
    """U6: 0.08 mg/in2 is 0.124 g/m2."""
    assert number("U6") == pytest.approx(g_m2_from_mg_in2(0.08), abs=1e-5)


@pytest.mark.checks(of=left_in_running_water)
def test_half_a_minute_rule() -> None:
    """HM; published: half after 1 min, a quarter after 2 (NAVEDTRA 14209); half in 15 s (Army SS0509-8)."""
    assert number("HM") == pytest.approx(left_in_running_water(1200, half_life_s=60), rel=1e-4)
    assert [0.5, 0.25] == [left_in_running_water(time_s, half_life_s=60) for time_s in (60, 120)]
    assert 0.5 == left_in_running_water(15, half_life_s=15)


@pytest.mark.checks(of=half_lives_needed)
def test_half_lives_to_the_limit() -> None:
    """HL: 8.2293 from 4.2015 to 0.014 g/m2."""
    assert number("HL") == pytest.approx(half_lives_needed(start_g_m2=4.2015, limit_g_m2=0.014), abs=0.001)


@pytest.mark.checks(of=from_crystals_g_l)
def test_thiosulfate_of_crystals() -> None:
    """C1: 240 g/L of crystals."""
    assert number("C1") == pytest.approx(from_crystals_g_l(240), abs=0.1)


@pytest.mark.checks(of=from_concentrate_g_l)
def test_thiosulfate_of_concentrate() -> None:
    """C2: 60 % ammonium thiosulfate at 1+4 (density from memory)."""
    assert number("C2") == pytest.approx(from_concentrate_g_l(parts_of_water=4), abs=0.2)


@pytest.mark.checks(of=silver_in_rinse_mg_l)
@pytest.mark.parametrize(("name", "rinse"), [("AG1", 1), ("AG2", 2)])
def test_silver_in_the_rinse(name: str, rinse: int) -> None:
    """First and second rinse after 4 g/L of silver, worked rows; the first is far above 5 mg/L."""
    found = silver_in_rinse_mg_l(fixer_silver_g_l=4, retained_ml=10, fill_ml=500, rinse=rinse)

    assert number(name) == pytest.approx(found, abs=float(ROWS[name]["tolerance"]))
    assert (rinse == 1) == (found > 5)


@pytest.mark.checks(of=fixing_time)
def test_clear_two_minutes_fix_four() -> None:
    """Published: clears in 2 min, at least 4 min (T.O. 33B-1-1, p. 6-77); two baths share it equally
    (NAVEDTRA 14209, p. 249)."""
    assert (240.0,) == fixing_time(120, grain="ordinary").each_s
    assert (120.0, 120.0) == fixing_time(120, grain="ordinary", baths=2).each_s
    assert 240.0 == fixing_time(120, grain="ordinary", baths=2).whole_s


def test_a_roll_is_eighty_square_inches() -> None:
    """516.13 cm2 (arithmetic on the published convention)."""
    assert (80 * UNIT.inch**2).to("meter**2").magnitude == pytest.approx(ROLL_M2, rel=1e-9)
