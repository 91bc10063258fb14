"""The curves of step strips as the Densities page draws, reads along and tables them."""

from __future__ import annotations

from collections.abc import Sequence
from json import dumps

import numpy as np

from tankside.core.quantities.display import time_text
from tankside.core.sensitometry.curve import half_width
from tankside.web.drawing.family import Wish
from tankside.web.drawing.field import Sign
from tankside.workflows.read_densities import ReadStrip

EVERY_LOG_H, READ_EVERY = 0.5, 0.05


def wish_of(one: ReadStrip, sign: Sign, *, absolute: bool, chosen: bool) -> Wish:
    """One curve, its readings above base and fog; without absolute exposure all lie on the tablet's scale."""
    strip, base = one.strip, one.found.curve.base_fog.value
    clear = strip.exposed.log_h0 or 0.0
    along = strip.log_h if strip.log_h is not None else tuple(clear - patch for patch in strip.patches)
    readings = [(x, d - base) for x, d in zip(along, strip.densities, strict=True) if d is not None]
    name = time_text(one.had.had_s)
    return Wish(one.found.curve, sorted(readings), sign, name, chosen, 0.0 if absolute else -clear)


def reading_along(wishes: Sequence[Wish]) -> str:
    """Log exposure, density and half its interval along the chosen curve, every 0.05, for the script."""
    one = next((each for each in wishes if each.chosen), None)
    if one is None:
        return ""
    shape, half, last = one.curve.shape, half_width(one.curve), max(x for x, _ in one.readings)
    first = min(x for x, _ in one.readings)
    at = np.arange(first, last + READ_EVERY / 2, READ_EVERY)
    points = [
        [round(x + one.shift, 3), round(shape.net_at(x), 3), round(float(np.interp(x, shape.log_h, half)), 3)]
        for x in map(float, at)
    ]
    return dumps(points, separators=(",", ":"))


def curve_table(
    strips: Sequence[ReadStrip], wishes: Sequence[Wish]
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Density above base and fog with its doubt, at every half of log exposure."""
    if not strips:
        return ()
    spans = [(one.curve.shape.log_h[0] + one.shift, one.curve.shape.log_h[-1] + one.shift) for one in wishes]
    low, high = min(first for first, _ in spans), max(last for _, last in spans)
    at = np.arange(np.ceil(low / EVERY_LOG_H), np.floor(high / EVERY_LOG_H) + 1) * EVERY_LOG_H
    return tuple(
        (f"{log_h:.1f}".replace("-", "\u2212"), tuple(_density_at(one, float(log_h)) for one in wishes))
        for log_h in at
    )


def _density_at(one: Wish, log_h: float) -> str:
    """One density with half its interval."""
    shape, x = one.curve.shape, log_h - one.shift
    if not shape.log_h[0] <= x <= shape.log_h[-1]:
        return "\u2013"
    half = float(np.interp(x, shape.log_h, half_width(one.curve)))
    return f"{shape.net_at(x):.2f} ± {max(half, 0.005):.2f}"
