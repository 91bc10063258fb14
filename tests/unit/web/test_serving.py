"""The pages over a real database."""

from __future__ import annotations

from pathlib import Path

from evening_clock import CountingDice, SetClock
from fakes import memory_house
from fastapi.testclient import TestClient

from tankside.web.serving import server_of
from tankside.wiring import app_over, desk_over, open_house


def test_a_choice_made_on_a_page_is_on_the_disk(tmp_path: Path) -> None:
    """Opened over a file, the page names its folder and writes to it."""
    file, origin = tmp_path / "tankside.db", "http://localhost:8420"
    with open_house(file, SetClock(), CountingDice()) as house:
        client = TestClient(app_over(house), base_url=origin, headers={"origin": origin})
        assert str(tmp_path) in client.get("/").text
        client.post("/settings/units", data={"temperature": "fahrenheit", "volume": "ml"})

    with desk_over(file) as again:
        assert "fahrenheit" == again.preferences.all()["temperature"]


def test_the_server_believes_no_proxy_and_waits_a_second_for_streams() -> None:
    """A forged header of a proxy may not change the address that a request is judged by."""
    config = server_of(app_over(memory_house())).config

    assert not config.proxy_headers
    assert 1 == config.timeout_graceful_shutdown
