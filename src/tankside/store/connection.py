"""The database of one house: one writing connection in this process, others that only look."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, StaticPool, create_engine, event
from sqlalchemy.exc import DBAPIError

from tankside.core.refusals import Refused, refuse
from tankside.store.schema import build_or_check, look_at_header
from tankside.store.troubles import SYNC_FAILED, told_plainly, trouble

WAL_SINCE = (3, 51, 3)
"""Older libraries can corrupt a file in WAL when two connections write or checkpoint at once."""


def journal_mode(library: tuple[int, ...] = sqlite3.sqlite_version_info) -> str:
    """The journal that this SQLite library can be trusted with.

    >>> journal_mode((3, 40, 1)), journal_mode((3, 51, 3))
    ('DELETE', 'WAL')
    """
    return "WAL" if library >= WAL_SINCE else "DELETE"


def _engine(file: Path, *, begin: str, pragmas: tuple[str, ...], wait_s: float, **pool: Any) -> Engine:
    """An engine whose every transaction opens with `begin`; the driver's own transactions are off."""
    engine = create_engine(
        f"sqlite:///{file}",
        connect_args={"isolation_level": None, "check_same_thread": False, "timeout": wait_s},
        **pool,
    )

    @event.listens_for(engine, "connect")
    def _settings(connection: sqlite3.Connection, _record: object) -> None:
        for pragma in ("foreign_keys = ON", "recursive_triggers = ON", *pragmas):
            connection.execute(f"PRAGMA {pragma}").close()

    @event.listens_for(engine, "begin")
    def _begin(connection: Connection) -> None:
        connection.exec_driver_sql(begin)

    return engine


class Database:
    """One file. `writing()` is a whole transaction or nothing; inside it `reading()` sees what it wrote.

    A failed sync leaves pages marked clean, so a second sync 'succeeds' without them: after one, nothing
    more is acknowledged until `reopen()` has verified the file.
    """

    def __init__(self, file: Path, *, wait_s: float = 5.0) -> None:
        self.file = file
        self._wait_s = wait_s
        self._writers_turn = threading.RLock()
        self._current: Connection | None = None
        self._sync_failed = False
        look_at_header(file)
        self._open()

    def _open(self) -> None:
        writer_pragmas = (f"journal_mode = {journal_mode()}", "synchronous = FULL", "fullfsync = ON")
        with told_plainly(str(self.file)):
            self._writer = _engine(
                self.file,
                begin="BEGIN IMMEDIATE",
                pragmas=writer_pragmas,
                wait_s=self._wait_s,
                poolclass=StaticPool,
            )
            self._readers = _engine(
                self.file, begin="BEGIN", pragmas=("query_only = ON",), wait_s=self._wait_s
            )
            self._watcher = sqlite3.connect(
                f"file:{self.file}", uri=True, check_same_thread=False, timeout=self._wait_s
            )
            self._watching = threading.Lock()
        try:
            self._prepare()
        except BaseException:
            self.close()
            raise

    def _prepare(self) -> None:
        """Build an empty file, check any other; a file that may not be written is still looked at."""
        try:
            with self.writing() as connection:
                build_or_check(connection, self.file)
        except Refused as refused:
            if refused.refusal.code != "store-read-only":
                raise
            with self.reading() as connection:
                build_or_check(connection, self.file)
        with self.reading() as connection:
            found = connection.exec_driver_sql("PRAGMA quick_check(1)").scalar_one()
        if found != "ok":
            raise refuse("store-damaged", ways_on=("restore-a-backup",), file=str(self.file))

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """The writing connection in a transaction, committed at the end or undone by any exception.

        Asked for again inside itself it joins the transaction that is open.
        """
        with self._writers_turn:
            if self._current is not None:
                yield self._current
                return
            if self._sync_failed:
                raise refuse(SYNC_FAILED, ways_on=("restart-and-verify",), file=str(self.file))
            try:
                with self._writer.begin() as connection:
                    self._current = connection
                    yield connection
            except (DBAPIError, sqlite3.Error) as error:
                refused = self._told(error)
                if refused is None:
                    raise
                raise refused from error
            finally:
                self._current = None

    def _told(self, error: BaseException) -> Refused | None:
        """The refusal of a trouble with the disk, a failed sync remembered; None for a bug."""
        refused = trouble(error, file=str(self.file))
        if refused is not None and refused.refusal.code == SYNC_FAILED:
            self._sync_failed = True
        return refused

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A connection that only looks; within this thread's own `writing()` it is the writing one."""
        if self._writers_turn.acquire(blocking=False):
            try:
                if self._current is not None:
                    yield self._current
                    return
            finally:
                self._writers_turn.release()
        with told_plainly(str(self.file)), self._readers.begin() as connection:
            yield connection

    def version(self) -> int:
        """A number that changes when any other connection, of this program or another, has committed."""
        with self._watching, told_plainly(str(self.file)):
            return int(self._watcher.execute("PRAGMA data_version").fetchone()[0])

    def reopen(self) -> None:
        """Close, open again and verify; only then may writing go on after a failed sync."""
        with self._writers_turn:
            self.close()
            self._sync_failed = False
            look_at_header(self.file)
            self._open()

    def close(self) -> None:
        """Let go of the file."""
        self._writer.dispose()
        self._readers.dispose()
        self._watcher.close()
