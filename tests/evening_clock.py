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
    """Tells what it was set to."""

    def __init__(self) -> None:
        self.seconds = 0.0

    def now(self) -> Instant:
        """The instant it was set to."""
        return at(self.seconds)


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
