"""Waking every screen of a run when something was written, by this process or another."""

from __future__ import annotations

import asyncio
import threading
from collections.abc import AsyncIterator, Callable
from contextlib import suppress
from uuid import UUID

POLL_S = 0.5
"""How often another process's writing is looked for; ours wakes at once."""


class Broadcast:
    """Tells each follower the number of the run's view whenever it has changed.

    `version` is a number that changes with every commit to the database, whoever made it.
    """

    def __init__(self, version: Callable[[], int], *, poll_s: float = POLL_S) -> None:
        self._version = version
        self._poll_s = poll_s
        self._closed = False
        self._lock = threading.Lock()
        self._followers: dict[asyncio.Event, tuple[asyncio.AbstractEventLoop, UUID | None]] = {}

    def written(self, _run: UUID) -> None:
        """Wake everyone; safe from any thread."""
        with self._lock:
            followers = list(self._followers.items())
        for stirred, (loop, _) in followers:
            with suppress(RuntimeError):  # its loop has ended meanwhile
                loop.call_soon_threadsafe(stirred.set)

    def watching(self, run: UUID) -> int:
        """How many screens follow this run."""
        with self._lock:
            return sum(watched == run for _, watched in self._followers.values())

    def close(self) -> None:
        """End every stream, so that the server can stop."""
        self._closed = True
        self.written(UUID(int=0))

    async def follow(self, number: Callable[[], int], run: UUID | None = None) -> AsyncIterator[int]:
        """The number of the view now, and again each time it has changed, until closed.

        `number` may block: it is asked in a thread. A follower of `run` is counted as a screen that watches
        it, and is told again when another comes or goes.
        """
        stirred = asyncio.Event()
        with self._lock:
            self._followers[stirred] = (asyncio.get_running_loop(), run)
        self._stir(run)
        told: tuple[int, int] | None = None
        try:
            while not self._closed:
                seen = await asyncio.to_thread(self._version)
                current = await asyncio.to_thread(number)
                beside = 0 if run is None else self.watching(run)
                if (current, beside) != told:
                    told = current, beside
                    yield current
                await self._until_stirred(stirred, seen)
        finally:
            with self._lock:
                del self._followers[stirred]
            self._stir(run)

    def _stir(self, run: UUID | None) -> None:
        """A screen of `run` came or went: the others count anew."""
        if run is not None:
            self.written(run)

    async def _until_stirred(self, stirred: asyncio.Event, seen: int) -> None:
        """Wait until woken, or until the database has another version than the one `seen`."""
        while not self._closed:
            with suppress(TimeoutError):
                await asyncio.wait_for(stirred.wait(), self._poll_s)
            if stirred.is_set():
                stirred.clear()
                return
            if await asyncio.to_thread(self._version) != seen:
                return
