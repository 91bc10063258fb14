"""Tanks, their walls and the pull of the room.

Rows of data/thermal.csv in these groups were *derived* with the same laws from assumed sizes and masses, so
agreement is of arithmetic; no measured time constant of such a tank was found. What is from outside: air-side
coefficients of free convection of 2-25 W/(m2 K) (Cengel, Heat Transfer, lecture notes, *published*).
"""

from __future__ import annotations

import pytest
from literature.thermal_rows import expected_of, numbers_of, of_group

from tankside.core.thermal.drift import mean_temp, temp_at
from tankside.core.thermal.tank import (
    BATHED_TAU_MIN,
    TAU_BANDS_MIN,
    met_c,
    plastic_tau_min,
    plastic_worth_ml,
    steel_worth_ml,
    tau_by_volume_min,
    worth_by_volume_ml,
)
from tankside.core.thermal.wall import Wall, still_air_w_m2_k, tau_min


def wall_of(row: dict[str, str]) -> Wall:
    """The tank a row describes."""
    told = numbers_of(row)
    return Wall(
        volume_ml=1000 * told["V_L"],
        diameter_m=told["D_m"],
        height_m=told["H_m"],
        wall_kg=told["m_wall_kg"],
        wall_j_kg_k=told["c_wall"],
        thickness_m=told["t_wall_m"],
        conductivity_w_m_k=told["k_wall"],
        film_kg=told["m_film_kg"],
        film_j_kg_k=told["c_film"],
    )


@pytest.mark.checks(of=tau_min)
@pytest.mark.parametrize("row", of_group("tank"))
def test_tank_in_air(row: dict[str, str]) -> None:
    """Heat, surface and time constant of a tank in air, with a given or a computed coefficient."""
    wall, told = wall_of(row), numbers_of(row)
    if row["output"] == "C":
        found = wall.heat_j_k
    elif row["output"] == "A":
        found = wall.surface_m2
    else:
        outside = told.get("h_out") or still_air_w_m2_k(
            height_m=wall.height_m, wall_c=20, room_c=15, emissivity=told["eps"]
        )
        found = tau_min(wall, outside_w_m2_k=outside, inside_w_m2_k=told["h_in"])
    tolerance = 1.5 if "eps" in told else None

    assert (pytest.approx(float(row["expected"]), abs=tolerance) if tolerance else expected_of(row)) == found


@pytest.mark.checks(of=tau_min)
@pytest.mark.parametrize("row", of_group("tank in water bath"))
def test_tank_in_a_water_bath(row: dict[str, str]) -> None:
    """In still water the same tank follows in minutes."""
    found = tau_min(wall_of(row), outside_w_m2_k=numbers_of(row)["h_out"], inside_w_m2_k=500, bathed=True)

    assert expected_of(row) == found


@pytest.mark.checks(of=met_c)
@pytest.mark.parametrize("row", of_group("pour-in"))
def test_tank_and_liquid_meet(row: dict[str, str]) -> None:
    """The liquid gives its tank what the tank's worth in water says."""
    wall, told = wall_of(row), numbers_of(row)
    found = met_c(
        liquid_ml=wall.volume_ml, liquid_c=told["T_liquid"], worth_ml=wall.worth_ml, tank_c=told["T_tank"]
    )

    assert expected_of(row) == found


@pytest.mark.checks(of=temp_at)
@pytest.mark.parametrize("row", of_group("drift 10 min"))
def test_ten_minutes_of_drift(row: dict[str, str]) -> None:
    """Temperature at the end, and its mean, after ten minutes."""
    told = numbers_of(row)
    time_s, start_c, room_c = 60 * told["t_min"], told["T0"], told["T_room"]
    if row["output"] == "T_end":
        found = float(temp_at(time_s, start_c=start_c, room_c=room_c, tau_min=told["tau_min"]))
    else:
        found = mean_temp(time_s, start_c=start_c, room_c=room_c, tau_min=told["tau_min"])

    assert expected_of(row) == found


@pytest.mark.checks(of=still_air_w_m2_k)
@pytest.mark.parametrize(("height_m", "apart_k"), [(0.11, 2), (0.12, 5), (0.19, 10)])
def test_still_air_lies_in_the_published_range(height_m: float, apart_k: float) -> None:
    """Free convection of air carries 2 to 25 W/(m2 K) (Cengel, *published*); a dull wall adds radiation."""
    alone = still_air_w_m2_k(height_m=height_m, wall_c=20, room_c=20 - apart_k, emissivity=0.0)

    assert 2 <= alone <= 25


@pytest.mark.checks(of=worth_by_volume_ml)
def test_steel_tanks_lie_on_their_line() -> None:
    """The line meets the three derived steel tanks to a millilitre, and their computed drift to 2 min."""
    rows = {row.id: row.values[0] for row in of_group("tank")}
    derived = [wall_of(rows[name]).worth_ml for name in ("TC0", "TD0", "TE1")]

    assert derived == pytest.approx([steel_worth_ml(volume_ml) for volume_ml in (250, 500, 1000)], abs=1)
    assert [float(rows[name]["expected"]) for name in ("TDc", "TEc")] == pytest.approx(
        [tau_by_volume_min("steel", volume_ml) for volume_ml in (500, 1000)], abs=2
    )


@pytest.mark.checks(of=tau_by_volume_min)
def test_the_band_holds_every_derived_tank() -> None:
    """Half-litre tanks in air, at 5 to 10 W/(m2 K) and computed, lie in the band of their material."""
    rows = {row.id: row.values[0] for row in of_group("tank")}
    found = {material: [
        float(row["expected"]) for row in rows.values()
        if row["output"] == "tau" and row["inputs"].startswith(f"{material} 0.5 L")
    ] for material in TAU_BANDS_MIN}  # fmt: skip

    for material, (least_min, most_min) in TAU_BANDS_MIN.items():
        assert found[material]
        assert all(least_min <= tau <= most_min for tau in found[material])


@pytest.mark.checks(of=tau_by_volume_min)
def test_tanks_in_water() -> None:
    """In water to the lid a half-litre tank follows within 18 min (plastic) or 7 (steel), as derived."""
    bathed = {row.id: row.values[0] for row in of_group("tank in water bath")}

    assert [18.2, 7.1] == [float(bathed[name]["expected"]) for name in ("TAb", "TDb")]
    assert [18.0, 7.0] == pytest.approx([BATHED_TAU_MIN[one] for one in ("plastic", "steel")], abs=0.3)


@pytest.mark.checks(of=plastic_worth_ml)
def test_plastic_tanks_lie_on_the_line() -> None:
    """The line through half a litre and a litre meets the two derived tanks it stands for."""
    rows = {row.id: row.values[0] for row in of_group("tank")}
    derived = [wall_of(rows[name]) for name in ("TA0", "TB0")]

    assert [wall.worth_ml for wall in derived] == pytest.approx(
        [plastic_worth_ml(500), plastic_worth_ml(1000)], abs=1
    )
    assert float(rows["TAc"]["expected"]) == pytest.approx(plastic_tau_min(500), abs=1)
