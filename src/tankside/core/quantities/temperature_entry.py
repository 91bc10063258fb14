"""Temperatures as people write them."""

from __future__ import annotations

import re

from tankside.core.quantities.convert import temp_c_of
from tankside.core.quantities.limits import LIQUID_C, USUAL_LIQUID_C, Limits, check_temperature
from tankside.core.quantities.preferences import Preferences, TemperatureUnit
from tankside.core.quantities.typed import NUMBER, number, plain, unreadable
from tankside.core.refusals import refuse

_TYPED = re.compile(
    rf"(?P<sign>[-+]?) ?(?P<number>{NUMBER}) ?(?:°|deg(?:rees?)?\.?)? ?(?P<unit>c|f|celsius|fahrenheit)?"
)


def read_temperature(
    text: str, preferences: Preferences, *, limits: Limits = LIQUID_C, usual: Limits = USUAL_LIQUID_C
) -> float:
    """Degrees Celsius of a temperature as typed: '20', '20,5', '20.0 C', '68 °F'.

    A bare number is in the person's degrees; where that would be outside `usual` and the other unit inside,
    it is asked back ('68' with a preference for Celsius). Result: C, within `limits`.
    Own model: docs/how-to/amounts. Doubt: none.

    >>> read_temperature("68 F", Preferences()), read_temperature("20,5", Preferences())
    (20.0, 20.5)
    """
    found = _TYPED.fullmatch(plain(text))
    if found is None:
        raise unreadable("temperature-unreadable", text)
    told = number(found["number"]) * (-1 if found["sign"] == "-" else 1)
    if found["unit"] is not None:
        unit: TemperatureUnit = "F" if found["unit"].startswith("f") else "C"
        return check_temperature(temp_c_of(told, unit), limits=limits)
    preferred = preferences.temperature
    other: TemperatureUnit = "C" if preferred == "F" else "F"
    if not usual.hold(temp_c_of(told, preferred)) and usual.hold(temp_c_of(told, other)):
        raise _asked_back(found["number"], told, other=other, preferred=preferred)
    return check_temperature(temp_c_of(told, preferred), limits=limits)


def _asked_back(typed: str, told: float, *, other: TemperatureUnit, preferred: TemperatureUnit) -> Exception:
    """Which degrees did you mean?"""
    return refuse(
        "temperature-two-readings",
        ways_on=("read-as-first", "read-as-second"),
        typed=typed,
        first=f"{typed} °{other}",
        second=f"{typed} °{preferred}",
        first_c=temp_c_of(told, other),
    )
