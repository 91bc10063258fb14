"""The one collection of tables, and how a table of ours is made."""

from __future__ import annotations

from sqlalchemy import Column, MetaData, Table
from sqlalchemy.schema import SchemaItem

METADATA = MetaData(
    naming_convention={
        "pk": "%(table_name)s_key",
        "uq": "%(table_name)s_%(column_0_N_name)s_once",
        "fk": "%(table_name)s_%(column_0_N_name)s_known",
        "ix": "%(table_name)s_by_%(column_0_N_name)s",
    }
)


def strict(name: str, *items: SchemaItem) -> Table:
    """A STRICT table: a text in a number's column is refused by SQLite itself."""
    return Table(name, METADATA, *items, sqlite_strict=True)


def required(name: str, kind: object, *items: object) -> Column[object]:
    """A column that may not be empty."""
    return Column(name, kind, *items, nullable=False)  # type: ignore[arg-type]


def open_ended(name: str, kind: object, *items: object) -> Column[object]:
    """A column that may be empty, because not knowing is an answer."""
    return Column(name, kind, *items, nullable=True)  # type: ignore[arg-type]
