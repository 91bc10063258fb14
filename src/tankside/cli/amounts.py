"""Amounts on the command line: typed as anywhere else, refused at their option, told as JSON."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal, TypeVar

import click

from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.display import shown, to_step
from tankside.core.quantities.entry import read_temperature, read_volume
from tankside.core.quantities.limits import LIQUID_C, Limits
from tankside.core.quantities.preferences import Preferences, TemperatureUnit, VolumeUnit
from tankside.core.refusals import Refused

VolumeWord = Literal["ml", "us", "imperial"]
Amount = TypeVar("Amount")

VOLUMES: Mapping[str, VolumeUnit] = {"ml": "ml", "us": "us_fl_oz", "imperial": "imperial_fl_oz"}

degrees_option = click.option(
    "--degrees", type=click.Choice(["C", "F"]), default="C", show_default=True,
    help="Degrees of bare numbers and of the answer.",
)  # fmt: skip
volumes_option = click.option(
    "--volumes", type=click.Choice(list(VOLUMES)), default="ml", show_default=True,
    help="Millilitres, US or imperial fluid ounces.",
)  # fmt: skip
thermometer_option = click.option(
    "--thermometer", type=click.Choice(["0.1", "0.5"]), default="0.1", show_default=True,
    help="Mark of the thermometer, in C.",
)  # fmt: skip
json_option = click.option("--json", "as_json", is_flag=True, help="Tell it as JSON, in C, mL and s.")


@dataclass(frozen=True, slots=True)
class Typed:
    """Reads the options of one call in the person's units."""

    own: Preferences

    def temp_c(self, option: str, text: str, *, limits: Limits = LIQUID_C) -> float:
        """Degrees Celsius."""
        return at(option, lambda: read_temperature(text, self.own, limits=limits))

    def volume_ml(self, option: str, text: str) -> float:
        """Millilitres."""
        return at(option, lambda: read_volume(text, self.own))


def typed_in(degrees: TemperatureUnit, volumes: VolumeWord) -> Typed:
    """The reader of this call's amounts; refusals are told in its units too."""
    preferences = Preferences(degrees, VOLUMES[volumes])
    click.get_current_context().find_root().obj = preferences
    return Typed(preferences)


def at(option: str, read: Callable[[], Amount]) -> Amount:
    """What `read` reads; a refusal is told at `option`."""
    try:
        return read()
    except Refused as no:
        raise Refused(no.refusal.placed(option)) from no


def as_number(value: float, unit: str, *, step: float, source: str) -> dict[str, object]:
    """One number that carries no more digits than `step` allows."""
    return {"value": to_step(value, step), "unit": unit, "source": source}


def as_estimate(of: Estimate, *, step: float) -> dict[str, object]:
    """An estimate with its 5-95 % interval, no more digits than `step` allows."""
    told = shown(of, step)
    return {"value": told.value, "interval": [told.low, told.high], "unit": of.unit, "source": of.source}


def tell(answer: Mapping[str, object]) -> None:
    """JSON on standard output."""
    click.echo(json.dumps(answer, indent=2, ensure_ascii=False))
