"""Temperatures as people write them, in their own degrees."""

from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.quantities.convert import temp_c_of
from tankside.core.quantities.display import DIGITAL_MARK, GLASS_MARK, temperature_text
from tankside.core.quantities.entry import read_temperature
from tankside.core.quantities.limits import ROOM_C
from tankside.core.quantities.preferences import Preferences, TemperatureUnit
from tankside.core.refusals import Refusal, Refused

CELSIUS, FAHRENHEIT = Preferences("C"), Preferences("F")


def refusal_of(text: str, preferences: Preferences) -> Refusal:
    """The refusal that `text` meets."""
    with pytest.raises(Refused) as no:
        read_temperature(text, preferences)
    return no.value.refusal


@pytest.mark.parametrize("mark", [GLASS_MARK, DIGITAL_MARK])
@given(st.sampled_from(("C", "F")), st.integers(0, 2120))
def test_what_is_shown_is_read_again(mark: float, unit: TemperatureUnit, marks: int) -> None:
    """Every mark of both thermometers between ice and steam, in both degrees."""
    degrees = round(marks * mark, 1)
    if not (0 <= temp_c_of(degrees, unit) <= 100):
        return
    preferences = Preferences(unit)
    temp_c = temp_c_of(degrees, unit)

    assert pytest.approx(temp_c, abs=1e-9) == read_temperature(
        temperature_text(temp_c, preferences, mark=mark), preferences
    )


@pytest.mark.parametrize(
    ("text", "preferences", "temp_c"),
    [
        ("20", CELSIUS, 20.0),
        ("20.0 C", CELSIUS, 20.0),
        ("20,5", CELSIUS, 20.5),
        ("20,5 °C", FAHRENHEIT, 20.5),
        ("20℃", FAHRENHEIT, 20.0),
        ("20 ºC", CELSIUS, 20.0),
        ("68 F", CELSIUS, 20.0),
        ("68", FAHRENHEIT, 20.0),
        ("68 deg F", CELSIUS, 20.0),
        ("52", CELSIUS, 52.0),
        ("0", CELSIUS, 0.0),
        ("100 C", CELSIUS, 100.0),
    ],
)
def test_temperatures_as_people_write_them(text: str, preferences: Preferences, temp_c: float) -> None:
    """With a unit it holds; bare it is the person's own degrees."""
    assert pytest.approx(temp_c) == read_temperature(text, preferences)


@pytest.mark.parametrize(
    ("text", "preferences", "first", "first_c"),
    [("68", CELSIUS, "68 °F", 20.0), ("20", FAHRENHEIT, "20 °C", 20.0), ("75", CELSIUS, "75 °F", 23.889)],
)
def test_the_other_degrees_are_asked_back(
    text: str, preferences: Preferences, first: str, first_c: float
) -> None:
    """'68' of a person who thinks in Celsius is far likelier 68 °F: asked, never assumed."""
    no = refusal_of(text, preferences)

    assert "temperature-two-readings" == no.code
    assert first == no.numbers["first"]
    assert pytest.approx(first_c, abs=0.001) == no.numbers["first_c"]
    assert pytest.approx(first_c, abs=0.001) == read_temperature(first, preferences)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "temperature-unreadable"),
        ("warm", "temperature-unreadable"),
        ("20.5.1", "temperature-unreadable"),
        ("293 K", "temperature-unreadable"),
        ("-1", "temperature-not-readable"),
        ("101 C", "temperature-not-readable"),
        ("nan", "temperature-unreadable"),
    ],
)
def test_what_is_no_temperature_is_told_why(text: str, code: str) -> None:
    """A liquid lies between ice and steam."""
    assert code == refusal_of(text, CELSIUS).code


def test_a_room_may_be_colder_than_a_liquid() -> None:
    """Rooms have limits of their own."""
    assert -3.0 == read_temperature("-3 C", CELSIUS, limits=ROOM_C)


@given(st.text(alphabet="0123456789.,- °cCfFºkK+deg", max_size=10), st.sampled_from((CELSIUS, FAHRENHEIT)))
def test_any_text_is_read_or_refused(text: str, preferences: Preferences) -> None:
    """Nothing typed is a traceback, and nothing unreadable comes through."""
    with suppress(Refused):
        assert 0 <= read_temperature(text, preferences) <= 100
