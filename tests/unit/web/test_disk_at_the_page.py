"""A disk that takes nothing, at the page: one sentence, what was typed is kept, nothing half-written."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from evening_clock import CountingDice, SetClock
from fastapi.testclient import TestClient

from tankside.sink.broadcast import Broadcast
from tankside.sink.live_runs import LiveRuns
from tankside.store.connection import Database
from tankside.store.desk import stored_desk
from tankside.wiring import app_over
from tankside.workflows.house import House

ORIGIN = "http://localhost:8420"
ROLL = {
    "film": "Ferry 125",
    "format": "135-36",
    "index": "125",
    "grain": "cubic",
    "notes": "the harbour " * 4000,
}


@pytest.fixture
def database(tmp_path: Path) -> Iterator[Database]:
    """A database on a disk of its own making."""
    database = Database(tmp_path / "tankside.db")
    yield database
    database.close()


@pytest.fixture
def browser(database: Database) -> TestClient:
    """A browser on the pages over it."""
    desk, dice = stored_desk(database), CountingDice()
    broadcast = Broadcast(database.version)
    live = LiveRuns(desk, dice, written=broadcast.written)
    house = House(desk, live, broadcast, SetClock(), dice)
    return TestClient(app_over(house), base_url=ORIGIN, headers={"origin": ORIGIN})


def test_a_full_disk_is_said_at_the_form(browser: TestClient, database: Database) -> None:
    """The roll is refused, what was typed is still there, no half is kept; with room it is taken."""
    with database.writing() as connection:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar_one()
    with database._writer.connect() as connection:
        connection.exec_driver_sql(f"PRAGMA max_page_count = {pages + 2}")
    refused = browser.post("/rolls/add", data=ROLL)
    assert 422 == refused.status_code
    assert "The disk is full" in refused.text
    assert "Free some room on the disk." in refused.text
    assert 'value="Ferry 125"' in refused.text
    assert "0 waiting" in browser.get("/rolls").text
    with database._writer.connect() as connection:
        connection.exec_driver_sql("PRAGMA max_page_count = 1000000")
    assert 200 == browser.post("/rolls/add", data=ROLL).status_code
    assert "1 waiting" in browser.get("/rolls").text


def test_a_file_that_is_read_only_is_shown_and_not_written(browser: TestClient, database: Database) -> None:
    """Pages open; a roll is refused with the way on."""
    assert 200 == browser.post("/rolls/add", data={**ROLL, "notes": "fog"}).status_code
    with database._writer.connect() as connection:
        connection.exec_driver_sql("PRAGMA query_only = ON")
    refused = browser.post("/rolls/add", data={**ROLL, "notes": "sun"})
    assert 422 == refused.status_code
    assert "may be read but not written" in refused.text
    assert "Allow writing to the file and its folder." in refused.text
    assert "1 waiting" in browser.get("/rolls").text
