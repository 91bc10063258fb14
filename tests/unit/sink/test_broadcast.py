"""Screens are woken by what this process writes, by what another writes, and by nothing else."""

from __future__ import annotations

import asyncio
import sqlite3
from uuid import UUID

from bench import RUN, Bench, phone
from evening_clock import at

from tankside.core.run.commands import WriteNote
from tankside.sink.broadcast import Broadcast

SOON_S = 10.0
NEVER_S = 1e6


def test_another_program_writing_beside_wakes_the_screens(bench: Bench) -> None:
    """It should notice a commit through another connection within its poll, without being told."""
    numbers = iter(range(100))
    broadcast = Broadcast(bench.database.version, poll_s=0.01)

    async def watched() -> list[int]:
        heard: list[int] = []
        async for number in broadcast.follow(lambda: next(numbers)):
            heard.append(number)
            if 2 == len(heard):
                broadcast.close()
            else:
                await asyncio.to_thread(write_beside)
        return heard

    def write_beside() -> None:
        with sqlite3.connect(bench.database.file) as other:
            other.execute("INSERT INTO preferences VALUES ('a', 'b')")
        other.close()

    assert [0, 1] == asyncio.run(asyncio.wait_for(watched(), SOON_S))


def test_our_own_writing_wakes_at_once(bench: Bench) -> None:
    """It should not wait for the poll, and tell two followers alike."""
    broadcast = Broadcast(bench.database.version, poll_s=NEVER_S)

    def last_seq() -> int:
        run = bench.live.look(RUN)
        return run.last_seq if run else 0

    def tap() -> None:
        bench.live.note(RUN, phone(1, WriteNote("fan on")), at(5.0))
        broadcast.written(RUN)

    async def follower() -> list[int]:
        heard: list[int] = []
        async for number in broadcast.follow(last_seq):
            heard.append(number)
            if 2 == len(heard):
                return heard
            both.count_down()
            if both.done:
                await asyncio.to_thread(tap)
        return heard

    class Both:
        """Counts the followers that have heard the first number."""

        waiting = 2

        @property
        def done(self) -> bool:
            """Whether both have."""
            return self.waiting == 0

        def count_down(self) -> None:
            """One more has."""
            self.waiting -= 1

    both = Both()

    async def two() -> list[list[int]]:
        return await asyncio.gather(follower(), follower())

    assert [[1, 2], [1, 2]] == asyncio.run(asyncio.wait_for(two(), SOON_S))


def test_a_number_that_has_not_changed_is_not_told_again(bench: Bench) -> None:
    """It should stay silent when woken for another run."""
    broadcast = Broadcast(bench.database.version, poll_s=NEVER_S)
    asked = 0

    def number() -> int:
        nonlocal asked
        asked += 1
        if asked < 4:
            broadcast.written(UUID(int=99))
        else:
            broadcast.close()
        return 7

    async def watched() -> list[int]:
        return [told async for told in broadcast.follow(number)]

    assert [7] == asyncio.run(asyncio.wait_for(watched(), SOON_S))
    assert 4 == asked


def test_a_closed_broadcast_ends_streams_that_wait(bench: Bench) -> None:
    """It should end a follower that waits for news that never comes."""
    broadcast = Broadcast(bench.database.version, poll_s=NEVER_S)

    async def watched() -> list[int]:
        heard = []
        async for number in broadcast.follow(lambda: 3):
            heard.append(number)
            asyncio.get_running_loop().call_later(0.01, broadcast.close)
        return heard

    assert [3] == asyncio.run(asyncio.wait_for(watched(), SOON_S))


def test_a_screen_is_told_when_another_comes_and_goes(bench: Bench) -> None:
    """It should count the followers of its own run, and tell them anew though nothing was written."""
    broadcast = Broadcast(bench.database.version, poll_s=NEVER_S)
    counted: list[int] = []

    async def first() -> None:
        async for _ in broadcast.follow(lambda: 7, RUN):
            counted.append(broadcast.watching(RUN))
            if 1 == len(counted):
                second.set()
            elif 2 == len(counted):
                leave.set()
            else:
                broadcast.close()

    async def another() -> None:
        await second.wait()
        following = broadcast.follow(lambda: 7, RUN)
        await anext(following)
        await leave.wait()
        await following.aclose()  # type: ignore[attr-defined]

    async def both() -> None:
        await asyncio.gather(first(), another())

    second, leave = asyncio.Event(), asyncio.Event()
    asyncio.run(asyncio.wait_for(both(), SOON_S))
    assert [1, 2, 1] == counted
    assert 0 == broadcast.watching(UUID(int=99))
