"""Why each number of a plan is what it is, held to the sciences that it stands on."""

from __future__ import annotations

from dataclasses import replace
from typing import get_args

import pytest
from planned import ANSWERS, evening, planned, with_rolls, with_tanks

from tankside.core.permanence.capacity import Fixed, capacity_left
from tankside.core.permanence.clearing import ClearingTest
from tankside.core.permanence.washing import FLOOR_G_M2, LIMIT_G_M2, enough_if_half_life_s
from tankside.core.planning.explain import BUILDERS, explain
from tankside.core.planning.explain_fixer import why_fixer_left
from tankside.core.planning.explain_fixing import fix_of
from tankside.core.planning.why import AboutPlan
from tankside.core.planning.wish import BathTimes, Wish
from tankside.core.refusals import Refused
from tankside.core.rolls.roll import Film

WISH = evening().wish
PLAN = planned(WISH)


def in_tank_of(volume_ml: float, *, fills: int, soak_s: float) -> Wish:
    """One roll in a tank of this volume, washed so."""
    wish = with_tanks(evening(replace(ANSWERS, tank_ml=volume_ml)).wish, volume_ml)
    return replace(wish, times=BathTimes(wash_fill_s=soak_s, wash_fills=fills))


def test_every_number_of_a_plan_has_its_builder() -> None:
    """No number without a working."""
    assert set(get_args(AboutPlan)) == set(BUILDERS)


@pytest.mark.parametrize(
    ("fills", "soak_s", "enough_s"), [(5, 60.0, 35.0), (3, 180.0, 61.0), (3, 300.0, 102.0)]
)
def test_a_wash_is_asked_the_other_way_round(fills: int, soak_s: float, enough_s: float) -> None:
    """One roll, fills of 300 mL: the half-lives that docs/science/washing works out by hand."""
    why = explain(planned(in_tank_of(300.0, fills=fills, soak_s=soak_s)), "wash")

    assert pytest.approx(enough_s, abs=0.5) == why.answer.value
    assert [15.0, 60.0] == [one.estimate.value for one in why.lengths[:2]]
    assert "sources" == why.spread


def test_the_two_half_lives_stay_apart_and_nothing_is_told_under_the_floor() -> None:
    """The quick source leaves less after every fill; a value under 0.002 is none."""
    plot = explain(planned(in_tank_of(300.0, fills=4, soak_s=300.0)), "wash").plot

    assert plot is not None
    assert () == plot.middle
    assert LIMIT_G_M2 == plot.level
    assert all(
        low is None or (high is not None and low <= high)
        for low, high in zip(plot.low, plot.high, strict=True)
    )
    assert all(one is None or one >= FLOOR_G_M2 for one in (*plot.low, *plot.high))
    assert None in plot.low


def test_a_wash_the_slow_source_does_not_confirm_names_one_more_soak() -> None:
    """Five fills of a minute are enough to 35 s only: a further soak is told, and it does suffice."""
    these = explain(planned(in_tank_of(300.0, fills=5, soak_s=60.0)), "wash").lengths[2]

    assert 0.0 == these.figure("confirmed")
    assert 60.0 <= enough_if_half_life_s(soaks_s=(*(60.0,) * 5, these.figure("one_more_s")), fill_ml=300.0)


def test_cold_wash_water_is_slower() -> None:
    """At 15 C the half-life planned on is 2 to the power of a half as long."""
    cold = replace(WISH, place=replace(WISH.place, cold_c=14.0))

    assert pytest.approx(60 * 2**0.5) == explain(planned(cold), "wash").lengths[1].estimate.value


@pytest.mark.parametrize(
    ("grain", "fix_s", "multiple"), [("cubic", 300.0, 2.0), ("tabular", 480.0, 3.0), ("unknown", 480.0, 3.0)]
)
def test_a_fix_is_a_multiple_of_the_clearing_time_by_grain(grain: str, fix_s: float, multiple: float) -> None:
    """5:00 covers a test piece of 2:30; 8:00 for tabular or unknown film one of 2:40."""
    wanted = WISH.rolls[0]
    wish = replace(WISH, rolls=(replace(wanted, roll=replace(wanted.roll, film=Film("Ferry 125", grain))),))  # type: ignore[arg-type]
    why = explain(planned(wish), "fix")

    assert fix_s == why.answer.value
    assert fix_s / multiple == why.lengths[0].figure("covered_s")
    assert "test-piece" in [one.code for one in why.narrows]


