"""The few shapes that every drawing is made of."""

from __future__ import annotations

from dataclasses import dataclass

CLIMB_PX = 9.0


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right side."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Its lower side."""
        return self.y + self.height

    @property
    def middle_x(self) -> float:
        """Half way across."""
        return self.x + self.width / 2

    @property
    def middle_y(self) -> float:
        """Half way down."""
        return self.y + self.height / 2


def surface(*, left: float, right: float, y: float, climb_px: float = CLIMB_PX) -> str:
    """The line of a liquid that climbs both walls; it is read at its flat part.

    >>> surface(left=0, right=100, y=50)
    'M0 41Q0 50 18 50H82Q100 50 100 41'
    """
    reach = min(2 * climb_px, (right - left) / 2)
    return (
        f"M{left:g} {y - climb_px:g}Q{left:g} {y:g} {left + reach:g} {y:g}"
        f"H{right - reach:g}Q{right:g} {y:g} {right:g} {y - climb_px:g}"
    )


def liquid(*, left: float, right: float, y: float, bottom: float, climb_px: float = CLIMB_PX) -> str:
    """The body of a liquid under its surface, as a closed path."""
    return surface(left=left, right=right, y=y, climb_px=climb_px) + f"V{bottom:g}H{left:g}Z"


@dataclass(frozen=True, slots=True)
class Stripe:
    """The reading stripe: thin above, broad and hatched below, two points meeting at the surface."""

    thin: str
    broad: str
    surface_px: float


def stripe(
    *,
    x: float,
    top: float,
    surface_y: float,
    bottom: float,
    width_px: float = 16.0,
    thin_px: float = 5.0,
    pinch_px: float = 24.0,
) -> Stripe:
    """Points of both parts, pinched at `surface_y`, which is held between `top` and `bottom`."""
    now = min(max(surface_y, top), bottom)
    above, below = min(pinch_px * 0.6, now - top), min(pinch_px, bottom - now)
    thin, broad = thin_px / 2, width_px / 2
    return Stripe(
        f"{x - thin:g},{top:g} {x + thin:g},{top:g} {x + thin:g},{now - above:g} {x:g},{now:g} "
        f"{x - thin:g},{now - above:g}",
        f"{x:g},{now:g} {x + broad:g},{now + below:g} {x + broad:g},{bottom:g} {x - broad:g},{bottom:g} "
        f"{x - broad:g},{now + below:g}",
        now,
    )
