"""Jug, water bath or time: each makes the development count as printed, or says that it cannot."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from planned import combination, evening, planned, row

from tankside.core.methods.known_time import KnownTime, known_time
from tankside.core.planning.development import Setting
from tankside.core.planning.ways_to_temper import ways_of, ways_to_temper
from tankside.core.quantities.preferences import Preferences
from tankside.wording.tempering import ways_sentences

COOL = Setting(volume_ml=500, worth_ml=112, tank_c=17, room_c=17, tau_min=106)


def known(*rows: tuple[float, float]) -> KnownTime:
    """9:30 at 20 C unless other rows (s, C) are given."""
    printed = rows or ((570.0, 20.0),)
    return known_time(combination(*(row(61 + n, *one) for n, one in enumerate(printed))), 125.0)


def counted(start_c: float, *, outside_c: float, tau_min: float, time_s: float, q10: float = 2.2) -> float:
    """What a drift counts as at 20 C, by steps of a tenth of a second."""
    at_s = np.arange(0.05, time_s, 0.1)
    temps = outside_c + (start_c - outside_c) * np.exp(-at_s / (60 * tau_min))
    return float(np.sum(0.1 * q10 ** ((temps - 20) / 10)))


@pytest.mark.parametrize(("material", "tau_min"), [("plastic", 18.0), ("steel", 7.0)])
def test_the_water_bath_makes_the_printed_time_count(material: str, tau_min: float) -> None:
    """Started at 19.1 C, a tank in the water told counts 9:30 for 9:30; steel asks for cooler water."""
    setting = replace(COOL, material=material)  # type: ignore[arg-type]
    ways = ways_to_temper(known(), setting, 19.6, thermometer_step_c=0.1)
    start_c = (500 * 19.6 + 112 * 17) / 612

    assert ways.bath is not None
    assert 570 == pytest.approx(
        counted(start_c, outside_c=ways.bath.value, tau_min=tau_min, time_s=570), abs=0.3
    )
    assert ways.bath.low < ways.bath.value < ways.bath.high


def test_the_jug_makes_it_count_too() -> None:
    """Mixed to 20.8 instead, as tempering tells it; left as it is it takes longer."""
    ways = ways_to_temper(known(), COOL, 19.6, thermometer_step_c=0.1)

    assert ways.jug is not None
    assert ways.time is not None
    assert 20.8 == pytest.approx(ways.jug.value, abs=0.05)
    assert ways.time.value > 600


def test_where_nothing_is_known_there_is_no_way() -> None:
    """A jug so cold that the tank starts below 18 C: neither water nor time; only the jug can be warmed."""
    ways = ways_to_temper(known(), COOL, 17.0, thermometer_step_c=0.1)

    assert (None, None) == (ways.bath, ways.time)
    assert ways.jug is not None
    assert not ways.cannot


def test_a_plain_cannot() -> None:
    """In a room of 45 C with a tank that hardly holds heat nothing keeps 9:30 where times are known."""
    hot = Setting(volume_ml=500, worth_ml=112, tank_c=45, room_c=45, tau_min=3)
    ways = ways_to_temper(known(), hot, 26.0, thermometer_step_c=0.1)
    said = ways_sentences(ways, Preferences())

    assert ways.cannot
    assert "cannot" in " ".join(said)


def test_without_a_slope_it_goes_by_its_rows() -> None:
    """For a bent table the water told makes its own rows add up to one development."""
    bent = ((900.0, 18.0), (600.0, 20.0), (540.0, 22.0), (330.0, 24.0))
    ways = ways_to_temper(known(*bent), COOL, 19.6, thermometer_step_c=0.1)
    start_c = (500 * 19.6 + 112 * 17) / 612
    assert ways.bath is not None
    at_s = np.arange(0.05, 600, 0.1)
    temps = ways.bath.value + (start_c - ways.bath.value) * np.exp(-at_s / (60 * 18))
    logs = np.interp(temps, [18, 20, 22, 24], np.log([900, 600, 540, 330]))

    assert 1.0 == pytest.approx(float(np.sum(0.1 * np.exp(-logs))), abs=1e-3)


def test_the_first_evening_is_told_to_cool_or_to_wait_less() -> None:
    """A jug of 21 in a room of 20: cool it to 20, or stand the tank cooler, or 9:00."""
    wish = evening().wish
    made = planned(wish)
    ways = ways_of(made.tankfuls[0], wish)
    assert ways is not None
    said = " ".join(ways_sentences(ways, Preferences()))

    assert "To keep 9:30" in said
    assert "cool the jug to 20.0" in said
    assert "9:00" in said


@pytest.mark.parametrize("reads_c", [None, 20.0])
def test_nothing_is_said_where_nothing_is_off(reads_c: float | None) -> None:
    """A jug still to be mixed is mixed right; one that reads right needs no way."""
    wish = replace(evening().wish, reads_c=reads_c)

    assert ways_of(planned(wish).tankfuls[0], wish) is None
