"""A clock and dice that a test sets by hand."""

from __future__ import annotations

import uuid
from itertools import count

from tankside.core.run.instants import Instant

# 3 October 2026, 19:00 UTC: a Saturday evening.
SATURDAY_EVENING_US = 1_791_054_000_000_000


class SetClock:
    """Stands still until told otherwise; `pass_s` moves both times, `set_wall_by_s` only the wall's."""

    def __init__(
        self, *, wall_us: int = SATURDAY_EVENING_US, elapsed_us: int = 0, boot: str = "boot-1"
    ) -> None:
        self.wall_us = wall_us
        self.elapsed_us = elapsed_us
        self.boot = boot

    def now(self) -> Instant:
        """The instant it stands at."""
        return Instant(self.wall_us, self.elapsed_us, self.boot)

    def pass_s(self, seconds: float) -> None:
        """Let time go by."""
        self.wall_us += round(seconds * 1e6)
        self.elapsed_us += round(seconds * 1e6)

    def set_wall_by_s(self, seconds: float) -> None:
        """Somebody sets the wall clock forward, or back by a negative number."""
        self.wall_us += round(seconds * 1e6)

    def restart(self, boot: str, *, down_s: float = 0) -> None:
        """The machine goes down and comes back `down_s` later: the elapsed time begins again."""
        self.wall_us += round(down_s * 1e6)
        self.elapsed_us = 0
        self.boot = boot


class SetDice:
    """Keys and draws in a known order, the same in every run."""

    def __init__(self) -> None:
        self._keys = count(1)
        self._draws = count(0)

    def key(self) -> uuid.UUID:
        """00000000-0000-4000-8000-000000000001, then 2, 3 and so on."""
        return uuid.UUID(int=next(self._keys) | (4 << 76) | (8 << 60))

    def below(self, count: int) -> int:
        """0, 7919, 15838 and so on, taken modulo `count`."""
        return next(self._draws) * 7919 % count
