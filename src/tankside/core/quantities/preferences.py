"""How one person writes amounts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, get_args

TemperatureUnit = Literal["C", "F"]
VolumeUnit = Literal["ml", "us_fl_oz", "imperial_fl_oz"]


@dataclass(frozen=True, slots=True)
class Preferences:
    """Units and language of one person; inside the program everything is in C, mL and s."""

    temperature: TemperatureUnit = "C"
    volume: VolumeUnit = "ml"
    language: str = "en"


def preferences_from(kept: Mapping[str, str]) -> Preferences:
    """Preferences from texts kept by name; what is missing or unknown falls back to the default.

    Own model: docs/how-to/amounts. Doubt: none.

    >>> preferences_from({"temperature": "F", "volume": "hogshead"})
    Preferences(temperature='F', volume='ml', language='en')
    """
    temperature: dict[str, TemperatureUnit] = {one: one for one in get_args(TemperatureUnit)}
    volume: dict[str, VolumeUnit] = {one: one for one in get_args(VolumeUnit)}
    return Preferences(
        temperature.get(kept.get("temperature", ""), "C"),
        volume.get(kept.get("volume", ""), "ml"),
        kept.get("language", "en"),
    )
