"""Volumes as people write them, in their own unit."""

from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.quantities.convert import ml_each
from tankside.core.quantities.display import volume_step, volume_text
from tankside.core.quantities.entry import read_volume
from tankside.core.quantities.preferences import Preferences, VolumeUnit
from tankside.core.refusals import Refusal, Refused

METRIC = Preferences()
US = Preferences(volume="us_fl_oz")
IMPERIAL = Preferences(volume="imperial_fl_oz")


def refusal_of(text: str, preferences: Preferences = METRIC) -> Refusal:
    """The refusal that `text` meets."""
    with pytest.raises(Refused) as no:
        read_volume(text, preferences)
    return no.value.refusal


@given(
    st.sampled_from(("ml", "us_fl_oz", "imperial_fl_oz")),
    st.sampled_from((0.1, 0.25, 0.5, 1.0, 5.0, 10.0, 25.0)),
    st.integers(1, 2000),
)
def test_what_is_shown_is_read_again(unit: VolumeUnit, mark_ml: float, marks: int) -> None:
    """Every mark of every measure in every unit."""
    preferences = Preferences(volume=unit)
    volume_ml = marks * volume_step(mark_ml, preferences) * ml_each(unit)
    text = volume_text(volume_ml, preferences, mark_ml=mark_ml)

    assert pytest.approx(volume_ml) == read_volume(text, preferences)


@pytest.mark.parametrize(
    ("text", "preferences", "volume_ml"),
    [
        ("500", METRIC, 500.0),
        ("500 ml", METRIC, 500.0),
        ("500ML", US, 500.0),
        ("500 cc", METRIC, 500.0),
        ("500 cm³", METRIC, 500.0),
        ("0.5 l", METRIC, 500.0),
        (".5 L", METRIC, 500.0),
        ("0,500 l", METRIC, 500.0),
        ("1.5 litres", METRIC, 1500.0),
        ("1 000 ml", METRIC, 1000.0),
        ("5 dl", METRIC, 500.0),
        ("½ l", METRIC, 500.0),
        ("62,5", METRIC, 62.5),
        ("17 US fl oz", METRIC, 502.75),
        ("17 imp fl oz", METRIC, 483.02),
        ("17 fl oz", US, 502.75),
        ("17", IMPERIAL, 483.02),
        ("17 1/2 oz", US, 517.54),
    ],
)
def test_volumes_as_people_write_them(text: str, preferences: Preferences, volume_ml: float) -> None:
    """A bare number and plain ounces are in the person's unit."""
    assert pytest.approx(volume_ml, abs=0.005) == read_volume(text, preferences)


@pytest.mark.parametrize(
    ("text", "preferences", "first", "second"),
    [
        ("0.5", METRIC, "0.5 L", "0.5 mL"),
        ("1", METRIC, "1 L", "1 mL"),
        ("1,000", METRIC, "1000 mL", "1 mL"),
        ("1.000 ml", METRIC, "1000 ml", "1 ml"),
        ("17 fl oz", METRIC, "17 US fl oz", "17 imperial fl oz"),
        ("500", US, "500 mL", "500 US fl oz"),
    ],
)
def test_two_readings_are_asked_back(text: str, preferences: Preferences, first: str, second: str) -> None:
    """Litres or millilitres, thousands or decimals, US or imperial: each way on is read without doubt."""
    no = refusal_of(text, preferences)

    assert "volume-two-readings" == no.code
    assert (first, second) == (no.numbers["first"], no.numbers["second"])
    assert read_volume(first, preferences) != read_volume(second, preferences)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "volume-unreadable"),
        ("a jugful", "volume-unreadable"),
        ("5 pounds", "volume-unreadable"),
        ("5 US ml", "volume-unreadable"),
        ("0 ml", "volume-not-readable"),
        ("1000 l", "volume-not-readable"),
        ("-5 ml", "volume-unreadable"),
        ("5/0 ml", "number-unreadable"),
    ],
)
def test_what_is_no_volume_is_told_why(text: str, code: str) -> None:
    """A refusal, not a guess."""
    assert code == refusal_of(text).code


@given(st.text(alphabet="0123456789.,/ ½mlcdLfozusi³", max_size=12), st.sampled_from((METRIC, US, IMPERIAL)))
def test_any_text_is_read_or_refused(text: str, preferences: Preferences) -> None:
    """Nothing typed is a traceback, and nothing unreadable comes through."""
    with suppress(Refused):
        assert 0.01 <= read_volume(text, preferences) <= 200_000
