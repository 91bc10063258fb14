"""Telling a row that somebody else wrote first from a row that is wrong."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import IntegrityError

from tankside.workflows.records import Conflict

TAKEN = ("SQLITE_CONSTRAINT_PRIMARYKEY", "SQLITE_CONSTRAINT_UNIQUE")


@contextmanager
def conflict_if_taken(what: str) -> Iterator[None]:
    """Raise `Conflict` where a key is taken; a broken CHECK is a bug and stays one."""
    try:
        yield
    except IntegrityError as error:
        if getattr(error.orig, "sqlite_errorname", "") not in TAKEN:
            raise
        raise Conflict(what) from error
