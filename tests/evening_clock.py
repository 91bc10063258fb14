"""A clock and dice that a test sets, so that an evening is the same every time."""

from __future__ import annotations

from uuid import UUID

from tankside.core.run.instants import Instant

START_US = 1_795_635_000_000_000
"""25 November 2026, 19:30 UTC, in microseconds since the epoch."""


def at(seconds: float, boot: str = "one") -> Instant:
    """The instant `seconds` after the evening began."""
    return Instant(START_US + round(seconds * 1e6), 5_000_000 + round(seconds * 1e6), boot)


class SetClock:
    """Stands still until told otherwise; `pass_s` moves both times, `set_wall_by_s` only the wall's."""

    def __init__(self, *, wall_us: int = START_US, elapsed_us: int = 5_000_000, boot: str = "one") -> None:
        self.wall_us, self.elapsed_us, self.boot = wall_us, elapsed_us, boot
        self._passed_s = 0.0

    def now(self) -> Instant:
        """The instant it stands at."""
        return Instant(self.wall_us, self.elapsed_us, self.boot)

    @property
    def seconds(self) -> float:
        """How long it has gone on since it was made; setting this lets the rest go by."""
        return self._passed_s

    @seconds.setter
    def seconds(self, passed_s: float) -> None:
        self.pass_s(passed_s - self._passed_s)

    def pass_s(self, seconds: float) -> None:
        """Let time go by."""
        self.wall_us += round(seconds * 1e6)
        self.elapsed_us += round(seconds * 1e6)
        self._passed_s += seconds

    def set_wall_by_s(self, seconds: float) -> None:
        """Somebody sets the wall clock forward, or back by a negative number."""
        self.wall_us += round(seconds * 1e6)


class CountingDice:
    """Keys and draws in order of asking."""

    def __init__(self, start: int = 1_000_000) -> None:
        self._next = start

    def key(self) -> UUID:
        """The next key."""
        self._next += 1
        return UUID(int=self._next)

    def below(self, count: int) -> int:
        """The next draw."""
        self._next += 1
        return self._next % count
