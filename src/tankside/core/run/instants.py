"""Instants of a run: wall time, elapsed time and the boot they belong to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType


@dataclass(frozen=True, slots=True, order=False)
class Instant:
    """`wall_us` since the epoch, `elapsed_us` on a clock that runs through suspend, and the boot's identity.

    Within a boot elapsed time decides, across boots wall time.
    """

    wall_us: int
    elapsed_us: int
    boot: str

    def seconds_since(self, earlier: Instant) -> float:
        """Seconds from `earlier` to here, by elapsed time within a boot, else by wall time.

        >>> Instant(90_000_000, 5_000_000, "a").seconds_since(Instant(0, 2_000_000, "a"))
        3.0
        """
        if self.boot == earlier.boot:
            return (self.elapsed_us - earlier.elapsed_us) / 1e6
        return (self.wall_us - earlier.wall_us) / 1e6

    def before(self, *, seconds: float) -> Instant:
        """The instant `seconds` earlier on both clocks (negative seconds: later).

        >>> Instant(9_000_000, 5_000_000, "a").before(seconds=2.0)
        Instant(wall_us=7000000, elapsed_us=3000000, boot='a')
        """
        shift_us = round(seconds * 1e6)
        return Instant(self.wall_us - shift_us, self.elapsed_us - shift_us, self.boot)


@dataclass(frozen=True, slots=True)
class Timeline:
    """One line of time for a run of several boots: wall time as it stood when each boot was first seen.

    `offset_us` is wall minus elapsed time of each boot. A jump within a boot changes nothing.
    """

    offset_us: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))

    def at_us(self, instant: Instant) -> int:
        """Where `instant` lies on the line, in microseconds since the epoch.

        >>> Timeline({"a": 100}).at_us(Instant(wall_us=7, elapsed_us=5, boot="a"))
        105
        """
        offset = self.offset_us.get(instant.boot)
        return instant.wall_us if offset is None else instant.elapsed_us + offset

    def skew_s(self, instant: Instant) -> float:
        """How far the wall clock of `instant` has parted from the line, in seconds (0 in an unseen boot)."""
        return (instant.wall_us - self.at_us(instant)) / 1e6

    def seeing(self, instant: Instant) -> Timeline:
        """The line with the boot of `instant` on it."""
        if instant.boot in self.offset_us:
            return self
        offsets = {**self.offset_us, instant.boot: instant.wall_us - instant.elapsed_us}
        return Timeline(MappingProxyType(offsets))

    def shifted(self, boot: str, by_s: float) -> Timeline:
        """The line with one boot moved by `by_s` seconds."""
        offsets = {**self.offset_us}
        offsets[boot] = offsets.get(boot, 0) + round(by_s * 1e6)
        return Timeline(MappingProxyType(offsets))
