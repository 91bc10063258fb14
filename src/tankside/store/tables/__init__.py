"""The tables, by noun; importing this package fills `METADATA` with all of them."""

from __future__ import annotations

from tankside.store.tables import desk, review, rolls, run, shelf
from tankside.store.tables.metadata import METADATA

__all__ = ["METADATA", "desk", "review", "rolls", "run", "shelf"]
