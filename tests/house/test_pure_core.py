"""The watch over the core bites, and bites nobody else."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
from pure_core import CORE, ReachedOut, watched

BREACHES = {
    "reads a file": "open(__import__('os').devnull)",
    "opens a database": "__import__('sqlite3').connect(':memory:')",
    "opens a socket": "__import__('socket').socket()",
    "starts a process": f"__import__('subprocess').run([{sys.executable!r}, '-c', ''])",
}


def as_core(line: str) -> None:
    """Run `line` as if it stood in a module of the core."""
    exec(compile(line, f"{CORE}/planted.py", "exec"), {})


@pytest.mark.parametrize("line", BREACHES.values(), ids=BREACHES)
def test_the_core_is_caught(line: str) -> None:
    """Each way of reaching out ends the test that it happens in."""
    with watched() as caught, pytest.raises(ReachedOut):
        as_core(line)
    assert len(caught) == 1


def test_a_handler_in_the_core_cannot_hide_it() -> None:
    """Catching every Exception does not help."""
    with watched() as caught, pytest.raises(ReachedOut):
        as_core("try:\n    open('/dev/null')\nexcept Exception:\n    pass")
    assert caught != []


def test_the_core_may_import() -> None:
    """A first import inside a function opens files, and is meant to."""
    sys.modules.pop("colorsys", None)
    with watched() as caught:
        as_core("import colorsys")
    assert caught == []


def test_tests_and_their_tools_may_do_as_they_like(tmp_path: Path) -> None:
    """Files, databases and processes of a test are its own affair."""
    with watched() as caught:
        (tmp_path / "note").write_text("dry", encoding="utf-8")
        sqlite3.connect(tmp_path / "notes.db").close()
        subprocess.run([sys.executable, "-c", ""], check=True)
    assert caught == []
