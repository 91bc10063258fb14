"""The units in which the household reads temperatures and volumes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast, get_args

from tankside.core.quantities.preferences import TemperatureUnit, VolumeUnit
from tankside.workflows.ports import PreferenceBook

DEGREES: dict[TemperatureUnit, str] = {"C": "Celsius", "F": "Fahrenheit"}


@dataclass(frozen=True, slots=True)
class Units:
    """One unit for each quantity."""

    temperature: TemperatureUnit = "C"
    volume: VolumeUnit = "ml"

    @property
    def words(self) -> str:
        """Both, as a person says them."""
        volume = "Litres" if self.volume == "ml" else "Fluid ounces"
        return f"{volume} and {DEGREES[self.temperature]}"


def read_units(temperature: str, volume: str) -> Units:
    """The units that two words name; a word that names none leaves the usual one.

    >>> read_units("F", "gallon").words
    'Litres and Fahrenheit'
    """
    usual = Units()
    return Units(
        cast(TemperatureUnit, temperature) if temperature in get_args(TemperatureUnit) else usual.temperature,
        cast(VolumeUnit, volume) if volume in get_args(VolumeUnit) else usual.volume,
    )


def chosen_units(book: PreferenceBook) -> Units:
    """The units that were chosen, else the usual ones."""
    chosen = book.all()
    return read_units(chosen.get("temperature", ""), chosen.get("volume", ""))


def choose_units(book: PreferenceBook, units: Units) -> None:
    """Choose both."""
    book.keep("temperature", units.temperature)
    book.keep("volume", units.volume)
