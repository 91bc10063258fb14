"""Instants of a run: wall time, elapsed time and the boot they belong to."""

from __future__ import annotations

from dataclasses import dataclass


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
