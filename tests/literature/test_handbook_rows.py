"""Handbook rows: published ones asserted (outside), those from memory by shape alone.

How many rows of each kind there are is counted in `counting.py`.
"""

from __future__ import annotations

from datetime import date

import pint
import pytest
from literature.tables import rows_of

from tankside.core.permanence.capacity import (
    ROLLS_PER_L_NAMED,
    ROLLS_PER_L_PLANNED,
    TABULAR_FACTOR,
    Fixed,
    capacity_left,
)
from tankside.core.permanence.clearing import DISCARD_AT, TIMES_CLEARING, TIMES_CLEARING_TABULAR
from tankside.core.permanence.units import ROLL_M2, g_m2_from_mg_in2, ug_per_cm2
from tankside.core.permanence.washing import LIMIT_G_M2
from tankside.core.rolls.formats import Format
from tankside.core.solutions.formulas import Constituent, Formula, recipe_for
from tankside.core.solutions.keeping import KeepingTime, good_until, months_after
from tankside.core.solutions.percent import Percent, by_weight_in_volume, grams_in, strong_ml_for
from tankside.core.solutions.replenishing import top_up_ml_per_roll
from tankside.core.solutions.reuse import ReuseRow, time_when_reused
from tankside.core.solutions.stop_bath import PUBLISHED_ROLLS_PER_L
from tankside.core.sources import OWN, Provenance

ROWS = rows_of("capacity.csv")
UNIT = pint.UnitRegistry()
IN2_M2 = 0.0254**2


def value(item: str, solution: str, unit: str, condition: str = "") -> float:
    """The one row so named."""
    found = {
        float(row["value"])
        for row in ROWS
        if (row["item"], row["solution"], row["unit"]) == (item, solution, unit)
        and row["condition"].startswith(condition)
    }
    (only,) = found
    return only


@pytest.mark.parametrize(
    ("solution", "format_"),
    [("roll 135-36", Format("135-36")), ("roll 120", Format("120")), ("sheet 4x5", Format("4x5"))],
)
def test_film_area(solution: str, format_: Format) -> None:
    """Published convention: 80 in2 a roll, 20 a sheet of 4x5."""
    assert value("area", solution, "in2") == 80 * format_.area_units


def test_unit_of_area() -> None:
    """516.13 cm2 are 80 in2 (arithmetic)."""
    assert value("area", "roll unit", "cm2") == pytest.approx(ROLL_M2 * 1e4, abs=0.005)


@pytest.mark.checks(of=capacity_left)
def test_fixer_counts() -> None:
    """Published: 20 and 25 rolls a litre by source; tabular film about two thirds, 17 rolls or 67 sheets."""
    fresh = capacity_left([], working_ml=1000)

    assert value("capacity", "rapid fixer 1+4", "rolls/L") == fresh.left_planned
    assert value("capacity", "acid fixer", "rolls/L") == ROLLS_PER_L_PLANNED
    assert value("capacity", "alkaline fixer", "rolls/L") == fresh.left_named == ROLLS_PER_L_NAMED
    assert value("capacity", "general fixer", "4x5/L", "ordinary") == 4 * ROLLS_PER_L_NAMED
    assert value("capacity", "general fixer", "rolls/L", "tabular") == round(
        ROLLS_PER_L_NAMED / TABULAR_FACTOR
    )
    assert value("capacity", "general fixer", "4x5/L", "tabular") == round(
        4 * ROLLS_PER_L_NAMED / TABULAR_FACTOR
    )


@pytest.mark.checks(of=capacity_left)
def test_tabular_factor_lies_between_two_sources() -> None:
    """Published: 50 to 70 % of the ordinary count."""
    share = (
        capacity_left([Fixed(1)], working_ml=1000).used_units
        / capacity_left([Fixed(1, tabular=True)], working_ml=1000).used_units
    )

    assert value("capacity_factor", "fixer", "low factor") <= share
    assert share <= value("capacity_factor", "fixer", "high factor")


def test_fixing_rules() -> None:
    """Published: twice the clearing time, cautious three times, discard at doubling."""
    assert value("fix", "film", "x clearing time", "cautious") == TIMES_CLEARING_TABULAR
    assert {TIMES_CLEARING, TIMES_CLEARING_TABULAR} == {
        float(row["value"]) for row in ROWS if row["unit"] == "x clearing time"
    }
    assert value("discard", "fixer", "x fresh clearing time") == DISCARD_AT


@pytest.mark.checks(of=ug_per_cm2)
def test_limits_of_residual_thiosulfate() -> None:
    """Published: 0.014 g/m2 and 1.4 ug/cm2 by two sources."""
    assert value("limit", "thiosulfate film LE-500", "g/m2") == LIMIT_G_M2
    assert value("limit", "thiosulfate microfilm", "ug/cm2") == pytest.approx(ug_per_cm2(LIMIT_G_M2))


@pytest.mark.checks(of=g_m2_from_mg_in2)
def test_salt_water_study_in_two_units() -> None:
    """Published with both units: 0.005 and 0.080 mg/in2 are 0.78 and 12.4 ug/cm2."""
    assert [0.78, 12.4] == pytest.approx(
        [ug_per_cm2(g_m2_from_mg_in2(one)) for one in (0.005, 0.080)], abs=0.05
    )


def test_stop_bath_count() -> None:
    """Published: 12 rolls a litre."""
    assert value("capacity", "SB-5 stop", "rolls/L") == PUBLISHED_ROLLS_PER_L


def ml(amount: float, unit: str) -> float:
    """mL, as pint converts."""
    return float(UNIT.Quantity(amount, unit).to("milliliter").magnitude)


