"""Rings and beads on the stripe: where hands are needed, and where they have been."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

LEAST_BETWEEN_RINGS_PX = 8.0
RING_PX = 10.0
BEAD_PX = 10.0


@dataclass(frozen=True, slots=True)
class Ring:
    """A line across the stripe; `circled` where its open ring has room, `other` for another tankful."""

    at_px: float
    circled: bool
    other: bool = False


def rings(own_px: Sequence[float], others_px: Sequence[float] = ()) -> tuple[Ring, ...]:
    """Rings down the page; one that stands too near the one before it keeps its line and loses its circle."""
    found: list[Ring] = []
    for other, places in ((False, own_px), (True, others_px)):
        last: float | None = None
        for at_px in sorted(places):
            circled = last is None or at_px - last >= LEAST_BETWEEN_RINGS_PX
            last = at_px if circled else last
            found.append(Ring(at_px, circled, other))
    return tuple(sorted(found, key=lambda ring: (ring.at_px, ring.other)))


@dataclass(frozen=True, slots=True)
class Bead:
    """A square on the thin stripe at its true time: filled is done, open is missed or late."""

    at_px: float
    done: bool
