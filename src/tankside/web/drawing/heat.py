"""Temperature across, time down: the band as planned, what was, and what was read."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil, floor

from tankside.core.quantities.convert import temp_in
from tankside.core.quantities.preferences import TemperatureUnit
from tankside.web.drawing.graduation import Graduation, graduation
from tankside.web.drawing.kinds import Sign

LEAST_SPAN = 6
ROOM_FOR_WORDS_PX = 40.0

Points = Sequence[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Reading:
    """A temperature read in a bath, with its words."""

    at_s: float
    temp_c: float
    sign: Sign
    words: str


@dataclass(frozen=True, slots=True)
class Warm:
    """Temperatures in C at seconds after the first pour; the band lies `band_k` about what was planned."""

    planned: Points
    happened: Points
    band_k: float
    readings: tuple[Reading, ...]
    unit: TemperatureUnit = "C"


@dataclass(frozen=True, slots=True)
class Cross:
    """A reading where it stands, its words to the right or left of it."""

    x: float
    y: float
    sign: Sign
    words: str
    anchor: str


@dataclass(frozen=True, slots=True)
class DrawnHeat:
    """The field: its scale across the top, band, planned and happened lines, crosses."""

    left: float
    right: float
    bottom: float
    scale: Graduation
    unit: str
    band: str
    planned: str
    happened: str
    crosses: tuple[Cross, ...]
    band_y: float


def drawn_heat(
    warm: Warm, across: tuple[float, float], *, y: Callable[[float], float], bottom: float
) -> DrawnHeat:
    """The field between two x; where nothing was read the planned line stands alone."""
    left, right = across
    low, high = _range(warm)
    fine = right - left > 150
    scale = graduation(
        low=low, high=high, unit=0.2 if fine else 1, middle=5 if fine else 2, long=10 if fine else 4,
        length_px=right - left, words=lambda value: f"{value:g}",
    )  # fmt: skip

    def x(temp_c: float) -> float:
        return left + scale.at(temp_in(temp_c, warm.unit))

    def path(points: Points, by_k: float = 0.0) -> str:
        return "L".join(f"{x(temp_c + by_k):.1f} {y(at_s):.1f}" for at_s, temp_c in points)

    band = (
        f"M{path(warm.planned, -warm.band_k)}L{path(warm.planned[::-1], warm.band_k)}Z"
        if warm.planned
        else ""
    )
    middle = warm.planned[len(warm.planned) // 2][0] if warm.planned else 0.0
    return DrawnHeat(
        left=left,
        right=right,
        bottom=bottom,
        scale=scale,
        unit="°F" if warm.unit == "F" else "°C",
        band=band,
        planned=f"M{path(warm.planned)}" if warm.planned else "",
        happened=f"M{path(warm.happened)}" if warm.happened else "",
        crosses=tuple(_crosses(warm, x, y, across)),
        band_y=y(middle),
    )


def _crosses(
    warm: Warm, x: Callable[[float], float], y: Callable[[float], float], across: tuple[float, float]
) -> list[Cross]:
    left, right = across
    found = []
    for one in warm.readings:
        at_x = x(one.temp_c)
        cooler = bool(warm.planned) and one.temp_c < warm.planned[0][1]
        leftward = at_x + ROOM_FOR_WORDS_PX > right or (cooler and at_x - ROOM_FOR_WORDS_PX > left)
        found.append(Cross(at_x, y(one.at_s), one.sign, one.words, "end" if leftward else "start"))
    return found


def _range(warm: Warm) -> tuple[float, float]:
    """Whole degrees about everything, an even number of them and never fewer than six."""
    temps = [temp_c for _, temp_c in (*warm.planned, *warm.happened)] + [one.temp_c for one in warm.readings]
    shown = [temp_in(temp_c, warm.unit) for temp_c in temps] or [20.0]
    low, high = floor(min(shown) - 1), ceil(max(shown) + 1)
    low -= low % 2
    high += high % 2
    while high - low < LEAST_SPAN:
        low, high = low - 2, high + (2 if high - low + 2 < LEAST_SPAN else 0)
    return float(low), float(high)
