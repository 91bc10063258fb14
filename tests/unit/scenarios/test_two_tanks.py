"""Scenario S10: two tanks, one person, A for 9:30 and B for 7:00."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest
from planned import evening, planned, tankful, with_rolls, with_tanks

from tankside.core.methods.default_method import HANDS
from tankside.core.planning.check import faults
from tankside.core.planning.explain import explain
from tankside.core.planning.order import Coming, in_order
from tankside.core.planning.timetable import timetable


def started(*, rigid: bool, b_s: float = 420.0) -> float:
    """When B is poured, in s after A."""
    a, b = tankful("A", 570.0, rigid=rigid), tankful("B", b_s, rigid=rigid)
    ordered = in_order(a, [Coming(own=b, shared=b)], HANDS)
    assert () == faults(ordered.acts, between_s=HANDS.between_tankfuls_s)
    return ordered.tankfuls[1].starts_s


def test_soft_inversions_let_b_begin_soon() -> None:
    """With inversions free by 10 s and a stop of 1 to 2 min, B is poured while A still develops."""
    assert started(rigid=False) < 570.0


@pytest.mark.parametrize("late", ["A", "B"])
@pytest.mark.parametrize("late_s", [5.0, 10.0])
@pytest.mark.parametrize(("a_s", "b_s"), [(570.0, 420.0), (570.0, 570.0), (450.0, 610.0), (600.0, 330.0)])
def test_either_tank_may_run_ten_seconds_late(late: str, late_s: float, a_s: float, b_s: float) -> None:
    """A tap that comes 5 or 10 s late, and all of its tank after it, still meets no act of the other."""
    ordered = in_order(tankful("A", a_s), [Coming(own=tankful("B", b_s))], HANDS)
    shifted = [
        replace(act, start_s=act.start_s + late_s) if act.tankful == late else act for act in ordered.acts
    ]
    assert [] == [one for one in faults(shifted, between_s=0.0) if one.kind == "overlap"]


def test_the_why_of_the_start_says_how_late_a_tap_may_come() -> None:
    """The least distance between two acts of the two tankfuls, found by looking at every pair."""
    plan = planned(with_tanks(with_rolls(evening().wish, 2), 500.0, 500.0))
    apart_s = min(
        max(one.start_s - other.end_s, other.start_s - one.end_s)
        for one, other in combinations(timetable(plan).acts, 2)
        if one.tankful != other.tankful
    )
    (_, order) = explain(plan, "second-start").lengths
    assert apart_s == order.figure("apart_s")
    assert apart_s >= HANDS.between_tankfuls_s


def test_rigid_inversions_put_b_off() -> None:
    """With rigid inversions B waits until A is long fixed."""
    assert started(rigid=True) > 570.0 + 60.0 + 300.0


def test_the_start_is_a_step_of_15_s() -> None:
    """Nobody pours on an odd second."""
    assert started(rigid=False) % 15.0 == 0.0


def test_a_stop_stays_within_its_most() -> None:
    """What is stretched for the other tank stays between least and most."""
    a, b = tankful("A", 570.0), tankful("B", 420.0)
    ordered = in_order(a, [Coming(own=b, shared=b)], HANDS)

    for one in ordered.tankfuls:
        for bath in one.baths:
            assert bath.times.least_s <= bath.times.aim_s
            assert bath.times.most_s is None or bath.times.aim_s <= bath.times.most_s


@pytest.mark.parametrize(("tanks", "mixes"), [((500.0, 500.0), 1), ((500.0,), 2)])
def test_one_mix_only_for_two_tanks_within_ten_minutes(tanks: tuple[float, ...], mixes: int) -> None:
    """Two tanks poured within 10 min share a mix; a tank used twice needs one of its own."""
    plan = planned(with_tanks(with_rolls(evening().wish, 2), *tanks))

    assert mixes == len([one for one in plan.liquids if one.kind == "developer"])
    assert (plan.tankful("B").starts_s <= 600.0) == (mixes == 1)


def test_one_tank_waits_until_the_first_is_hung() -> None:
    """The second tankful is poured after the first roll hangs and the reels are dry."""
    plan = planned(with_rolls(evening().wish, 2))

    assert plan.tankful("B").starts_s > timetable(plan).columns[0].hung_s
    assert "A.develop:poured" == plan.tankful("B").starts_after
