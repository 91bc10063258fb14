"""A process of its own for what would spoil the test's: limits, other users, locks that are held."""

from __future__ import annotations

import os
import resource
import sqlite3
import sys
from pathlib import Path

from tankside.core.refusals import Refused
from tankside.store.connection import Database
from tankside.store.preferences import StoredPreferences


def may_not_grow(file: Path) -> None:
    """Write until the system stops the file at a size; print the code and how many were acknowledged."""
    book = StoredPreferences(Database(file))
    limit = file.stat().st_size + 40_000
    resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
    for number in range(1000):
        try:
            book.keep(str(number), "x" * 2000)
        except Refused as refused:
            print(refused.refusal.code, number)
            return


def become_nobody(file: Path) -> None:
    """Give up being root, who may write anything; everything needed is loaded before."""
    Database(file.parent.parent / f"warm-{os.getpid()}.db").close()
    (file.parent.parent / f"warm-{os.getpid()}.db").unlink()
    if os.geteuid() == 0:
        os.setgroups([])
        os.setgid(65534)
        os.setuid(65534)


def read_only(file: Path) -> None:
    """Print what is there, then the code of the refusal to write."""
    become_nobody(file)
    book = StoredPreferences(Database(file))
    print(*book.all())
    try:
        book.keep("2", "more")
    except Refused as refused:
        print(refused.refusal.code)


def no_room_to_begin(file: Path) -> None:
    """Print the code of the refusal to begin."""
    become_nobody(file)
    try:
        Database(file)
    except Refused as refused:
        print(refused.refusal.code)


def hold(file: Path) -> None:
    """Hold the write lock until told to let go."""
    connection = sqlite3.connect(file, isolation_level=None)
    connection.execute("BEGIN IMMEDIATE")
    connection.execute("INSERT INTO preferences VALUES ('1', 'theirs')")
    print("holding", flush=True)
    sys.stdin.readline()
    connection.execute("COMMIT")
    print("let go", flush=True)


CASES = {
    "may-not-grow": may_not_grow,
    "read-only": read_only,
    "no-room-to-begin": no_room_to_begin,
    "hold": hold,
}

if __name__ == "__main__":
    CASES[sys.argv[1]](Path(sys.argv[2]))
