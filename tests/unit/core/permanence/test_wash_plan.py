"""Planned and judged washes: what is promised, what is void, what is never told."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tankside.core.permanence.diffusion import share_left
from tankside.core.permanence.fixing_time import CEILING_S, fixing_time
from tankside.core.permanence.wash_plan import LEAST_FILLS, Washing, judge_wash, plan_wash, told_residual
from tankside.core.permanence.washing import FLOOR_G_M2, LIMIT_G_M2, Held, residual_after_fills
from tankside.core.refusals import Refused

ROLL = Washing(fill_ml=300)


def refused(washing: Washing) -> str:
    """The code of the refusal that a plan meets."""
    with pytest.raises(Refused) as no:
        plan_wash(washing)
    return no.value.refusal.code


@settings(max_examples=25)
@given(
    fill_ml=st.floats(200, 1500),
    temp_c=st.floats(10, 30),
    both_sides=st.booleans(),
    units=st.sampled_from([1.0, 1.5, 2.0]),
)
def test_a_plan_meets_half_the_limit_by_the_slow_model(
    fill_ml: float, temp_c: float, both_sides: bool, units: float
) -> None:
    """Whatever the tank, the water and the film, for least water as for least time."""
    washing = Washing(fill_ml * units, temp_c, Held().for_units(units, both_sides=both_sides))
    for least in ("water", "time"):
        plan = plan_wash(washing, least=least)  # type: ignore[arg-type]
        left = residual_after_fills(
            soaks_s=plan.soaks_s,
            fill_ml=washing.fill_ml,
            half_life_s=washing.slow_s,
            held=washing.held,
        )[-1]
        assert left <= LIMIT_G_M2 / 2
        assert plan.confirmed
        assert plan.enough_if_s >= washing.slow_s


def test_water_or_time() -> None:
    """Least water takes no more water, least time no more time; never fewer fills than three."""
    water, time = (plan_wash(ROLL, least=one) for one in ("water", "time"))  # type: ignore[arg-type]

    assert water.water_ml <= time.water_ml
    assert time.time_s <= water.time_s
    assert LEAST_FILLS == len(water.soaks_s)


@pytest.mark.parametrize(
    ("soaks_s", "enough_if_s", "confirmed"),
    [((20, 30, 50), 11.5, False), ((60,) * 5, 35, False), ((180,) * 3, 61, True), ((300,) * 3, 102, True)],
)
def test_asked_the_other_way_round(soaks_s: tuple[float, ...], enough_if_s: float, confirmed: bool) -> None:
    """Enough if half leaves in so many seconds or less; the slow model confirms it or does not."""
    answer = judge_wash(soaks_s, ROLL)

    assert enough_if_s == pytest.approx(answer.enough_if_s, abs=0.5)
    assert confirmed == answer.confirmed


def test_one_more_soak_costs_one_fill() -> None:
    """Where it is not confirmed, the further soak that would do it is told; else none."""
    answer = judge_wash((60,) * 5, ROLL)

    assert answer.one_more_s is not None
    assert judge_wash((*answer.soaks_s, answer.one_more_s), ROLL).confirmed
    assert judge_wash((300,) * 3, ROLL).one_more_s is None


def test_both_sides_need_more() -> None:
    """The same fills on film with gelatin on both sides are enough only for a quicker one."""
    sheet = Washing(300, held=Held().for_units(1, both_sides=True))

    assert judge_wash((180,) * 3, sheet).enough_if_s < judge_wash((180,) * 3, ROLL).enough_if_s


def test_void_cold_and_warm() -> None:
    """A spent fixer voids every answer; water under 10 C and over 30 C is not planned with."""
    assert "wash-void-fixer-spent" == refused(Washing(300, fixer_spent=True))
    assert "wash-too-cold" == refused(Washing(300, temp_c=9.9))
    assert "wash-too-warm" == refused(Washing(300, temp_c=30.1))
    with pytest.raises(Refused):
        judge_wash((300,) * 3, Washing(300, fixer_spent=True))


def test_cold_water_is_planned_for_longer() -> None:
    """At 10 C a half-life of two minutes; above 20 nothing is gained."""
    assert [120.0, 60.0, 60.0] == [Washing(300, temp_c).slow_s for temp_c in (10.0, 20.0, 26.0)]


def test_a_thimble_of_water_reaches_nothing() -> None:
    """50 mL for forty rolls."""
    assert "no-wash-reaches" == refused(Washing(50, held=Held().for_units(40)))


@given(residual=st.floats(0, 5))
def test_nothing_under_the_floor_is_told(residual: float) -> None:
    """None, or a number of at most two figures and three decimals from 0.002."""
    told = told_residual(residual)

    assert told is None if residual < FLOOR_G_M2 else told is not None
    assert told is None or (told >= FLOOR_G_M2 and told == round(told, 3) == float(f"{told:.2g}"))


@given(time_s=st.floats(0, 600), step_s=st.floats(0, 60))
def test_diffusion_only_empties(time_s: float, step_s: float) -> None:
    """What is left never rises, and is never more than all."""
    layer = {"diffusion_m2_s": 1e-10, "depth_m": 6e-5}

    assert share_left(time_s + step_s, **layer) <= share_left(time_s, **layer) * (1 + 1e-6)
    assert share_left(time_s, **layer) <= 1 + 1e-3


def test_fixing_never_shortens_with_clearing() -> None:
    """Tabular and unknown film three times; past the ceiling there is no time, but fresh fixer."""
    times = [fixing_time(clearing_s, grain="unknown").whole_s for clearing_s in range(10, 200, 10)]

    assert all(one < other for one, other in pairwise(times))
    with pytest.raises(Refused) as no:
        fixing_time(CEILING_S / 3 + 1, grain="tabular")
    assert "fix-past-its-ceiling" == no.value.refusal.code
