"""`tankside start`: refuses in one sentence with exit code 2, serves until it is told to stop."""

from __future__ import annotations

import os
import signal
import urllib.request
from pathlib import Path

from click.testing import CliRunner
from house.started import ADDRESS, started

from tankside.cli.command import command
from tankside.machine.port import take_port


def test_a_port_in_use_is_one_sentence_and_a_way_on(tmp_path: Path) -> None:
    """Exit code 2, and the number that was asked for."""
    with take_port(0) as taken:
        port = str(taken.getsockname()[1])
        told = CliRunner().invoke(command, ["start", "--port", port, "--data-folder", str(tmp_path)])
    assert told.exit_code == 2
    assert told.stderr == (
        f"Port {port} is taken by another program. "
        "Choose another with --port NUMBER, or any free one with --port 0.\n"
    )


def test_it_serves_until_it_is_told_to_stop(tmp_path: Path) -> None:
    """It says where, answers there, and ends well on Ctrl+C."""
    with started(tmp_path / "data") as (process, line):
        (address,) = ADDRESS.findall(line)
        with urllib.request.urlopen(address) as answer:
            assert answer.status == 200
        os.kill(process.pid, signal.SIGINT)
        assert process.communicate()[0] == "Closed. Everything noted is kept.\n"
        assert process.returncode == 0
    assert (tmp_path / "data" / "tankside.db").is_file()


def test_a_second_start_over_the_same_folder_is_told_where_the_first_is(tmp_path: Path) -> None:
    """Two servers would be two writers."""
    with started(tmp_path) as (_, line):
        told = CliRunner().invoke(command, ["start", "--port", "0", "--data-folder", str(tmp_path)])
        (address,) = ADDRESS.findall(line)
    assert told.exit_code == 2
    assert f"already open at {address} over {tmp_path}" in told.stderr


def test_an_unknown_noun_is_told_as_such() -> None:
    """Nothing is loaded for a word that is no command."""
    told = CliRunner().invoke(command, ["dry-cupboard"])
    assert told.exit_code == 2
    assert "No such command 'dry-cupboard'" in told.stderr
