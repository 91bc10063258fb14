"""Desks to put through their contract."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from fakes import memory_desk

from tankside.store.connection import Database
from tankside.store.desk import stored_desk
from tankside.workflows.ports import Desk


@pytest.fixture
def database(tmp_path: Path) -> Iterator[Database]:
    """A new database."""
    opened = Database(tmp_path / "tankside.db", wait_s=0.2)
    yield opened
    opened.close()


@pytest.fixture(params=["memory", "disk"])
def desk(request: pytest.FixtureRequest) -> Desk:
    """A desk in memory, then one on the disk: whatever holds for one holds for the other."""
    if request.param == "memory":
        return memory_desk()
    return stored_desk(request.getfixturevalue("database"))
