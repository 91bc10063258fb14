"""Step strips of a combination as rows of the table on the Densities page."""

from __future__ import annotations

from dataclasses import dataclass
from zoneinfo import ZoneInfo

from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.web.drawing.field import Sign
from tankside.web.shown.journal import day_words
from tankside.wording.densities import and_doubt, has_speed, speed_words
from tankside.workflows.read_densities import ReadStrip


@dataclass(frozen=True, slots=True)
class StripRow:
    """One strip in the table; `has_contrast` and `has_speed` where they have their working."""

    key: str
    number: int
    sign: Sign
    day: str
    time: str
    warm: str
    contrast: str
    base: str
    speed: str
    chosen: bool
    has_contrast: bool
    has_speed: bool


def row_of(
    one: ReadStrip, number: int, sign: Sign, preferences: Preferences, zone: ZoneInfo, *, chosen: bool
) -> StripRow:
    """One strip in figures."""
    return StripRow(
        str(one.strip.key),
        number,
        sign,
        day_words(one.day.astimezone(zone)),
        time_text(one.had.had_s),
        temperature_text(one.had.mean_c, preferences),
        and_doubt(one.found.contrast_index),
        f"{one.found.curve.base_fog.value:.2f}",
        speed_words(one),
        chosen,
        isinstance(one.found.contrast_index, Estimate),
        has_speed(one),
    )
