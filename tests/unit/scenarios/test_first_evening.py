"""Scenario: six answers on a first evening; the expected numbers are settled practice."""

from __future__ import annotations

from dataclasses import replace

import pytest
from planned import ANSWERS, evening, planned

from tankside.core.planning.timetable import timetable
from tankside.core.refusals import Refused


def test_nine_minutes_for_nine_thirty_at_20() -> None:
    """21.0 C in the jug, a tank worth 112 mL at 20 C: 9:00 (8:45 to 9:15)."""
    end = planned(evening().wish).tankful("A").development.end_s

    assert end is not None
    assert (540.0, 525.0, 555.0) == (end.value, end.low, end.high)


def test_a_developer_at_20_keeps_the_printed_time() -> None:
    """With nothing to correct, the leaflet's 9:30 stands."""
    end = planned(evening(replace(ANSWERS, reads_c=20.0)).wish).tankful("A").development.end_s

    assert end is not None
    assert end.value == 570.0


@pytest.mark.parametrize(
    ("bath", "least_s", "aim_s", "most_s", "fills"),
    [
        ("A.develop", 540.0, 540.0, 540.0, 1),
        ("A.stop", 30.0, 60.0, 120.0, 1),
        ("A.fix", 300.0, 300.0, 600.0, 1),
        ("A.wash", 300.0, 300.0, None, 4),
        ("A.wetting", 30.0, 60.0, 120.0, 1),
    ],
)
def test_the_default_method(
    bath: str, least_s: float, aim_s: float, most_s: float | None, fills: int
) -> None:
    """Least, aim and most time of each bath as settled for a first evening."""
    found = next(one for one in planned(evening().wish).tankful("A").baths if one.id == bath)

    assert (least_s, aim_s, most_s) == (found.times.least_s, found.times.aim_s, found.times.most_s)
    assert fills == found.fills


@pytest.mark.parametrize("grain", ["tabular", "unknown"])
def test_tabular_or_unknown_film_is_fixed_longer(grain: str) -> None:
    """8:00 at least, 10:00 at most."""
    wish = evening(replace(ANSWERS, grain=grain)).wish  # type: ignore[arg-type]
    fix = next(bath for bath in planned(wish).tankful("A").baths if bath.kind == "fix")

    assert (480.0, 480.0, 600.0) == (fix.times.least_s, fix.times.aim_s, fix.times.most_s)


def test_the_tank_is_worth_what_its_volume_says() -> None:
    """A plastic tank of half a litre is worth 112 mL of water and drifts with 106 min."""
    tank = evening().tank

    assert (112.0, 106.0) == pytest.approx((tank.worth_ml, tank.tau_min), abs=0.5)


def test_half_a_litre_at_1_plus_1() -> None:
    """250 mL of stock and 250 of water, used once; stop bath and fixer are kept."""
    plan = planned(evening().wish)
    developer = plan.liquid("develop-A")

    assert (250.0, 250.0, False) == (developer.stock_ml, developer.water_ml, developer.reusable)
    assert [True, True, False] == [plan.liquid(one).reusable for one in ("stop", "fix", "wetting")]


def test_a_developer_too_warm_to_be_timed_is_refused() -> None:
    """One row says nothing beyond 24 C; the way on is to cool it."""
    with pytest.raises(Refused) as no:
        planned(evening(replace(ANSWERS, reads_c=27.0)).wish)

    assert ("too-warm-to-time", ("cool",)) == (no.value.refusal.code, no.value.refusal.ways_on)


def test_a_precious_roll_is_held_until_it_is_released() -> None:
    """Nothing has been tried, so it is held; taken all the same, the plan notes it."""
    wish = evening(replace(ANSWERS, precious=True)).wish
    with pytest.raises(Refused) as no:
        planned(wish)
    plan = planned(replace(wish, rolls=tuple(replace(one, released=True) for one in wish.rolls)))

    assert no.value.refusal.code == "precious-roll-held"
    assert (wish.rolls[0].roll.key,) == plan.released


def test_the_evening_on_the_clock() -> None:
    """9:00, 1:00, 5:00, four fills of 5:00 and 1:00 with eight drains of 15 s and 90 s to hang: 39:30."""
    clock = timetable(planned(evening().wish))
    baths_s = 540 + 60 + 300 + 4 * 300 + 60
    drains_s = 8 * 15

    assert baths_s + drains_s + 90 == (clock.ends - clock.poured).total_seconds()
    assert not clock.clashes
