"""The program dies in the middle of a write: what was acknowledged is kept, the rest may be sent again."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import get_args

import pytest
from bench import RUN, Bench, left_to_book
from crash.evening_driver import commands, files
from evening import PLAN
from evening_clock import at

from tankside.sink.live_runs import WritePoint
from tankside.store.connection import Database
from tankside.workflows.open_run import open_run

SEEDS = 10
DRIVER = Path(__file__).with_name("evening_driver.py")
POINTS: tuple[WritePoint, ...] = get_args(WritePoint)


def killed_evenings(folder: Path, point: WritePoint) -> None:
    """Ten evenings, each killed at `point`."""
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))}
    done = subprocess.run(
        [sys.executable, str(DRIVER), str(folder), point, str(SEEDS)],
        env=environment,
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert [f"{seed} killed" for seed in range(SEEDS)] == done.stdout.splitlines(), done.stderr


def stored_commands(bench: Bench) -> list[str]:
    """The command of each event on the disk, in order of its number, each named once in a row."""
    ids = [event.id.rpartition("/")[0] for event in bench.desk.run_log.after(RUN)]
    return [one for place, one in enumerate(ids) if place == 0 or ids[place - 1] != one]


def check_whole(bench: Bench, acknowledged: list[str]) -> None:
    """What was acknowledged is stored, nothing is stored twice or by half, and the ledger is what is owed."""
    events = bench.desk.run_log.after(RUN)
    assert list(range(1, len(events) + 1)) == [event.seq for event in events]
    stored = stored_commands(bench)
    assert len(set(stored)) == len(stored)
    answers = {one: bench.desk.answers.find(one) for one in {*acknowledged, *stored}}
    assert None not in answers.values()
    told = [answer for answer in answers.values() if answer is not None and answer.to_seq is not None]
    assert len(events) == sum(one.to_seq - one.from_seq + 1 for one in told if one.from_seq and one.to_seq)
    if events:
        assert () == left_to_book(bench.desk)


@pytest.mark.parametrize("point", POINTS)
def test_a_killed_evening_goes_on_where_it_was(tmp_path: Path, point: WritePoint) -> None:
    """It should keep every acknowledged note, and store each command once when all are sent again."""
    killed_evenings(tmp_path, point)
    cut_short = 0
    for seed in range(SEEDS):
        file, list_file = files(tmp_path, seed)
        acknowledged = list_file.read_text().split()
        bench = Bench(Database(file))
        check_whole(bench, acknowledged)
        before = bench.desk.run_log.after(RUN)
        cut_short += len(stored_commands(bench)) > len(acknowledged)

        live = bench.shell(5_000_000)  # keys that the killed process has not drawn
        open_run(bench.desk, live, RUN, PLAN.key, at(2000.0))
        queue = commands(seed)
        answers = [live.note(RUN, command, at(2000.0)) for command in queue]
        assert before == bench.desk.run_log.after(RUN)[: len(before)]
        everything = [f"open:{RUN}", *(command.id for command in queue)]
        check_whole(bench, everything)
        again = [live.note(RUN, command, at(3000.0)) for command in queue]
        assert answers == again
        bench.database.close()
    if point == "committed":
        assert cut_short, "a kill after the commit must leave notes that nobody was told of"
