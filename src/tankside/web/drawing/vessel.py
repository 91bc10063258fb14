"""Glass: a column of layers with lip and foot, a measuring cylinder, a bottle with its cap."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tankside.web.drawing.graduation import Graduation, graduation
from tankside.web.drawing.kinds import Sign
from tankside.web.drawing.shapes import Box, liquid, surface

LIP_PX = 24.0
FLARE_PX = 5.0
FOOT_OUT_PX = 8.0
LAYER_CLIMB_PX = 5.0
STRIPE_SHARE = 0.4
LEAST_HATCHED_PX = 10.0


def glass(*, left: float, right: float, lip: float, foot: float, flare_px: float = FLARE_PX) -> str:
    """Two walls that open into a lip, as one path; the foot is drawn apart.

    >>> glass(left=0, right=40, lip=0, foot=100)
    'M-5 0Q0 2 0 10V100M45 0Q40 2 40 10V100'
    """
    bend = lip + 10
    return (
        f"M{left - flare_px:g} {lip:g}Q{left:g} {lip + 2:g} {left:g} {bend:g}V{foot:g}"
        f"M{right + flare_px:g} {lip:g}Q{right:g} {lip + 2:g} {right:g} {bend:g}V{foot:g}"
    )


@dataclass(frozen=True, slots=True)
class Layer:
    """A bath as it enters a column: its sign, from and to along the scale in pixels."""

    sign: Sign
    from_px: float
    to_px: float


@dataclass(frozen=True, slots=True)
class DrawnLayer:
    """A bath in the glass: body, surface, and the stripe that carries its hatch."""

    sign: Sign
    body: str
    surface: str
    stripe: Box
    hatched: bool
    middle_px: float


@dataclass(frozen=True, slots=True)
class Column:
    """Baths stacked in glass, first on top; `marks` are inside the left wall."""

    left: float
    right: float
    walls: str
    foot: Box
    lip_px: float
    layers: tuple[DrawnLayer, ...]
    marks: tuple[tuple[float, float], ...]


def column(
    layers: Sequence[Layer],
    *,
    left: float,
    width_px: float = 40.0,
    minute_px: float | None = None,
) -> Column:
    """A column of glass from above its first layer to the foot under its last.

    A layer of a wash is one fill. With `minute_px` each layer carries its own minutes, long at every fifth.
    """
    if not layers:
        raise ValueError("a column needs a layer; an empty vessel is a cylinder")
    right, foot, lip = left + width_px, layers[-1].to_px + 2, layers[0].from_px - LIP_PX
    marks = [mark for layer in layers for mark in _minutes(layer, minute_px)]
    return Column(
        left,
        right,
        glass(left=left, right=right, lip=lip, foot=foot),
        Box(left - FOOT_OUT_PX, foot, width_px + 2 * FOOT_OUT_PX, 4),
        lip,
        tuple(_drawn(layer, left, right) for layer in layers),
        tuple(marks),
    )


def _drawn(layer: Layer, left: float, right: float) -> DrawnLayer:
    """One layer; where it is thinner than its climb the surface is flatter."""
    height = layer.to_px - layer.from_px
    climb = min(LAYER_CLIMB_PX, max(height - 1, 0))
    level = {"left": left, "right": right, "y": layer.from_px, "climb_px": climb}
    width = (right - left) * STRIPE_SHARE
    top = layer.from_px
    return DrawnLayer(
        layer.sign,
        liquid(**level, bottom=layer.to_px),
        surface(**level),
        Box(right - width, top, width, max(height, 0)),
        height >= LEAST_HATCHED_PX,
        (layer.from_px + layer.to_px) / 2,
    )


def _minutes(layer: Layer, minute_px: float | None) -> list[tuple[float, float]]:
    """Where minutes after the pour stand in a layer, each with the length of its mark."""
    if minute_px is None or minute_px < 4:
        return []
    count = int((layer.to_px - layer.from_px - 1) / minute_px)
    return [(layer.from_px + n * minute_px, 11.0 if n % 5 == 0 else 6.0) for n in range(1, count + 1)]


@dataclass(frozen=True, slots=True)
class Cylinder:
    """A measuring cylinder: walls with lip, foot, scale inside the left wall, level and liquid."""

    inside: Box
    walls: str
    foot: Box
    scale: Graduation
    brim: str
    level_px: float | None
    level: str
    body: str


def cylinder(
    *,
    high: float,
    unit: float,
    holds: float | None = None,
    left: float = 0.0,
    top: float = 0.0,
    width_px: float = 50.0,
    height_px: float = 90.0,
    middle: int = 5,
    long: int = 10,
) -> Cylinder:
    """A cylinder for `high` (mL, say), engraved by `unit`, filled to `holds`; None is empty."""
    right, foot = left + width_px, top + height_px
    scale = graduation(
        low=0, high=high, unit=unit, length_px=height_px, middle=middle, long=long, upward=True
    )
    filled = holds is not None and holds > 0
    y = top + scale.at(min(holds, high)) if holds is not None and filled else None
    climb = min(9.0, width_px / 4)
    level = {"left": left, "right": right, "climb_px": min(climb, 3.0)}
    return Cylinder(
        Box(left, top, width_px, height_px),
        glass(left=left, right=right, lip=top - 16, foot=foot, flare_px=4),
        Box(left - 6, foot, width_px + 12, 3),
        scale,
        surface(left=left, right=right, y=top, climb_px=climb),
        y,
        "" if y is None else surface(**level, y=y),
        "" if y is None else liquid(**level, y=y, bottom=foot),
    )


@dataclass(frozen=True, slots=True)
class Bottle:
    """A bottle: outline, cap, label, and its liquid up to the level, if it stands below the shoulder."""

    outline: str
    cap: Box
    label: Box
    liquid: Box


def bottle(
    *, left: float, foot: float, width_px: float = 72.0, height_px: float = 204.0, full: float = 0.0
) -> Bottle:
    """A bottle standing on `foot`; `full` from 0 to 1 fills its straight part."""
    if not 0 <= full <= 1:
        raise ValueError("a bottle is filled from 0 to 1")
    mid, right = left + width_px / 2, left + width_px
    neck, cap = width_px * 0.21, width_px * 0.25
    cap_height = height_px * 0.07
    top = foot - height_px
    neck_foot, shoulder = top + cap_height + height_px * 0.08, top + height_px * 0.3
    outline = (
        f"M{mid - neck:g} {top + cap_height:g}V{neck_foot:g}"
        f"Q{left:g} {shoulder - height_px * 0.07:g} {left:g} {shoulder:g}V{foot - 4:g}q0 4 4 4"
        f"H{right - 4:g}q4 0 4 -4V{shoulder:g}"
        f"Q{right:g} {shoulder - height_px * 0.07:g} {mid + neck:g} {neck_foot:g}V{top + cap_height:g}"
    )
    depth = (foot - shoulder) * full
    label_height = min(34.0, height_px * 0.16)
    return Bottle(
        outline,
        Box(mid - cap, top, 2 * cap, cap_height),
        Box(left + 3, shoulder + (foot - shoulder) * 0.3, width_px - 6, label_height),
        Box(left, foot - depth, width_px, depth),
    )


@dataclass(frozen=True, slots=True)
class EmptyVessel:
    """A vessel that waits, with the scale of what will stand in it."""

    width_px: float
    height_px: float
    numerals_x: float
    inside: Box
    walls: str
    foot: Box
    scale: Graduation


def empty_vessel(
    scale: Graduation, *, left: float = 50.0, width_px: float = 60.0, above_px: float = 56.0
) -> EmptyVessel:
    """Glass around a scale, its numerals outside at the left."""
    foot = above_px + scale.length_px
    return EmptyVessel(
        left + width_px + 10,
        foot + 4,
        left - 10,
        Box(left, above_px, width_px, scale.length_px),
        glass(left=left, right=left + width_px, lip=above_px - LIP_PX, foot=foot),
        Box(left - FOOT_OUT_PX, foot, width_px + 2 * FOOT_OUT_PX, 4),
        scale,
    )
