"""A bottle's vessel with two scales: millilitres outside left, rolls outside right, which may disagree."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import floor, log10

from tankside.web.drawing.graduation import LEAST_BETWEEN_NUMERALS_PX, Graduation, graduation
from tankside.web.drawing.shapes import Box, liquid, surface
from tankside.web.drawing.vessel import glass

STRIPE_PX = 14.0
LEAST_WORD_PX = 18.0


@dataclass(frozen=True, slots=True)
class Stock:
    """What stands in a bottle and what it is still good for.

    `used`, `doubtful` and `left` are the parts of the stripe from the top; `after_px` is the level after
    tonight; the words 'used' and 'left' have a height only where there is room for them.
    """

    inside: Box
    walls: str
    foot: Box
    volume: Graduation
    rolls: Graduation
    level_px: float
    surface: str
    body: str
    used: Box
    doubtful: Box
    left: Box
    after_px: float | None
    used_word_px: float | None
    left_word_px: float | None


def long_step(high: float, length_px: float, *, least: float = 0.0) -> float:
    """The step between numerals: 1, 2 or 5 times a power of ten, at least 22 px and `least` apart.

    >>> long_step(1000, 116), long_step(25, 116), long_step(250, 116)
    (200.0, 5.0, 50.0)
    """
    wanted = max(high * LEAST_BETWEEN_NUMERALS_PX / length_px, least)
    decade = 10.0 ** floor(log10(wanted))
    return next(step * decade for step in (1.0, 2.0, 5.0, 10.0) if step * decade >= wanted - 1e-9)


def stock(
    *,
    capacity_ml: float,
    holds_ml: float,
    rolls_at_most: float,
    rolls_left: tuple[float, float],
    after_ml: float | None = None,
    left: float = 48.0,
    top: float = 36.0,
    width_px: float = 84.0,
    height_px: float = 116.0,
) -> Stock:
    """A vessel of `capacity_ml` holding `holds_ml`, good for `rolls_left` (low, high) of `rolls_at_most`."""
    low, high = rolls_left
    if not 0 <= low <= high <= rolls_at_most:
        raise ValueError("rolls left rise from low to high and stay under the most that were ever in it")
    foot, right = top + height_px, left + width_px
    volume = _engraved(capacity_ml, height_px, least=0.0)
    rolls = _engraved(rolls_at_most, height_px, least=1.0)
    level = {"left": left, "right": right, "y": top + volume.at(min(holds_ml, capacity_ml)), "climb_px": 6.0}
    x = right - STRIPE_PX - 13
    ends = [top, top + rolls.at(high), top + rolls.at(low), foot]
    used, doubtful, sure = (Box(x, above, STRIPE_PX, below - above) for above, below in pairwise(ends))
    return Stock(
        Box(left, top, width_px, height_px),
        glass(left=left, right=right, lip=top - 12, foot=foot, flare_px=0),
        Box(left - 5, foot - 1, width_px + 10, 3),
        volume,
        rolls,
        level["y"],
        surface(**level),
        liquid(**level, bottom=foot),
        used,
        doubtful,
        sure,
        None if after_ml is None else top + volume.at(max(0.0, min(after_ml, capacity_ml))),
        used.middle_y if used.height >= LEAST_WORD_PX else None,
        sure.middle_y if sure.height >= LEAST_WORD_PX else None,
    )


def _engraved(high: float, length_px: float, *, least: float) -> Graduation:
    """A scale up the glass whose short marks are a fifth of its numbered step, or whole where `least` is."""
    step = long_step(high, length_px, least=least)
    parts = 5 if step / 5 >= least else max(int(step // least), 1)
    return graduation(
        low=0, high=high, unit=step / parts, length_px=length_px, middle=parts, long=parts, upward=True
    )
