"""The units in which the household reads temperatures and volumes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, cast, get_args

from tankside.workflows.ports import PreferenceBook

Temperature = Literal["celsius", "fahrenheit"]
Volume = Literal["ml", "fl-oz"]


@dataclass(frozen=True, slots=True)
class Units:
    """One unit for each quantity."""

    temperature: Temperature = "celsius"
    volume: Volume = "ml"

    @property
    def words(self) -> str:
        """Both, as a person says them."""
        volume = "Litres" if self.volume == "ml" else "Fluid ounces"
        return f"{volume} and {self.temperature.capitalize()}"


def read_units(temperature: str, volume: str) -> Units:
    """The units that two words name; a word that names none leaves the usual one.

    >>> read_units("fahrenheit", "gallon").words
    'Litres and Fahrenheit'
    """
    usual = Units()
    return Units(
        cast(Temperature, temperature) if temperature in get_args(Temperature) else usual.temperature,
        cast(Volume, volume) if volume in get_args(Volume) else usual.volume,
    )


def chosen_units(book: PreferenceBook) -> Units:
    """The units that were chosen, else the usual ones."""
    chosen = book.all()
    return read_units(chosen.get("temperature", ""), chosen.get("volume", ""))


def choose_units(book: PreferenceBook, units: Units) -> None:
    """Choose both."""
    book.keep("temperature", units.temperature)
    book.keep("volume", units.volume)
