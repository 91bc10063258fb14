"""Washing against worked rows (arithmetic) and against the slow end of published practice (outside).

Rows of data/washing.csv carry their own reference: series dilution and the fill-and-dump and running-water
balances were solved independently as differential equations (scipy solve_ivp, matrix exponential).
"""

from __future__ import annotations

import pytest
from literature.tables import inputs_of, rows_of

from tankside.core.permanence.washing import (
    LIMIT_G_M2,
    Held,
    enough_if_half_life_s,
    equilibrium_reduction,
    residual_after_fills,
    residual_in_running_water,
)

ROWS = rows_of("washing.csv")


def of_group(*words: str) -> list[object]:
    """The rows of the groups named."""
    return [pytest.param(row, id=row["id"]) for row in ROWS if row["group"].startswith(words)]


def within(row: dict[str, str]) -> object:
    """The expected value with the row's own tolerance."""
    text = row["tolerance"]
    relative = float(text.rstrip("%")) / 100 if text.endswith("%") else None
    return pytest.approx(float(row["expected"]), rel=relative, abs=None if relative else 1e-9)


@pytest.mark.checks(of=equilibrium_reduction)
@pytest.mark.parametrize("row", of_group("series dilution"))
def test_series_dilution(row: dict[str, str]) -> None:
    """Each complete change thins by the volume held back over the volume filled."""
    told = inputs_of(row)
    factor = equilibrium_reduction(
        retained_ml=float(told["v_retained_mL"]), fill_ml=float(told["V_fill_mL"]), fills=int(told["n"])
    )

    assert within(row) == factor


@pytest.mark.checks(of=residual_after_fills)
@pytest.mark.parametrize("row", of_group("two-compartment"))
def test_fill_and_dump(row: dict[str, str]) -> None:
    """Film concentration and residual after a number of fills agree with the solved equations."""
    told = inputs_of(row)
    held = Held(
        float(told["v_film_mL"]), float(told["v_drain_mL"]), float(told["c0_gL"]), float(told["A_m2"])
    )
    soaks = [float(soak) for soak in told["soaks_s"].split("/")][: int(told["after"])]
    left = residual_after_fills(
        soaks_s=soaks, fill_ml=float(told["V_fill_mL"]), half_life_s=float(told["t_half_s"]), held=held
    )[-1]
    if row["unit"] == "g/L":
        left *= held.area_m2 * 1000 / held.film_ml

    assert within(row) == left


@pytest.mark.checks(of=residual_in_running_water)
@pytest.mark.parametrize("row", of_group("running water"))
def test_running_water(row: dict[str, str]) -> None:
    """Running water agrees with the matrix exponential of an independent solution."""
    told = inputs_of(row)
    left = residual_in_running_water(
        time_s=float(told["t_s"]),
        flow_ml_min=float(told["Q_mL_min"]),
        tank_fill_ml=float(told["V"]),
        half_life_s=float(told["t_half_s"]),
        held=Held(float(told["v_film"]), float(told["v_drain"]), float(told["c0"])),
    )

    assert within(row) == left


@pytest.mark.checks(of=enough_if_half_life_s)
@pytest.mark.parametrize(
    ("soaks_s", "half_life_s"),
    [((20, 30, 50), 11.5), ((60,) * 5, 35), ((180,) * 3, 61), ((300,) * 3, 102)],
)
def test_asked_the_other_way_round(soaks_s: tuple[float, ...], half_life_s: float) -> None:
    """One 135 roll, 300 mL, 119.8 g/L: the half-life at which the fills are enough (own working, to 1 %)."""
    assert half_life_s == pytest.approx(enough_if_half_life_s(soaks_s=soaks_s, fill_ml=300), rel=0.01)


@pytest.mark.checks(of=residual_in_running_water)
def test_model_is_too_good_for_published_running_water() -> None:
    """Published: 'at least 20 min' of running water (NAVEDTRA 14209, 1993); the model asks for far less.

    This is why no residual below 0.002 g/m2 is told anywhere: the last traces leave more slowly than this.
    """
    left = residual_in_running_water(time_s=1200, flow_ml_min=2000, tank_fill_ml=500, half_life_s=60)

    assert left < LIMIT_G_M2 / 100
