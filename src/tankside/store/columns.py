"""Column types over the four storage classes that a STRICT table knows."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, date, datetime, timedelta
from typing import Any
from uuid import UUID

from sqlalchemy import INTEGER, TEXT, BigInteger, CheckConstraint, Dialect, TypeDecorator

WHOLE = BigInteger().with_variant(INTEGER(), "sqlite")
EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


class KeyText(TypeDecorator[UUID]):
    """A UUID, kept as its 36 characters so that a person with a database browser can read it."""

    impl = TEXT
    cache_ok = True

    def process_bind_param(self, value: UUID | None, dialect: Dialect) -> str | None:  # noqa: ARG002
        """Write the key in its usual form."""
        return None if value is None else str(value)

    def process_result_value(self, value: Any, dialect: Dialect) -> UUID | None:  # noqa: ARG002
        """Read it back."""
        return None if value is None else UUID(value)


class Moment(TypeDecorator[datetime]):
    """An aware moment as whole microseconds since the epoch, in UTC; a naive one is a bug."""

    impl = WHOLE
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> int | None:  # noqa: ARG002
        """Count microseconds exactly, without passing through a float."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a moment without its zone cannot be stored")
        return (value - EPOCH) // timedelta(microseconds=1)

    def process_result_value(self, value: Any, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """Read it back in UTC."""
        return None if value is None else EPOCH + timedelta(microseconds=value)


class Day(TypeDecorator[date]):
    """A calendar day without a zone, as 2026-11-25."""

    impl = TEXT
    cache_ok = True

    def process_bind_param(self, value: date | None, dialect: Dialect) -> str | None:  # noqa: ARG002
        """Write the day in the order that sorts."""
        return None if value is None else value.isoformat()

    def process_result_value(self, value: Any, dialect: Dialect) -> date | None:  # noqa: ARG002
        """Read it back."""
        return None if value is None else date.fromisoformat(value)


class YesNo(TypeDecorator[bool]):
    """Yes is 1, no is 0; the table holds a CHECK beside it."""

    impl = INTEGER
    cache_ok = True

    def process_bind_param(self, value: bool | None, dialect: Dialect) -> int | None:  # noqa: ARG002
        """Write 1 or 0."""
        return None if value is None else int(value)

    def process_result_value(self, value: Any, dialect: Dialect) -> bool | None:  # noqa: ARG002
        """Read it back."""
        return None if value is None else bool(value)


def one_of(column: str, words: Iterable[str], *, table: str) -> CheckConstraint:
    """A named CHECK that `column` holds one of `words`; unnamed ones are lost in a migration."""
    listed = ", ".join(f"'{word}'" for word in words)
    return CheckConstraint(f"{column} IN ({listed})", name=f"{table}_{column}_known")


def yes_or_no(column: str, *, table: str) -> CheckConstraint:
    """A named CHECK that `column` holds 0 or 1."""
    return CheckConstraint(f"{column} IN (0, 1)", name=f"{table}_{column}_yes_or_no")


def holds(rule: str, *, name: str) -> CheckConstraint:
    """A named CHECK of any other rule."""
    return CheckConstraint(rule, name=name)
