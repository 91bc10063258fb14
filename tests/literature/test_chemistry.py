"""Solutions against worked rows (arithmetic), a tabulated standard and printed worked examples (outside)."""

from __future__ import annotations

import re

import pytest
from literature.tables import inputs_of, rows_of

from tankside.core.solutions.acetic import (
    GLACIAL,
    STOCK,
    stock_from_glacial,
    stock_mol_per_l,
    strength_by_volumes,
)
from tankside.core.solutions.oxygen import (
    VAPOUR_20_C_PA,
    dissolved_oxygen_mg_l,
    most_lost_g,
    most_lost_mixing_mg_l,
    oxygen_mg_per_ml,
    used_g_per_g_oxygen,
)
from tankside.core.solutions.percent import strong_g_for
from tankside.core.solutions.replenishing import (
    bromide_mg,
    built_up_g_l,
    original_left,
    rolls_until_half_new,
    steady_g_l,
)
from tankside.core.solutions.stop_bath import (
    PUBLISHED_ROLLS_PER_L,
    acid_left_share,
    acid_taken_mol_l,
    implied_carry_ml,
    rolls_per_litre,
    rolls_until_done,
)
from tankside.core.solutions.sulfur_dioxide import ppm_in_room, sulfur_dioxide_g

ROWS = {row["id"]: row for row in rows_of("chemistry.csv")}


def of(*prefixes: str) -> list[object]:
    """The rows whose id begins so."""
    return [pytest.param(row, id=name) for name, row in ROWS.items() if name.startswith(prefixes)]


def expected(name: str, place: int = 0) -> float:
    """A number of a row's expected answer, by its place."""
    return float(re.findall(r"\d+\.?\d*", ROWS[name]["expected"])[place])


@pytest.mark.checks(of=oxygen_mg_per_ml)
@pytest.mark.parametrize(
    ("name", "temp_c", "vapour_pa"), [("O15", 15, 0), ("O25", 25, 0), ("O20w", 20, VAPOUR_20_C_PA)]
)
def test_oxygen_in_air(name: str, temp_c: float, vapour_pa: float) -> None:
    """Dry and moist air by the gas law, worked rows."""
    found = oxygen_mg_per_ml(temp_c, vapour_pa=vapour_pa)

    assert expected(name) == pytest.approx(found, abs=float(ROWS[name]["tolerance"]))


@pytest.mark.checks(of=dissolved_oxygen_mg_l)
@pytest.mark.parametrize("row", of("DO1", "DO2"))
def test_oxygen_in_water(row: dict[str, str]) -> None:
    """The saturation formula, worked rows."""
    found = dissolved_oxygen_mg_l(float(inputs_of(row)["t_C"]) if "=" in row["inputs"] else 20.0)

    assert float(row["expected"]) == pytest.approx(found, abs=float(row["tolerance"]))


@pytest.mark.checks(of=dissolved_oxygen_mg_l)
@pytest.mark.parametrize(("temp_c", "mg_l"), [(15, 10.1), (20, 9.09), (25, 8.26)])
def test_oxygen_in_water_as_tabulated(temp_c: float, mg_l: float) -> None:
    """Published: table of EN 25814, to its last digit."""
    assert mg_l == pytest.approx(dissolved_oxygen_mg_l(temp_c), abs=0.05 if mg_l > 10 else 0.006)


@pytest.mark.checks(of=used_g_per_g_oxygen)
def test_what_a_millilitre_of_air_uses_up() -> None:
    """SX2 and HX1: sulfite and hydroquinone for each mL of dry air at 20 C, worked rows."""
    air = oxygen_mg_per_ml(20)

    assert expected("SX2") == pytest.approx(air * used_g_per_g_oxygen("sulfite"), abs=0.003)
    assert expected("HX1") == pytest.approx(air * used_g_per_g_oxygen("hydroquinone"), abs=0.002)


