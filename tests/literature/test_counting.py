"""Rows that were published, made by us or quoted from memory are counted, and told with `pytest -s`."""

from __future__ import annotations

from literature.counting import counted, told
from literature.tables import rows_of


def test_every_row_is_of_one_kind() -> None:
    """The counts add up to the rows; rows from memory are not few, so they are worth telling apart."""
    print(f"\n{told()}")
    for table, counts in counted().items():
        assert len(rows_of(table)) == counts.total()
        assert set(counts) <= {"published", "ours", "from memory"}


def test_memory_is_told_apart() -> None:
    """Of the formulas most are from memory."""
    formulas = counted()["formulas.csv"]

    assert formulas["from memory"] > formulas["published"] > 0