def test_a_test_piece_says_how_long_to_fix() -> None:
    """75 s at 15 C, ordinary film: 2:30, good to 5 %."""
    why = fix_of(PLAN.tankfuls[0], WISH, ClearingTest(75.0, 15.0))
    asked = why.lengths[-1].estimate

    assert (150.0, 142.5, 157.5) == (asked.value, asked.low, asked.high)
    assert () == why.narrows


def test_stock_in_the_tank_beside_stock_needed() -> None:
    """Half of 500 mL at 1+1 for one roll of 80 mL; unknown, it asks for the leaflet's figure."""
    known = explain(planned(evening(replace(ANSWERS, least_stock_ml=80.0)).wish), "least-stock")

    assert [250.0, 80.0] == [one.estimate.value for one in known.lengths]
    assert ["note-least-stock"] == [one.code for one in explain(PLAN, "least-stock").narrows]


def test_a_fixer_by_two_counts() -> None:
    """A litre after fifteen rolls: 5 by 20 a litre, 10 by 25, never a mean."""
    why = why_fixer_left(capacity_left([Fixed(15)], working_ml=1000), working_ml=1000)

    assert [5.0, 10.0] == [one.estimate.value for one in why.lengths]
    assert (5.0, 10.0, "sources") == (why.answer.low, why.answer.high, why.spread)


@pytest.mark.parametrize(("parts", "per_l"), [(4.0, [20.0, 25.0]), (9.0, [10.0, 12.5]), (3.0, [20.0, 25.0])])
def test_a_fixer_is_told_with_what_a_litre_of_it_takes(parts: float, per_l: list[float]) -> None:
    """1+9 holds half the concentrate of 1+4 and takes half; a stronger bath takes no more."""
    left = capacity_left([Fixed(6)], working_ml=500, water_parts=parts)
    why = why_fixer_left(left, working_ml=500)

    assert pytest.approx(per_l) == [one.figure("per_l") for one in why.lengths]
    assert ("thinner" in why.lengths[0].figures[0].origin) == (parts > 4)
    for one in why.lengths:
        assert (
            pytest.approx(one.figure("per_l") / 2 - 6, abs=1e-9) == one.estimate.value
            or not one.estimate.value
        )


def test_contrast_comes_to_the_aim_where_the_time_does_what_was_printed() -> None:
    """The middle of the belief is the aim; the band holds it, and grows with roll, factor and thermometer."""
    why = explain(PLAN, "contrast")
    aimed, made = (one.estimate for one in why.lengths)

    assert pytest.approx(0.56, abs=0.01) == made.value
    assert 0.56 == aimed.value
    assert why.answer.low < made.low < made.high < why.answer.high


def test_a_shorter_time_of_ones_own_makes_less_contrast() -> None:
    """6:00 in place of 9:00 lies below the aim, and the plot marks it there."""
    why = explain(planned(replace(WISH, own_time_s=360.0)), "contrast")

    assert why.plot is not None
    assert why.answer.value == why.plot.marks[0].up < 0.5


def test_the_next_strip_narrows_the_time() -> None:
    """What it would leave is less than what is doubtful now."""
    for about in ("time", "contrast"):
        strip = explain(PLAN, about).narrows[-1]  # type: ignore[arg-type]

        assert "next-strip" == strip.code
        assert 0 < strip.figure("left_s") < strip.figure("now_s")


def test_the_drift_of_a_time_starts_in_the_tank_and_goes_to_the_room() -> None:
    """A jug at 21 in a tank worth 112 mL at 20: 20.8, falling; the band holds it everywhere."""
    plot = explain(PLAN, "time").plot

    assert plot is not None
    assert pytest.approx((500 * 21 + 112 * 20) / 612, abs=0.01) == plot.middle[0]
    middle = [one for one in plot.middle if one is not None]
    assert middle == sorted(middle, reverse=True)
    assert all(
        low <= told <= high  # type: ignore[operator]
        for low, told, high in zip(plot.low, plot.middle, plot.high, strict=True)
    )


def test_what_a_plan_does_not_hold_is_refused() -> None:
    """A plan of one tankful has no second start, a developer that was read no temperature to mix to."""
    with pytest.raises(Refused, match="no-why"):
        explain(PLAN, "second-start")
    with pytest.raises(Refused, match="already-mixed"):
        explain(PLAN, "mix-to")
    with pytest.raises(Refused, match="no-such-tankful"):
        explain(PLAN, "time", "Q")


def test_every_tankful_has_its_own() -> None:
    """Two rolls in one tank, one after the other: B has its own wash."""
    assert "B" == explain(planned(with_rolls(WISH, 2)), "wash", "B").tankful
