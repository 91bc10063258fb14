"""Fixing against worked rows (arithmetic) and the published capacity and clearing rules (outside)."""

from __future__ import annotations

import pytest
from literature.tables import inputs_of, rows_of

from tankside.core.permanence.capacity import (
    ROLLS_PER_L_PLANNED,
    silver_ceiling_rolls_per_l,
    two_bath_silver_g_l,
)
from tankside.core.permanence.clearing import ClearingTest, judge_clearing

ROWS = rows_of("fixing.csv")


@pytest.mark.checks(of=silver_ceiling_rolls_per_l)
@pytest.mark.parametrize("row", [pytest.param(r, id=r["id"]) for r in ROWS if r["id"].startswith("FX")])
def test_silver_ceiling(row: dict[str, str]) -> None:
    """Rolls per litre at a silver ceiling, worked rows; the coverage in them is from memory."""
    told = inputs_of(row)
    rolls = silver_ceiling_rolls_per_l(
        coverage_g_m2=float(told["coverage_g_m2"]),
        share_into_fixer=float(told["fraction"]),
        limit_g_l=float(told["limit_gL"]),
        area_m2=float(told["A"]),
    )

    assert float(row["expected"]) == pytest.approx(rolls, abs=float(row["tolerance"]))


@pytest.mark.checks(of=two_bath_silver_g_l)
@pytest.mark.parametrize(
    "row", [pytest.param(r, id=r["id"]) for r in ROWS if r["id"] in ("FB1", "FB2", "FB3")]
)
def test_two_baths(row: dict[str, str]) -> None:
    """Silver in both baths of a two-bath fix, worked rows."""
    told = inputs_of(row)
    both = two_bath_silver_g_l(
        silver_g_roll=float(told["s_g_roll"]),
        carry_l=float(told["v_L"]),
        bath_l=float(told["V_L"]),
        rolls=float(told["N"]),
    )

    assert [float(c) for c in row["expected"].split("/")] == pytest.approx(both, abs=1e-4)


@pytest.mark.checks(of=two_bath_silver_g_l)
def test_promoted_second_bath() -> None:
    """FB4: after twenty rolls the second bath is promoted and twenty more pass (worked row)."""
    _, promoted = two_bath_silver_g_l(silver_g_roll=0.2, carry_l=0.005, bath_l=1, rolls=20)
    both = two_bath_silver_g_l(silver_g_roll=0.2, carry_l=0.005, bath_l=1, rolls=20, first_g_l=promoted)
    row = next(r for r in ROWS if r["id"] == "FB4")

    assert [float(c) for c in row["expected"].split("/")] == pytest.approx(both, abs=1e-4)


@pytest.mark.checks(of=silver_ceiling_rolls_per_l)
def test_published_count_lies_at_the_ammonium_ceiling() -> None:
    """Published 20 rolls/L (Anchell 2008, p. 108) lies within 5 % of 4 g/L of silver at 5 g/m2 (memory)."""
    rolls = silver_ceiling_rolls_per_l(coverage_g_m2=5, share_into_fixer=0.8, limit_g_l=4)

    assert pytest.approx(rolls, rel=0.05) == ROLLS_PER_L_PLANNED


@pytest.mark.checks(of=judge_clearing)
def test_time_doubles_in_ten_kelvin() -> None:
    """TM 11-2323 para. 33c: 18 F (10 K) below 68 F doubles the time, so the same bath is judged the same."""
    answer = judge_clearing(ClearingTest(40, 20), ClearingTest(80, 10))

    assert pytest.approx(1.0) == answer.ratio
