"""What one device remembers for itself, in cookies: its theme and the units it reads."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, cast, get_args

from starlette.requests import Request
from starlette.responses import Response

Theme = Literal["light", "dark", "dim"]
Temperature = Literal["celsius", "fahrenheit"]
Volume = Literal["ml", "fl-oz"]
THEME_COOKIE = "tankside-theme"
UNITS_COOKIE = "tankside-units"
TEN_YEARS_S = 10 * 365 * 24 * 3600


@dataclass(frozen=True, slots=True)
class Units:
    """The units in which this device shows temperatures and volumes."""

    temperature: Temperature = "celsius"
    volume: Volume = "ml"

    @property
    def words(self) -> str:
        """Both, as a person says them."""
        volume = "Litres" if self.volume == "ml" else "Fluid ounces"
        return f"{volume} and {self.temperature.capitalize()}"

    @property
    def kept(self) -> str:
        """Both as one cookie holds them."""
        return f"{self.temperature}.{self.volume}"


def theme_of(request: Request) -> Theme | None:
    """The theme chosen on this device; None follows the device."""
    return read_theme(request.cookies.get(THEME_COOKIE, ""))


def read_theme(word: str) -> Theme | None:
    """The theme that `word` names, or None.

    >>> read_theme("dim"), read_theme("device")
    ('dim', None)
    """
    return cast(Theme, word) if word in get_args(Theme) else None


def units_of(request: Request) -> Units:
    """The units chosen on this device."""
    temperature, _, volume = request.cookies.get(UNITS_COOKIE, "").partition(".")
    return read_units(temperature, volume)


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


def keep(response: Response, name: str, value: str | None) -> None:
    """Keep `value` on the device under `name`, or forget it where there is none."""
    if value is None:
        response.delete_cookie(name, path="/")
        return
    response.set_cookie(name, value, max_age=TEN_YEARS_S, path="/", httponly=True, samesite="strict")
