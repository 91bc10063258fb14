"""Evenings that end in `kill -9`: one process forks a child for each seed and waits until it is dead.

A child notes commands and writes the id of each answered one into a list of its own, synced, so that the list
never says more than what was acknowledged. At its hour it kills itself at one named point of a write.
"""

from __future__ import annotations

import os
import random
import signal
import sys
from pathlib import Path

from bench import RUN, Bench, lay_out
from deeds import deed
from evening import PLAN
from evening_clock import CountingDice, at

from tankside.core.run.commands import Command
from tankside.sink.live_runs import LiveRuns, WritePoint
from tankside.store.connection import Database
from tankside.workflows.open_run import open_run

COMMANDS = 11


def commands(seed: int) -> list[Command]:
    """The commands of one evening, the same for the same seed."""
    dice = random.Random(seed)
    return [deed(dice.choice, number) for number in range(1, COMMANDS + 1)]


def files(folder: Path, seed: int) -> tuple[Path, Path]:
    """The database of one evening, and the list of what was acknowledged in it."""
    return folder / f"evening-{seed}.db", folder / f"acknowledged-{seed}.txt"


def note_until_killed(folder: Path, seed: int, point: WritePoint) -> None:
    """Note the evening; the write that is killed is picked by the seed, the opening of the run among them."""
    file, list_file = files(folder, seed)
    bench = Bench(Database(file))
    lay_out(bench.desk)
    hour = random.Random(seed).randrange(1, 7)
    passed = 0

    def passing(here: WritePoint) -> None:
        nonlocal passed
        if here == point:
            passed += 1
            if passed == hour:
                os.kill(os.getpid(), signal.SIGKILL)

    live = LiveRuns(bench.desk, CountingDice(), written=bench.told.append, passing=passing)
    with list_file.open("a", encoding="utf-8") as acknowledged:

        def acknowledge(command: str) -> None:
            acknowledged.write(f"{command}\n")
            acknowledged.flush()
            os.fsync(acknowledged.fileno())

        open_run(bench.desk, live, RUN, PLAN.key, at(0.0))
        acknowledge(f"open:{RUN}")
        for number, command in enumerate(commands(seed), start=1):
            live.note(RUN, command, at(60.0 * number))
            acknowledge(command.id)


def main(folder: Path, point: WritePoint, seeds: range) -> None:
    """One child after the other; print how each died."""
    for seed in seeds:
        child = os.fork()
        if child == 0:
            note_until_killed(folder, seed, point)
            os._exit(0)
        _, status = os.waitpid(child, 0)
        print(seed, "killed" if os.WIFSIGNALED(status) and os.WTERMSIG(status) == signal.SIGKILL else status)


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2], range(int(sys.argv[3])))  # type: ignore[arg-type]
