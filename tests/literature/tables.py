"""Reads the tables of sourced values that stand beside the literature tests."""

from __future__ import annotations

import csv
from pathlib import Path

DATA = Path(__file__).parent / "data"


def rows_of(name: str) -> list[dict[str, str]]:
    """The rows of data/`name`, comments (#) left out."""
    lines = (DATA / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def inputs_of(row: dict[str, str]) -> dict[str, str]:
    """A row's inputs 'a=1;b=2' by name."""
    return dict(pair.split("=", 1) for pair in row["inputs"].split(";") if "=" in pair)
