"""Instants as moments of the calendar, for rows that are not of a run."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from tankside.core.run.instants import Instant

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def moment_of(instant: Instant) -> datetime:
    """The wall time of `instant`, in UTC.

    >>> moment_of(Instant(1_000_001, 0, "a")).isoformat()
    '1970-01-01T00:00:01.000001+00:00'
    """
    return EPOCH + timedelta(microseconds=instant.wall_us)
