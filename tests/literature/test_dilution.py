"""Dilutions and least stock against worked rows (arithmetic); units of volume against a library (outside)."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest
from literature.tables import inputs_of, rows_of

from tankside.core.quantities.convert import celsius, fahrenheit, ml_each
from tankside.core.solutions.dilution import stock_and_water
from tankside.core.solutions.notation import read_dilution
from tankside.core.solutions.volumes import stock_for_film, tank_needed

ROWS = rows_of("dilution.csv")
NOTATION = [pytest.param(row, id=row["id"]) for row in ROWS if row["id"].startswith("DN")]
LEAST_STOCK = [pytest.param(row, id=row["id"]) for row in ROWS if row["id"].startswith("MS")]


@pytest.mark.checks(of=stock_and_water)
@pytest.mark.parametrize("row", NOTATION)
def test_stock_for_a_volume(row: dict[str, str]) -> None:
    """1+n is one part and n of water, worked rows."""
    volume_ml = float(inputs_of(row)["V_total_mL"])
    found = stock_and_water(volume_ml, read_dilution(row["model"]))

    assert float(row["expected"]) == pytest.approx(found.stock_ml, abs=float(row["tolerance"]))


@pytest.mark.checks(of=read_dilution)
@pytest.mark.parametrize("row", NOTATION)
def test_what_the_other_reading_would_cost(row: dict[str, str]) -> None:
    """'1 in n' instead of '1+n' gives the stock and the error that the worked row names."""
    volume_ml, parts = float(inputs_of(row)["V_total_mL"]), row["model"].removeprefix("1+")
    told = row["reference"].removeprefix(f"misread as 1 in {parts}: ")
    misread_ml, error = (float(one.split()[-2].removeprefix("+")) for one in told.split(","))
    right = stock_and_water(volume_ml, read_dilution(row["model"])).stock_ml
    wrong = stock_and_water(volume_ml, read_dilution(f"1 in {parts}")).stock_ml

    assert misread_ml == pytest.approx(wrong, abs=0.001)
    assert error == pytest.approx(100 * (wrong / right - 1), abs=0.05)


@pytest.mark.checks(of=stock_for_film)
@pytest.mark.parametrize("row", LEAST_STOCK)
def test_rolls_and_tank_for_a_least_stock(row: dict[str, str]) -> None:
    """How many rolls a tank's stock serves, and which tank serves one, worked rows, exact."""
    told = inputs_of(row)
    tank_ml, least_ml, dilution = (
        float(told["tank_mL"]),
        float(told["min_stock_mL"]),
        read_dilution(told["dil"]),
    )
    rolls, tank = (float(one) for one in row["expected"].split(" / "))
    found = stock_for_film([1.0], tank_ml=tank_ml, dilution=dilution, least_stock_ml=least_ml)

    assert rolls == found.stock_ml / least_ml
    assert tank == tank_needed(least_ml, dilution) == found.needs_ml


@pytest.mark.checks(of=ml_each)
@pytest.mark.parametrize(
    ("unit", "name"),
    [("ml", "millilitre"), ("us_fl_oz", "fluid_ounce"), ("imperial_fl_oz", "imperial_fluid_ounce")],
)
def test_units_of_volume_against_a_library(unit: str, name: str) -> None:
    """Pint's own registry of units says the same."""
    expected = pint.UnitRegistry().Quantity(1, name).to("millilitre").magnitude

    assert pytest.approx(expected, rel=1e-12) == ml_each(unit)  # type: ignore[arg-type]


@pytest.mark.checks(of=ml_each)
def test_units_of_volume_against_their_definitions() -> None:
    """US: a 128th of 231 cubic inches of 2.54 cm; imperial: a 160th of 4.54609 L (published definitions)."""
    assert float(Fraction(231, 128) * Fraction("2.54") ** 3) == ml_each("us_fl_oz")
    assert float(Fraction("4546.09") / 160) == ml_each("imperial_fl_oz")


@pytest.mark.checks(of=celsius)
@pytest.mark.parametrize(("temp_f", "temp_c"), [(32.0, 0.0), (212.0, 100.0), (68.0, 20.0), (-40.0, -40.0)])
def test_fixed_points_of_the_two_scales(temp_f: float, temp_c: float) -> None:
    """Ice, steam, the developing temperature of the trade, and where the two meet."""
    assert temp_c == celsius(temp_f)
    assert temp_f == fahrenheit(temp_c)
