"""The numbers of a refusal in the person's units, told by how their names end."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from math import floor, isfinite, log10

from tankside.core.quantities.display import step_text, temperature_text, time_text, volume_step, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Number

Spoken = Callable[[float, Preferences], str]


_FIXED = re.compile(r"fixed_(\d+)_[a-z]+")


class SpokenNumbers(dict[str, str]):
    """Numbers as texts by name; `fixed_65_c` is always there: 65 °C in the person's degrees."""

    def __init__(self, numbers: Mapping[str, Number], preferences: Preferences) -> None:
        super().__init__({name: _said(name, value, preferences) for name, value in numbers.items()})
        self._preferences = preferences

    def __missing__(self, name: str) -> str:
        fixed = _FIXED.fullmatch(name)
        if fixed is None:
            raise KeyError(name)
        return _said(name, float(fixed[1]), self._preferences)


def spoken(numbers: Mapping[str, Number], preferences: Preferences) -> SpokenNumbers:
    """Every number as text: `temp_c` as a temperature, `needs_ml` as a volume, `fits_rolls` counted.

    >>> spoken({"temp_c": 20, "needs_ml": 800.0, "fits_rolls": 1, "code": "K7M4-T"}, Preferences("F"))
    {'temp_c': '68.0 °F', 'needs_ml': '800 mL', 'fits_rolls': '1 roll', 'code': 'K7M4-T'}
    """
    return SpokenNumbers(numbers, preferences)


def _said(name: str, value: Number, preferences: Preferences) -> str:
    if isinstance(value, str):
        return value
    if not isfinite(value):
        return "no number"
    said = ENDINGS.get(f"_{name}".rsplit("_", 1)[1])
    return said(value, preferences) if said else _bare(value)


def _bare(value: float) -> str:
    """A number without a unit: whole as it is, else to four figures, which is all that one reads or types."""
    return f"{value:.0f}" if value == floor(value) else f"{value:.4g}"


def _volume(volume_ml: float, preferences: Preferences) -> str:
    """A volume that is compared with another: three figures, but never finer than a syringe."""
    figures = floor(log10(abs(volume_ml))) if volume_ml else 0
    mark_ml = min(1.0, max(0.01, 10.0 ** (figures - 2)))
    text = volume_text(volume_ml, preferences, mark_ml=volume_step(mark_ml, Preferences()))
    number, unit = text.split(" ", 1)
    return f"{number.rstrip('0').rstrip('.') if '.' in number else number} {unit}"


ENDINGS: Mapping[str, Spoken] = {
    "c": temperature_text,
    "k": step_text,
    "ml": _volume,
    "s": lambda value, _: time_text(value) if abs(value) >= 60 else f"{value:.2g} s",
    "m": lambda value, _: f"{value:.3g} m",
    "g": lambda value, _: f"{value:.3g} g",
    "percent": lambda value, _: f"{value:.3g} %",
    "rolls": lambda value, _: f"{value:.3g} {'roll' if value == 1 else 'rolls'}",
    "parts": lambda value, _: f"{value:.5g} {'part' if value == 1 else 'parts'}",
}
