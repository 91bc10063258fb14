"""The clock of the machine, and a paced one for the demo."""

from __future__ import annotations

import time
import uuid
from pathlib import Path

from tankside.core.run.instants import Instant
from tankside.workflows.ports import Clock

BOOT_ID = Path("/proc/sys/kernel/random/boot_id")


class MachineClock:
    """Wall time, and an elapsed time that goes on while the machine sleeps."""

    def __init__(self, boot_id: Path = BOOT_ID) -> None:
        self._boot = boot_identity(boot_id)

    def now(self) -> Instant:
        """The present instant."""
        return Instant(time.time_ns() // 1000, elapsed_ns() // 1000, self._boot)


class PacedClock:
    """Runs `pace` times as fast as `clock`, from `start` on; for the demo, so that an evening takes minutes.

    Each paced clock is a boot of its own, for its elapsed time begins again whenever one is made.
    """

    def __init__(self, clock: Clock, *, pace: float, start: Instant) -> None:
        if not pace > 0:
            raise ValueError("a clock runs forward")
        self._clock = clock
        self._pace = pace
        self._start = start
        self._begun = clock.now()
        self._boot = f"{self._begun.boot}/paced/{self._begun.elapsed_us}"

    def now(self) -> Instant:
        """The start, plus `pace` times what has gone by on the clock underneath."""
        gone_us = round(self._clock.now().seconds_since(self._begun) * self._pace * 1e6)
        return Instant(self._start.wall_us + gone_us, self._start.elapsed_us + gone_us, self._boot)


def elapsed_ns() -> int:
    """Nanoseconds of the steadiest clock at hand: through sleep on Linux, by the system's own on others."""
    if hasattr(time, "CLOCK_BOOTTIME"):
        return time.clock_gettime_ns(time.CLOCK_BOOTTIME)
    return time.monotonic_ns()


def boot_identity(boot_id: Path) -> str:
    """The kernel's name of this boot; where there is none, a name for this process.

    With the stand-in, instants of two processes are compared by wall time, which is the safe side.
    """
    try:
        return boot_id.read_text(encoding="ascii").strip()
    except OSError:
        return str(uuid.uuid4())
