"""The pages over a real database."""

from __future__ import annotations

import threading
from pathlib import Path

import httpx2
import pytest
from bench import RUN, lay_out
from evening import PLAN
from evening_clock import CountingDice, SetClock, at
from fakes import memory_house
from fastapi.testclient import TestClient

from tankside.machine.port import LOOPBACK, take_port
from tankside.web.serving import server_of
from tankside.wiring import app_over, desk_over, open_house
from tankside.workflows.open_run import open_run


def test_a_choice_made_on_a_page_is_on_the_disk(tmp_path: Path) -> None:
    """Opened over a file, the page names its folder and writes to it."""
    file, origin = tmp_path / "tankside.db", "http://localhost:8420"
    with open_house(file, SetClock(), CountingDice()) as house:
        client = TestClient(app_over(house), base_url=origin, headers={"origin": origin})
        assert str(tmp_path) in client.get("/").text
        client.post("/settings/units", data={"temperature": "F", "volume": "ml"})

    with desk_over(file) as again:
        assert "F" == again.preferences.all()["temperature"]


def test_a_stop_ends_an_open_stream_by_itself(caplog: pytest.LogCaptureFixture) -> None:
    """It should send the last piece and close, not be cancelled when the grace is over."""
    house = memory_house()
    lay_out(house.desk)
    open_run(house.desk, house.live_runs, RUN, PLAN.key, at(0.0))
    server = server_of(app_over(house))
    with take_port(0) as taken:
        thread = threading.Thread(target=server.run, kwargs={"sockets": [taken]})
        thread.start()
        address = f"http://{LOOPBACK}:{taken.getsockname()[1]}/sink/{RUN}/stream"
        with httpx2.stream("GET", address, timeout=10.0) as answer:
            lines = answer.iter_lines()
            assert "event: screen" in (next(lines), next(lines), next(lines))
            server.should_exit = True
            assert "" == list(lines)[-1]
        thread.join()
    assert [] == [record.message for record in caplog.records]


def test_the_server_believes_no_proxy_and_waits_a_second_for_streams() -> None:
    """A forged header of a proxy may not change the address that a request is judged by."""
    config = server_of(app_over(memory_house())).config

    assert not config.proxy_headers
    assert 1 == config.timeout_graceful_shutdown
