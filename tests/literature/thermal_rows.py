"""Rows of data/thermal.csv by group, with their inputs as numbers and their own tolerance."""

from __future__ import annotations

from typing import Any

import pytest
from literature.tables import inputs_of, rows_of

ROWS = rows_of("thermal.csv")


def of_group(group: str, *, output: str | None = None) -> list[Any]:
    """The rows of a group, with one output or all, ready to parametrise with."""
    chosen = [row for row in ROWS if row["group"] == group and output in (None, row["output"])]
    return [pytest.param(row, id=row["id"]) for row in chosen]


def numbers_of(row: dict[str, str]) -> dict[str, float]:
    """The inputs of a row that are numbers (a unit after the number is left off)."""
    found = {}
    for name, text in inputs_of(row).items():
        try:
            found[name] = float(text.split()[0])
        except ValueError:
            continue
    return found


def expected_of(row: dict[str, str]) -> Any:
    """The expected value within the row's own tolerance."""
    return pytest.approx(float(row["expected"]), rel=0, abs=float(row["tolerance"]))