@pytest.mark.checks(of=most_lost_g)
@pytest.mark.parametrize("row", of("AGE"))
def test_ageing_bound(row: dict[str, str]) -> None:
    """The most sulfite that the air over a part-full bottle takes, in g and in percent, worked rows."""
    told = {name: float(value) for name, value in inputs_of(row).items()}
    lost_g = most_lost_g(air_ml=told["V_bottle"] - told["V_liq"], openings=int(told["openings"]))
    held_g = told["sulfite_gL"] * told["V_liq"] / 1000
    told_g, told_percent = (expected(row["id"], place) for place in (0, 1))

    assert told_g == pytest.approx(lost_g, rel=0.005)
    assert told_percent == pytest.approx(100 * lost_g / held_g, rel=0.005)


@pytest.mark.checks(of=most_lost_mixing_mg_l)
def test_oxygen_of_the_mixing_water() -> None:
    """DO: 9.09 mg/L use up 71.6 mg/L of sulfite, worked row on a tabulated value."""
    assert expected("DO") == pytest.approx(most_lost_mixing_mg_l(20), abs=0.2)


@pytest.mark.checks(of=strength_by_volumes)
def test_three_and_eight_parts() -> None:
    """AA1, and published: NAVEDTRA 14209 (1993), ch. 9, calls 3 parts and 8 of water 28 %."""
    made = strength_by_volumes(glacial_ml=3, water_ml=8)

    assert expected("AA1") == pytest.approx(made.value, abs=0.05)
    assert STOCK.value == pytest.approx(made.value, abs=0.5)


@pytest.mark.checks(of=stock_from_glacial)
def test_a_litre_of_stock_acid() -> None:
    """AA3: 290.7 g = 277.1 mL of glacial and 745.6 g of water (densities from memory)."""
    made = stock_from_glacial(1000)
    told = [expected("AA3", place) for place in range(3)]

    assert told == pytest.approx([made.glacial_g, made.glacial_ml, made.water_g], abs=0.3)


@pytest.mark.checks(of=strong_g_for)
def test_acid_by_weight() -> None:
    """AA4: 28.056 g and 71.944 g of water; published: Anchell p. 171 takes 28 + 71 g at 99.5 %: 28.14 %."""
    acid_g = strong_g_for(100, strong=GLACIAL, weak=STOCK)

    assert [expected("AA4"), expected("AA4", 1)] == pytest.approx([acid_g, 100 - acid_g], abs=0.002)
    assert pytest.approx(28.14, abs=0.01) == 28 / 99 * 99.5


@pytest.mark.checks(of=stock_mol_per_l)
def test_acid_in_moles() -> None:
    """AA5: 4.832 mol/L."""
    assert expected("AA5") == pytest.approx(stock_mol_per_l(), abs=0.005)


BATH = {"bath_ml": 1000, "top_up_ml": 70}


@pytest.mark.checks(of=built_up_g_l)
@pytest.mark.parametrize("rolls", [1, 5, 10, 20, 40, 60])
def test_what_builds_up(rolls: int) -> None:
    """After topping up, worked rows; and the same by adding up roll by roll."""
    content_g = 0.0
    for _ in range(rolls):
        content_g = (content_g + 0.062) * (1 - 70 / 1000)
    found = built_up_g_l(rolls, given_mg=62, **BATH)

    assert expected(f"RP{rolls}") == pytest.approx(found, abs=1e-4)
    assert content_g == pytest.approx(found)


@pytest.mark.checks(of=steady_g_l)
def test_where_it_settles() -> None:
    """Thousands of rolls on, the series has come to its limit."""
    assert steady_g_l(given_mg=62, **BATH) == pytest.approx(built_up_g_l(5000, given_mg=62, **BATH))


@pytest.mark.checks(of=rolls_until_half_new)
def test_half_new() -> None:
    """RPh: 9.551 rolls."""
    assert expected("RPh") == pytest.approx(rolls_until_half_new(**BATH), abs=0.001)


@pytest.mark.checks(of=original_left)
@pytest.mark.parametrize("rolls", [10, 20, 50])
def test_how_much_is_the_first_filling(rolls: int) -> None:
    """RPo: worked rows."""
    assert expected(f"RPo{rolls}") == pytest.approx(original_left(rolls, **BATH), abs=1e-4)


@pytest.mark.checks(of=bromide_mg)
def test_bromide_of_a_roll() -> None:
    """BR1: 80 mg of silver give 59.26 mg, worked row."""
    assert expected("BR1") == pytest.approx(bromide_mg(80), abs=0.02)


