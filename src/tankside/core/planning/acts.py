"""What the hands do, and when: the acts of one tankful, in seconds after its developer is poured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.methods.baths import BathKind

ActKind = Literal["mix", "pour", "invert", "measure", "drain", "dry reels", "hang"]


@dataclass(frozen=True, slots=True)
class Act:
    """`start_s` to `start_s + for_s` on one clock; it may begin anywhere from `earliest_s` to `latest_s`.

    `fill` counts the fills of a wash from 1, and is 0 elsewhere.
    """

    tankful: str
    bath: BathKind | None
    kind: ActKind
    start_s: float
    for_s: float
    earliest_s: float
    latest_s: float
    fill: int = 0

    @property
    def end_s(self) -> float:
        """When the hands are free again."""
        return self.start_s + self.for_s

    @property
    def soft(self) -> bool:
        """Whether it may slip at all."""
        return self.latest_s > self.earliest_s
