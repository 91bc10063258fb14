"""What the sink answers to a command that it noted."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, tzinfo
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from tankside.core.run.decide.drafts import Answer

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def say_answer(answer: Answer, zone: str) -> str:
    """One short sentence, or nothing where the screen itself says it.

    >>> say_answer(Answer("already-noted", "phone:3/0", 72_000_000_000), "UTC")
    'Already noted 20:00:00.'
    """
    match answer.code:
        case "already-noted":
            return f"Already noted {clock_words(answer.at_us, zone)}."
        case "put-right":
            return "Put right."
        case "closed":
            return "The run is closed."
        case "opened" | "noted" | "agreed":
            return ""


def clock_words(at_us: int, zone: str) -> str:
    """Microseconds since the epoch as a clock of that zone reads.

    >>> clock_words(72_000_000_000, "UTC")
    '20:00:00'
    """
    return f"{(EPOCH + timedelta(microseconds=at_us)).astimezone(_zone(zone)):%H:%M:%S}"


def _zone(name: str) -> tzinfo:
    """The zone of the run, UTC where this machine does not know it."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError):
        return UTC
