"""Catches the core at reaching out of itself: a file, a database, a socket or another process.

Imports may open files, and so may the tests and their tools; what counts is a function of the core on the
stack with no import between it and the opening.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType

CORE = str(Path(__file__).resolve().parent.parent / "src" / "tankside" / "core")
REACHING_OUT = (
    "open",
    "sqlite3.connect",
    "socket.",
    "subprocess.",
    "os.system",
    "os.exec",
    "os.fork",
    "os.posix_spawn",
)


class ReachedOut(BaseException):
    """Not an Exception, so that no handler of the core can swallow it."""


class Watch:
    """One hook for the life of the process, for hooks cannot be taken away; it looks only while told to."""

    def __init__(self) -> None:
        self.looking = False
        self.caught: list[str] = []
        sys.addaudithook(self._hear)

    def _hear(self, event: str, arguments: tuple[object, ...]) -> None:
        if not self.looking or not event.startswith(REACHING_OUT):
            return
        if called_by_core(sys._getframe(1)):
            self.caught.append(f"{event} {arguments[:1]}")
            raise ReachedOut(self.caught[-1])


def called_by_core(frame: FrameType | None) -> bool:
    """True if a function of the core stands above `frame` with no import in between."""
    while frame is not None:
        file = frame.f_code.co_filename
        if "importlib._bootstrap" in file:
            return False
        if file.startswith(CORE):
            return True
        frame = frame.f_back
    return False


WATCH = Watch()


@contextmanager
def watched() -> Iterator[list[str]]:
    """Watch the core; gives the list of what it was caught at."""
    WATCH.looking, WATCH.caught = True, []
    try:
        yield WATCH.caught
    finally:
        WATCH.looking = False
