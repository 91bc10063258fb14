"""The tables, by noun; importing this package fills `METADATA` with all of them."""

from __future__ import annotations

from tankside.store.tables import desk, rolls, run, shelf
from tankside.store.tables.metadata import METADATA

__all__ = ["METADATA", "desk", "rolls", "run", "shelf"]