ACID = {"SB1": 0.1546, "SB2": 0.2319, "SB3": 0.1665, "SB4": 0.3330}


@pytest.mark.checks(of=rolls_per_litre)
@pytest.mark.parametrize("row", of("SB"))
def test_stop_bath(row: dict[str, str]) -> None:
    """Rolls a litre for four baths and two volumes carried in, worked rows."""
    bath, carried_ml = row["id"].split("_")
    found = rolls_per_litre(acid_mol_l=ACID[bath], taken_mol_l=0.799, carried_ml=float(carried_ml))

    assert float(row["expected"]) == pytest.approx(found, abs=0.2)


@pytest.mark.checks(of=acid_taken_mol_l)
@pytest.mark.parametrize(("sulfite", "carbonate", "borax", "moles"), [(100, 0, 2, 0.799), (50, 25, 0, 0.856)])
def test_acid_taken_by_a_developer(sulfite: float, carbonate: float, borax: float, moles: float) -> None:
    """Two developers, own working; the constants are from memory."""
    found = acid_taken_mol_l(sulfite_g_l=sulfite, carbonate_g_l=carbonate, borax_g_l=borax)

    assert moles == pytest.approx(found, abs=0.0015)


@pytest.mark.checks(of=implied_carry_ml)
def test_published_count_is_consistent_with_what_is_carried() -> None:
    """Published: 12 rolls/L (Anchell 2008, p. 268), and 10 mL held by a wet roll and tank (Torzynski 2004).

    Two publications that know nothing of each other meet in the model; this validates neither.
    """
    carried_ml = implied_carry_ml(PUBLISHED_ROLLS_PER_L, acid_mol_l=0.1546, taken_mol_l=0.799)

    assert pytest.approx(10, rel=0.05) == carried_ml


@pytest.mark.checks(of=acid_left_share)
def test_acid_left_ends_where_the_count_ends() -> None:
    """Little by little the roll-by-roll balance comes to the count of `rolls_per_litre`, less what is
    carried out."""
    bath = {"acid_mol_l": 0.1546, "taken_mol_l": 0.799}
    count = rolls_per_litre(carried_ml=1, **bath)
    end = acid_left_share(count, volume_ml=1000, carried_ml=1, **bath)
    before = acid_left_share(0.8 * count, volume_ml=1000, carried_ml=1, **bath)

    assert end == 0.0
    assert 0 < before < 0.2


@pytest.mark.checks(of=rolls_until_done)
@pytest.mark.parametrize(("taken", "carried"), [(0.799, 10.0), (0.19975, 10.0), (0.799, 5.0)])
def test_acid_ends_where_a_balance_by_hand_does(taken: float, carried: float) -> None:
    """Roll by roll: out goes bath, in comes developer; the roll that turns it holds the end (own sum)."""
    acid = 0.1546 / (1 + 10 ** (4.756 - 5.0))
    rolls = 0
    while acid > 0:
        acid += -acid * carried / 1000 - taken * carried / 1000
        rolls += 1
    end = rolls_until_done(volume_ml=1000, acid_mol_l=0.1546, taken_mol_l=taken, carried_ml=carried)

    assert rolls - 1 < end <= rolls


@pytest.mark.checks(of=sulfur_dioxide_g)
@pytest.mark.parametrize(("name", "salt"), [("SO1", "sodium sulfite"), ("SO3", "sodium thiosulfate")])
def test_gas_from_a_gram(name: str, salt: str) -> None:
    """Grams of sulfur dioxide, worked rows."""
    found = sulfur_dioxide_g(1, salt=salt)  # type: ignore[arg-type]

    assert expected(name) == pytest.approx(found, abs=1e-4)


@pytest.mark.checks(of=ppm_in_room)
def test_gas_in_a_small_room() -> None:
    """SO2: a gram of sulfite in 10 m3 is 19.1 ppm, and 2.663 mg/m3 is one."""
    assert pytest.approx(19.1, rel=0.01) == ppm_in_room(
        sulfur_dioxide_g(1, salt="sodium sulfite"), room_m3=10
    )
    assert 1 == pytest.approx(ppm_in_room(0.02663, room_m3=10), rel=1e-3)
