"""Patterns of agitation, as leaflets print them and hands keep them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Movement = Literal["inversion", "rotation", "stand", "none"]

INVERSION_S = 2.5
"""One inversion and back takes about this long: four in ten seconds (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Agitation:
    """Hands: the first `first_s`, then `then_s` at every `every_s`; a cue may slip by `soft_s`.

    `first_s` counts from the start of pour-in, as the bath's time does, so pouring is part of it. Where
    `then_s` fills all of `every_s` the hands never stop; 'stand' and 'none' ask nothing of them.
    """

    movement: Movement
    first_s: float = 30.0
    then_s: float = 10.0
    every_s: float = 60.0
    soft_s: float = 10.0

    @property
    def by_hand(self) -> bool:
        """Whether hands move the tank at all."""
        return self.movement in ("inversion", "rotation")

    @property
    def continuous(self) -> bool:
        """Whether they never stop."""
        return self.by_hand and self.every_s > 0 and self.then_s >= self.every_s


ROTARY = Agitation("rotation", first_s=0.0, then_s=60.0, every_s=60.0, soft_s=0.0)
"""Rolled without a stop, by hand or on a motor."""

STAND = Agitation("stand", first_s=30.0, then_s=0.0, every_s=0.0, soft_s=0.0)
"""Moved while it is poured and for the first half minute, then left alone."""


def inversions_in(for_s: float) -> int:
    """How many inversions fit into `for_s` (0 or more) seconds of the hands.

    Own model: docs/science/agitation, four in ten seconds. Doubt: hands differ by half.

    >>> inversions_in(10), inversions_in(5), inversions_in(0)
    (4, 2, 0)
    """
    return round(for_s / INVERSION_S)
