"""Combinations in the database: what is known of them only grows."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from sqlalchemy import ColumnElement, Connection, Row, insert, literal_column, select, update

from tankside.core.agitation.patterns import Agitation
from tankside.core.methods.combinations import Combination, TimeRow
from tankside.core.solutions.notation import Dilution
from tankside.store.connection import Database
from tankside.store.frozen_json import from_json, to_json
from tankside.store.tables.rolls import COMBINATIONS, TIME_ROWS


def _identity(combination: Combination) -> dict[str, Any]:
    return {
        "film": combination.film,
        "developer": combination.developer,
        "stock_parts": combination.dilution.stock,
        "water_parts": combination.dilution.water,
        "agitation": to_json(Agitation, combination.agitation),
        "tank": combination.tank,
        "convention": combination.convention,
    }


def _time_row(row: Row[Any]) -> TimeRow:
    return TimeRow(
        key=row.key,
        time_s=row.time_s,
        temp_c=row.temp_c,
        index=row.exposure_index,
        source=row.source,
        words=row.words,
        noted=row.noted,
        contrast=row.contrast,
        replaces=row.replaces,
    )


def _rows(connection: Connection, key: UUID) -> tuple[TimeRow, ...]:
    found = select(TIME_ROWS).where(TIME_ROWS.c.combination == key).order_by(literal_column("rowid"))
    return tuple(_time_row(row) for row in connection.execute(found))


def _combination(connection: Connection, row: Row[Any]) -> Combination:
    return Combination(
        key=row.key,
        film=row.film,
        developer=row.developer,
        dilution=Dilution(row.stock_parts, row.water_parts),
        agitation=from_json(Agitation, row.agitation),
        tank=row.tank,
        convention=row.convention,
        time_rule=row.time_rule,
        rows=_rows(connection, row.key),
        least_stock_ml=row.least_stock_ml,
        hydroquinone=row.hydroquinone,
    )


class StoredCombinations:
    """Combinations, known by film, developer, parts, agitation, tank and convention."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def all(self) -> tuple[Combination, ...]:
        """All of them, by film and developer, rows in the order they came."""
        with self._database.reading() as connection:
            order = select(COMBINATIONS).order_by(
                COMBINATIONS.c.film, COMBINATIONS.c.developer, literal_column("rowid")
            )
            found = connection.execute(order).all()
            return tuple(_combination(connection, row) for row in found)

    def by_key(self, key: UUID) -> Combination | None:
        """The one under `key`."""
        with self._database.reading() as connection:
            return self._one(connection, COMBINATIONS.c.key == key)

    def _one(self, connection: Connection, *which: ColumnElement[bool]) -> Combination | None:
        row = connection.execute(select(COMBINATIONS).where(*which)).one_or_none()
        return None if row is None else _combination(connection, row)

    def keep(self, combination: Combination) -> Combination:
        """Take in a combination, or the new rows of a known one; returns it as it now stands."""
        identity = _identity(combination)
        with self._database.writing() as connection:
            same = [COMBINATIONS.c[name] == value for name, value in identity.items()]
            known = self._one(connection, *same)
            if known is None:
                self._add(connection, combination, identity)
            else:
                self._settle(connection, known, combination)
            self._add_rows(connection, combination, known)
            stood = self._one(connection, *same)
        assert stood is not None
        return stood

    @staticmethod
    def _add(connection: Connection, combination: Combination, identity: dict[str, Any]) -> None:
        connection.execute(
            insert(COMBINATIONS).values(
                key=combination.key,
                time_rule=combination.time_rule,
                least_stock_ml=combination.least_stock_ml,
                hydroquinone=combination.hydroquinone,
                **identity,
            )
        )

    @staticmethod
    def _settle(connection: Connection, known: Combination, combination: Combination) -> None:
        least_ml, hydroquinone = combination.least_stock_ml, combination.hydroquinone
        connection.execute(
            update(COMBINATIONS)
            .where(COMBINATIONS.c.key == known.key)
            .values(
                time_rule=combination.time_rule,
                least_stock_ml=known.least_stock_ml if least_ml is None else least_ml,
                hydroquinone=known.hydroquinone if hydroquinone is None else hydroquinone,
            )
        )

    @staticmethod
    def _add_rows(connection: Connection, combination: Combination, known: Combination | None) -> None:
        kept = {row.key: row for row in (known.rows if known else ())}
        for row in combination.rows:
            if row.key in kept:
                if kept[row.key] != row:
                    raise ValueError(
                        "a row of a combination is never overwritten: give the new one its own key"
                    )
                continue
            connection.execute(
                insert(TIME_ROWS).values(
                    key=row.key,
                    combination=known.key if known else combination.key,
                    time_s=row.time_s,
                    temp_c=row.temp_c,
                    exposure_index=row.index,
                    source=row.source,
                    words=row.words,
                    noted=row.noted,
                    contrast=row.contrast,
                    replaces=row.replaces,
                )
            )
