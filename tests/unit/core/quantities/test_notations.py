"""Every amount comes back from every notation that docs/how-to/amounts names, whatever its value."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.quantities.convert import ml_each, temp_in
from tankside.core.quantities.display import index_text
from tankside.core.quantities.entry import read_index, read_temperature, read_time, read_volume
from tankside.core.quantities.preferences import Preferences, TemperatureUnit, VolumeUnit
from tankside.core.solutions.notation import Dilution, read_dilution

CELSIUS, METRIC = Preferences(), Preferences()
FLUID_OUNCES: dict[VolumeUnit, str] = {"us_fl_oz": "US fl oz", "imperial_fl_oz": "imperial fl oz"}


@given(st.integers(60, 86_399))
def test_times(time_s: int) -> None:
    """Clock, clock with hours, units together or apart, seconds alone."""
    hours, (minutes, seconds) = time_s // 3600, divmod(time_s, 60)
    told = [
        f"{minutes}:{seconds:02d}", f"{hours}:{minutes % 60:02d}:{seconds:02d}", f"{minutes}m{seconds:02d}s",
        f"{minutes} min {seconds} s", f"{hours} h {minutes % 60} min {seconds} s", f"{time_s} s",
        f"{minutes}'{seconds}\"",
    ]  # fmt: skip

    assert [time_s] * len(told) == [read_time(one) for one in told]


@given(st.integers(1, 14), st.sampled_from(("1/2", "1/4", "3/4", "½", "¼", "¾")))
def test_minutes_with_a_fraction(minutes: int, fraction: str) -> None:
    """Written out or as one sign."""
    parts = {"½": "1/2", "¼": "1/4", "¾": "3/4"}
    wanted = 60 * (minutes + float(Fraction(parts.get(fraction, fraction))))

    assert wanted == read_time(f"{minutes} {fraction}") == read_time(f"{minutes} {fraction} min")


@given(st.integers(50, 600), st.sampled_from(("C", "F")))
def test_temperatures(tenths: int, unit: TemperatureUnit) -> None:
    """Point or comma, bare or with its unit, and in the other unit's degrees with that unit named."""
    temp_c = tenths / 10
    own = Preferences(unit)
    bare = f"{temp_in(temp_c, unit):.2f}"
    other = f"{temp_in(temp_c, 'F'):.2f} F", f"{temp_c:.2f} C", f"{temp_c:.1f} °C", f"{temp_c:.1f}°c"

    assert temp_c == pytest.approx(read_temperature(bare, own), abs=1e-6)
    assert temp_c == pytest.approx(read_temperature(bare.replace(".", ","), own), abs=1e-6)
    assert [temp_c] * len(other) == pytest.approx([read_temperature(one, own) for one in other], abs=1e-6)


@given(st.integers(3, 5000))
def test_volumes(volume_ml: int) -> None:
    """Bare, with its unit close or apart, as litres with point or comma, in the ounces of both countries."""
    told = [f"{volume_ml}", f"{volume_ml} ml", f"{volume_ml}mL", f"{volume_ml / 1000:.4f} l"]
    told += [told[-1].replace(".", ",")]
    told += [f"{volume_ml / ml_each(unit):.9f} {words}" for unit, words in FLUID_OUNCES.items()]

    assert [volume_ml] * len(told) == pytest.approx([read_volume(one, METRIC) for one in told])


@given(st.integers(5, 4096).map(lambda tenths: tenths / 10))
def test_indices_with_a_decimal(index: float) -> None:
    """Slow papers and lith films carry indices such as 0.5 and 1.6."""
    told = index_text(index), f"{index:g}", f"{index:g}".replace(".", ","), f"ISO {index:g}"

    assert [index] * len(told) == [read_index(one) for one in told]


@given(st.integers(1, 20), st.integers(1, 400), st.integers(1, 9))
def test_dilutions(parts: int, water: int, tenth: int) -> None:
    """Parts and parts, one part in so many, a decimal of a part: the fraction is kept exactly."""
    half = f"{parts}+{water}.{tenth}"

    assert Dilution(parts, water).exact_fraction == read_dilution(f"{parts} + {water}").exact_fraction
    assert Fraction(1, water + 1) == read_dilution(f"1 in {water + 1}").exact_fraction
    assert Fraction(10 * parts, 10 * (parts + water) + tenth) == read_dilution(half).exact_fraction
    assert read_dilution(half) == read_dilution(half.replace(".", ","))
