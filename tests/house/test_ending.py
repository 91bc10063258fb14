"""Ctrl+C and a polite signal end Tankside well, also while a screen at the sink listens."""

from __future__ import annotations

import os
import signal
import urllib.request
from pathlib import Path
from uuid import UUID

import pytest
from evening_clock import CountingDice, at
from house.started import ADDRESS, started
from planned import ANSWERS

from tankside.machine.data_folder import open_data_folder
from tankside.wiring import house_in
from tankside.workflows.begin_first_evening import begin_first_evening
from tankside.workflows.open_run import open_run

RUN = UUID(int=77)
SOON_S = 10.0
"""The house ends within two seconds; a machine that runs other tests beside gets more."""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A data folder with an open run."""
    with house_in(tmp_path) as house:
        plan = begin_first_evening(house.desk, CountingDice(), ANSWERS, at(0.0))
        open_run(house.desk, house.live_runs, RUN, plan.key, at(60.0))
    return tmp_path


@pytest.mark.parametrize("ends_by", [signal.SIGINT, signal.SIGTERM])
def test_it_ends_well_with_a_stream_open(folder: Path, ends_by: signal.Signals) -> None:
    """It says that all is kept, ends with 0, and lets the folder go, though a screen still listens."""
    with started(folder) as (process, line):
        (address,) = ADDRESS.findall(line)
        with urllib.request.urlopen(f"{address}/sink/{RUN}/stream", timeout=10) as stream:
            assert b"event: screen" in stream.readline() + stream.readline() + stream.readline()
            os.kill(process.pid, ends_by)
            assert "Closed. Everything noted is kept.\n" == process.communicate(timeout=SOON_S)[0]
            assert 0 == process.returncode
    with open_data_folder(folder).served_at("the next one"):
        pass
    assert not list(folder.glob("*-journal"))