@pytest.mark.checks(of=top_up_ml_per_roll)
@pytest.mark.parametrize(
    ("solution", "volume_ml", "area_m2", "per_roll"),
    [
        ("concentrate T, replenished", ml(1.5, "fluid_ounce"), 80 * IN2_M2, 44.36),
        ("developer", ml(8, "fluid_ounce"), 800 * IN2_M2, 23.66),
        ("x-ray developer", 1000, 3100 * IN2_M2, 25.81),
        ("D-97R", 650, 30.48 * 0.035, 31.45),
        ("F-5 fixer", 600, 30.48 * 0.035, 29.03),
    ],
)
def test_replenishing_for_a_roll(solution: str, volume_ml: float, area_m2: float, per_roll: float) -> None:
    """Published rates by area, and the millilitres a roll that follow (arithmetic rows)."""
    found = top_up_ml_per_roll(volume_ml, area_m2=area_m2)

    assert per_roll == value("replenish", solution, "mL/roll")
    assert per_roll == pytest.approx(found, rel=2e-4)


@pytest.mark.checks(of=top_up_ml_per_roll)
def test_half_a_litre_a_square_metre() -> None:
    """1 L to 3100 in2 is 500 mL/m2 (arithmetic on a published rule)."""
    assert value("replenish", "x-ray developer", "mL/m2") == pytest.approx(1000 / (3100 * IN2_M2), abs=0.05)


@pytest.mark.checks(of=months_after)
def test_months_as_sources_count_them() -> None:
    """Published: working fixer keeps two months, acid fixer twelve; by the calendar."""
    working = int(value("life", "working fixer", "months"))
    acid = int(value("life", "acid fixer 240/10/25", "months min"))

    assert date(2026, 5, 10) == months_after(date(2026, 3, 10), working)
    assert date(2027, 3, 10) == months_after(date(2026, 3, 10), acid)


@pytest.mark.parametrize("solution", ["D-76 stock", "syrup H stock"])
def test_part_full_keeps_shorter(solution: str) -> None:
    """From memory, so shape alone: a half-full bottle ends before a full one."""
    rule = KeepingTime(
        int(value("life", f"{solution} full bottle", "months")),
        int(value("life", f"{solution} half full", "months")),
        Provenance("from memory"),
    )
    made = date(2026, 3, 1)

    assert made < good_until(made, rule, part_full_since=made) < good_until(made, rule)


def test_time_grows_with_use() -> None:
    """From memory, so shape alone: the steps of a leaflet's table never shorten a time."""
    added = [60 * float(row["value"]) for row in ROWS if row["item"] == "time_increase"]
    table = [ReuseRow(4.0 * (at + 1), added_s=one) for at, one in enumerate(added)]
    times = [
        time_when_reused(420, used_units=used, next_units=1, bath_ml=1000, table=table) for used in range(12)
    ]

    assert times == sorted(times)
    assert times[0] < times[-1]


@pytest.mark.checks(of=recipe_for)
@pytest.mark.parametrize("name", sorted({row["formula"] for row in rows_of("formulas.csv")}))
def test_a_litre_is_the_formula_and_half_a_litre_half_of_it(name: str) -> None:
    """Each handbook formula, published or from memory: a litre gives its numbers, 500 mL their halves."""
    parts = tuple(
        Constituent(row["component"], float(row["grams_or_ml_per_litre"]))
        for row in rows_of("formulas.csv")
        if row["formula"] == name and row["component"] != "water start"
    )
    of = Formula(name, "developer", 750, parts, OWN)

    for volume_ml in (1000, 500):
        made = recipe_for(of, volume_ml=volume_ml)
        assert [one.per_litre * volume_ml / 1000 for one in parts] == [one.amount for one in made.parts]


@pytest.mark.checks(of=recipe_for)
@pytest.mark.parametrize(("grains", "printed"), [(175, 5.0), (260, 7.5), (350, 10.0), (185, 5.3)])
def test_printed_pairs_of_old_and_metric(grains: float, printed: float) -> None:
    """Published pairs of a formulary, grains in 80 imperial oz and g/L: to 1.5 %, as they were rounded."""
    g_l = UNIT.Quantity(grains, "grain").to("gram").magnitude / (ml(80, "imperial_fluid_ounce") / 1000)
    of = Formula("one", "developer", 750, (Constituent("it", g_l),), OWN)

    assert printed == pytest.approx(recipe_for(of, volume_ml=1000).parts[0].amount, rel=0.015)


@pytest.mark.checks(of=strong_ml_for)
def test_army_dilution_of_acid() -> None:
    """Published: 32 oz of 28 % from 99.5 % take 9.0 oz (US Army SS0513, p. 22), to its last digit."""
    found = strong_ml_for(32, strong=Percent(99.5, "v/v"), weak=Percent(28, "v/v"))

    assert pytest.approx(9.0, abs=0.05) == found


@pytest.mark.checks(of=grams_in)
def test_ten_percent_in_grains() -> None:
    """Published: 437.5 grains of a dry chemical in 10 oz make 10 % (Studio Light 1918: 43.75 an ounce),
    true of imperial ounces to half a percent; 45.64 grains of a US ounce are exact."""
    for unit, grains, within in (("imperial_fluid_ounce", 43.75, 0.005), ("fluid_ounce", 45.64, 2e-4)):
        found_g = grams_in(Percent(10, "w/v"), volume_ml=ml(1, unit))
        assert grains == pytest.approx(UNIT.Quantity(found_g, "gram").to("grain").magnitude, rel=within)


@pytest.mark.checks(of=by_weight_in_volume)
def test_stock_acid_in_weight_by_volume() -> None:
    """AA5's 290.2 g/L of 28 % by weight."""
    assert (
        pytest.approx(29.02, abs=0.005) == by_weight_in_volume(Percent(28, "w/w"), density_g_ml=1.0363).value
    )
