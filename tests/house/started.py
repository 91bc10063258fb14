"""A Tankside of its own process, for tests of what only a process shows."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from project import SOURCE, bare_surroundings

ADDRESS = re.compile(r"http://127\.0\.0\.1:\d+")


def command_line(folder: Path, *more: str) -> list[str]:
    """The command that starts one over `folder` on a free port."""
    start = [sys.executable, "-m", "tankside", "start", "--port", "0", "--no-open"]
    return [*start, "--data-folder", str(folder), *more]


@contextmanager
def started(folder: Path, *more: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """The process, and the first line that it said."""
    surroundings = bare_surroundings(PYTHONPATH=str(SOURCE), PYTHONUNBUFFERED="1")
    with subprocess.Popen(
        command_line(folder, *more), env=surroundings, stdout=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        try:
            yield process, process.stdout.readline()
        finally:
            process.kill()


def refused(folder: Path, *more: str) -> tuple[int, str]:
    """Exit code and what was said of a start that is refused."""
    surroundings = bare_surroundings(PYTHONPATH=str(SOURCE))
    done = subprocess.run(
        command_line(folder, *more), env=surroundings, capture_output=True, text=True, check=False, timeout=60
    )
    return done.returncode, done.stderr
