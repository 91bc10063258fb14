"""Numbers of a why with their units, as a person reads them."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from math import floor, log10

from tankside.core.quantities.display import plain_number, temperature_text, time_text, to_step, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.sensitometry.speed import ARITHMETIC

STEPS = {"C": 0.1, "mL": 1.0, "contrast index": 0.01, "rolls": 1.0, "degrees": 0.3, "log H": 0.01}
"""To what an answer is shown that is no time."""

DEGREES_A_STOP = 3

UNIT_WORDS = {
    "s": "minutes", "contrast index": "contrast", "g/m2": "g/m²", "fills": "fills", "rolls": "rolls",
    "months": "months", "density": "density", "log H": "log H", "degrees": "index",
}  # fmt: skip
"""What a scale counts, where the unit alone does not say it."""


def value_text(value: float, unit: str, preferences: Preferences) -> str:
    """A number with its unit as a person reads it.

    >>> value_text(540.0, "s", Preferences()), value_text(20.84, "C", Preferences())
    ('9:00', '20.8 °C')
    >>> value_text(0.00854, "g/m2", Preferences()), value_text(5.0, "rolls", Preferences())
    ('0.009 g/m²', '5 rolls')
    """
    say = SAID.get(unit)
    return say(value, preferences) if say else f"{plain_number(value, 0.1)} {unit}".strip()


def two_figures(value: float) -> str:
    """A number above 0 to two figures and at most three decimals: what a residual is told to."""
    return f"{value:.{min(3, max(0, 1 - floor(log10(value))))}f}"


def day_of(day: date) -> str:
    """A day with its year.

    >>> day_of(date(2027, 5, 25))
    '25 May 2027'
    """
    return f"{day.day} {day:%b} {day.year}"


def rolls_text(value: float) -> str:
    """Rolls with the word: whole, or to a tenth where they are not."""
    many = plain_number(value, 1.0 if value == round(value) else 0.1)
    return f"{many} roll{'' if value == 1 else 's'}"


def index_text(degrees: float) -> str:
    """The standard speed of so many degrees, each a third of a stop.

    >>> index_text(21.0), index_text(22.4), index_text(-3.0)
    ('100', '125', '0.4')
    """
    whole = round(degrees)
    return f"{ARITHMETIC[whole]:g}" if 0 <= whole < len(ARITHMETIC) else f"{10 ** ((whole - 1) / 10):.1g}"


SAID: dict[str, Callable[[float, Preferences], str]] = {
    "s": lambda value, _: time_text(value),
    "C": temperature_text,
    "mL": volume_text,
    "min": lambda value, _: f"{value:.0f} min",
    "contrast index": lambda value, _: f"{value:.2f}",
    "g/m2": lambda value, _: f"{two_figures(value)} g/m²",
    "rolls": lambda value, _: rolls_text(value),
    "fills": lambda value, _: f"{value:g}",
    "months": lambda value, _: f"{plain_number(value, 1.0)} month{'' if round(value) == 1 else 's'}",
    "day": lambda value, _: day_of(date.fromordinal(int(value))),
    "density": lambda value, _: f"{value:.2f}",
    "log H": lambda value, _: f"{value:.2f}".replace("-", "\u2212"),
    "degrees": lambda value, _: index_text(value),
    "%": lambda value, _: f"{to_step(value, 5.0):.0f} %",
    "mmol/L": lambda value, _: f"{value:.0f} mmol/L",
    "yes": lambda value, _: "yes" if value > 0 else "no",
    "": lambda value, _: f"{value:g}",
}
"""How a value is said, by its unit; any other unit stands after the number."""


def difference_text(value: float, unit: str, preferences: Preferences) -> str:
    """A difference with its unit: a time as minutes and seconds, a temperature in the person's degrees."""
    if unit == "C":
        from_c = 1.8 if preferences.temperature == "F" else 1.0
        told = value * from_c
        return f"{plain_number(told, 0.1 if told >= 0.095 else 0.01)} °{preferences.temperature}"
    if unit == "degrees":
        return f"{value / DEGREES_A_STOP:.1f} stop"
    return value_text(value, unit, preferences)
