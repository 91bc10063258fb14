"""The evening, its run opened, over a real database."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from bench import Bench

from tankside.store.connection import Database


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Bench]:
    """A run just opened."""
    database = Database(tmp_path / "tankside.db", wait_s=2.0)
    bench = Bench(database)
    bench.open()
    yield bench
    database.close()
