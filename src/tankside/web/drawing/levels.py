"""A bottle's ledger as a surface that falls and rises from line to line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tankside.web.drawing.graduation import Graduation, graduation
from tankside.web.drawing.shapes import Box
from tankside.web.drawing.stock import long_step
from tankside.web.drawing.vessel import glass

LEFT_PX, TOP_PX, HEIGHT_PX, MOST_PX, STEP_PX = 52.0, 28.0, 132.0, 220.0, 30.0


@dataclass(frozen=True, slots=True)
class Levels:
    """The glass, its scale, and the surface from line to line."""

    width_px: float
    height_px: float
    inside: Box
    walls: str
    foot: Box
    scale: Graduation
    body: str
    surface: str


def levels(after_ml: Sequence[float], *, capacity_ml: float) -> Levels:
    """The volume (mL) after each line of a ledger, in a glass of `capacity_ml`."""
    step = min(STEP_PX, MOST_PX / max(len(after_ml), 1))
    width = max(step * len(after_ml), 2 * STEP_PX)
    step = width / max(len(after_ml), 1)
    long = long_step(capacity_ml, HEIGHT_PX)
    scale = graduation(
        low=0, high=capacity_ml, unit=long / 5, length_px=HEIGHT_PX, middle=5, long=5, upward=True
    )
    foot, right = TOP_PX + HEIGHT_PX, LEFT_PX + width
    heights = [TOP_PX + scale.at(max(0.0, min(ml, capacity_ml))) for ml in after_ml]
    path = "".join(
        f"{'M' if at == 0 else 'L'}{LEFT_PX + at * step:g} {y:g}H{LEFT_PX + (at + 1) * step:g}"
        for at, y in enumerate(heights)
    )
    return Levels(
        right + 10,
        foot + 6,
        Box(LEFT_PX, TOP_PX, width, HEIGHT_PX),
        glass(left=LEFT_PX, right=right, lip=TOP_PX - 14, foot=foot, flare_px=4),
        Box(LEFT_PX - 6, foot, width + 12, 3),
        scale,
        f"{path}V{foot:g}H{LEFT_PX:g}Z" if path else "",
        path,
    )
