"""From what SQLite and the disk report to a refusal a person can act on."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError

from tankside.core.refusals import Refused, refuse

# The first of these that an error's name begins with decides.
CODES: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("SQLITE_FULL", "disk-full", ("free-some-room",)),
    ("SQLITE_IOERR_FSYNC", "disk-sync-failed", ("restart-and-verify",)),
    ("SQLITE_IOERR_DIR_FSYNC", "disk-sync-failed", ("restart-and-verify",)),
    ("SQLITE_IOERR_CORRUPTFS", "store-damaged", ("restore-a-backup",)),
    ("SQLITE_IOERR_READ", "disk-read-failed", ("restart-and-verify", "restore-a-backup")),
    ("SQLITE_IOERR_SHORT_READ", "disk-read-failed", ("restart-and-verify", "restore-a-backup")),
    ("SQLITE_IOERR", "disk-write-failed", ("free-some-room", "restart-and-verify")),
    ("SQLITE_BUSY", "store-busy", ("close-the-other-program", "try-again")),
    ("SQLITE_LOCKED", "store-busy", ("close-the-other-program", "try-again")),
    ("SQLITE_READONLY", "store-read-only", ("allow-writing",)),
    ("SQLITE_PERM", "store-read-only", ("allow-writing",)),
    ("SQLITE_CORRUPT", "store-damaged", ("restore-a-backup",)),
    ("SQLITE_NOTADB", "store-damaged", ("restore-a-backup",)),
    ("SQLITE_CANTOPEN", "store-cannot-open", ("look-at-the-folder",)),
)

SYNC_FAILED = "disk-sync-failed"


def trouble(error: BaseException, *, file: str) -> Refused | None:
    """The refusal for `error` met while using `file`, or None where the error is a bug of ours."""
    cause = error.orig if isinstance(error, DBAPIError) else error
    if not isinstance(cause, sqlite3.Error):
        return None
    name = getattr(cause, "sqlite_errorname", "") or ""
    for begins, code, ways_on in CODES:
        if name.startswith(begins):
            return refuse(code, ways_on=ways_on, file=file)
    return None


@contextmanager
def told_plainly(file: str) -> Iterator[None]:
    """Raise what the disk did wrong as a refusal; bugs pass through as they are."""
    try:
        yield
    except (DBAPIError, sqlite3.Error) as error:
        refused = trouble(error, file=file)
        if refused is None:
            raise
        raise refused from error
