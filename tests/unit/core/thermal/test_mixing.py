"""Mixing: forward and back agree, refusals say why."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.refusals import Refused
from tankside.core.thermal.mixing import Jug, Water, hot_and_cold, ice_to_cool, mix, rounded_to_marks

JUGS = st.one_of(st.none(), st.builds(Jug, st.floats(1, 200), st.floats(10, 30)))


@given(
    volume_ml=st.floats(100, 2000),
    share=st.floats(0.05, 0.9),
    stock_c=st.floats(10, 28),
    water_c=st.floats(14.5, 51.5),
    jug=JUGS,
    heat_ratio=st.floats(0.9, 1.0),
)
def test_what_is_asked_for_comes_out(
    *, volume_ml: float, share: float, stock_c: float, water_c: float, jug: Jug | None, heat_ratio: float
) -> None:
    """The hot and cold that are told, mixed with the stock in the jug, give volume and temperature."""
    stock = Water(share * volume_ml, stock_c, heat_ratio)
    aim = mix([stock, Water(volume_ml - stock.volume_ml, water_c)], jug=jug)
    told = hot_and_cold(
        volume_ml=aim.volume_ml, target_c=aim.temp_c, hot_c=52, cold_c=14, already=[stock], jug=jug
    )
    out = mix([stock, Water(told.hot_ml, 52), Water(told.cold_ml, 14)], jug=jug)

    assert aim.temp_c == pytest.approx(out.temp_c, abs=1e-6)
    assert aim.volume_ml == pytest.approx(out.volume_ml, rel=1e-9)
    assert water_c == pytest.approx(told.water_c, abs=1e-5)


@given(
    volumes=st.lists(st.floats(1, 1000), min_size=1, max_size=6), temps=st.lists(st.floats(1, 64), min_size=6)
)
def test_a_mixture_lies_between_and_keeps_its_mass(volumes: list[float], temps: list[float]) -> None:
    """However many bottles: between coldest and warmest, no gram lost."""
    waters = [Water(v, t) for v, t in zip(volumes, temps, strict=False)]
    out = mix(waters)

    assert min(w.temp_c for w in waters) - 1e-9 <= out.temp_c <= max(w.temp_c for w in waters) + 1e-9
    assert sum(w.mass_g for w in waters) == pytest.approx(out.mass_g, rel=1e-9)


def test_two_bottles_of_one_liquid_at_its_temperature_change_nothing() -> None:
    """Liquid at the target needs only water at the target."""
    told = hot_and_cold(volume_ml=500, target_c=20, hot_c=20, cold_c=14, already=[Water(250, 20)])

    assert pytest.approx(250, abs=0.01) == told.hot_ml
    assert pytest.approx(0, abs=0.01) == told.cold_ml


def test_a_jug_takes_its_share() -> None:
    """A thin plastic jug takes about 0.3 K from a mixture 4 K above it, as is taught."""
    waters = [Water(500, 20.8)]

    assert pytest.approx(0.3, abs=0.05) == 20.8 - mix(waters, jug=Jug(42, 17.0)).temp_c


@pytest.mark.parametrize("mark_ml", [1.0, 2.0, 5.0, 10.0])
def test_marks_are_whole_and_the_total_is_kept(mark_ml: float) -> None:
    """Both amounts lie on marks and the total on the nearest mark."""
    exact = hot_and_cold(volume_ml=610, target_c=21, hot_c=48, cold_c=12)
    marked = rounded_to_marks(exact, mark_ml=mark_ml, hot_c=48, cold_c=12)

    assert marked.hot_ml % mark_ml == marked.cold_ml % mark_ml == 0
    assert abs(marked.water_ml - exact.water_ml) <= mark_ml / 2
    assert abs(marked.hot_ml - exact.hot_ml) <= mark_ml / 2


def test_ice_told_is_ice_needed() -> None:
    """The ice that is told, melted in, brings the water where it was wanted."""
    warm = Water(800, 27)
    ice_g = ice_to_cool(warm, target_c=20, ice_c=-10)

    assert pytest.approx(20, abs=1e-6) == mix([warm], ice_g=ice_g, ice_c=-10).temp_c
    assert ice_to_cool(warm, target_c=30) == 0


@pytest.mark.parametrize(
    ("code", "at", "asked"),
    [
        ("hot-not-above-cold", "hot_c", {"hot_c": 14.0, "cold_c": 14.0}),
        ("water-temperature-out-of-range", "hot_c", {"hot_c": 90.0, "cold_c": 14.0}),
        ("water-temperature-out-of-range", "cold_c", {"hot_c": 40.0, "cold_c": -3.0}),
        ("no-room-for-water", "volume_ml", {"hot_c": 40.0, "cold_c": 14.0, "already": [Water(600, 20)]}),
    ],
)
def test_plain_refusals(code: str, at: str, asked: dict[str, object]) -> None:
    """What cannot be done is refused at the field it belongs to."""
    with pytest.raises(Refused) as told:
        hot_and_cold(volume_ml=500, target_c=20, **asked)

    assert (code, at) == (told.value.refusal.code, told.value.refusal.at)


def test_too_much_ice_and_nothing_at_all() -> None:
    """Ice that would not melt, and an empty jug, are refused."""
    with pytest.raises(Refused, match="too-much-ice"):
        mix([Water(100, 20)], ice_g=100)
    with pytest.raises(Refused, match="nothing-to-mix"):
        mix([])
