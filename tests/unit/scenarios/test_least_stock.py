"""Scenario S1: two reels in 600 mL at 1+4 with 80 mL of stock a roll."""

from __future__ import annotations

import pytest
from planned import combination, row, wanted

from tankside.core.planning.equipment import Tank
from tankside.core.planning.first_evening import default_tank
from tankside.core.planning.tankfuls import in_tankfuls
from tankside.core.refusals import Refused
from tankside.core.solutions.notation import Dilution

OF = combination(row(61), least_ml=80.0)


def tank(volume_ml: float, number: int = 31) -> Tank:
    """A plastic tank."""
    return default_tank(wanted(number, OF).roll.key, volume_ml=volume_ml)


def test_two_rolls_are_too_many() -> None:
    """120 mL for 160: no; one roll, 800 mL, or 1+2 (200) with a time of its own."""
    with pytest.raises(Refused) as no:
        in_tankfuls([wanted(1, OF), wanted(2, OF)], [tank(600.0)])
    numbers = no.value.refusal.numbers

    assert (120.0, 160.0) == (numbers["stock_ml"], numbers["needed_ml"])
    assert (1, 800.0, "1+2", 200.0) == (
        numbers["fits_rolls"], numbers["needs_ml"], numbers["stronger"], numbers["stronger_ml"],
    )  # fmt: skip
    assert no.value.refusal.ways_on == ("fewer-rolls", "more-volume", "stronger-dilution")


def test_exactly_enough_is_enough() -> None:
    """800 mL hold exactly 160."""
    assert 1 == len(in_tankfuls([wanted(1, OF), wanted(2, OF)], [tank(800.0)]))


def test_one_roll_goes() -> None:
    """One roll asks for 80 of the 120."""
    assert 1 == len(in_tankfuls([wanted(1, OF)], [tank(600.0)]))


def test_one_to_fifty() -> None:
    """1+50 in 300 mL holds 5.88 of 6 mL and needs 306; read as 1 in 50 it holds 6.00 and goes."""
    plus = combination(row(61), dilution=Dilution(1, 50), least_ml=6.0)
    within = combination(row(61), dilution=Dilution(1, 49), least_ml=6.0)
    with pytest.raises(Refused) as no:
        in_tankfuls([wanted(1, plus)], [tank(300.0)])

    assert pytest.approx(5.88, abs=0.005) == no.value.refusal.numbers["stock_ml"]
    assert 306.0 == pytest.approx(float(no.value.refusal.numbers["needs_ml"]))
    assert 1 == len(in_tankfuls([wanted(1, within)], [tank(300.0)]))
