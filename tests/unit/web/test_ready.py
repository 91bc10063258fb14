"""Get ready: liquids in order, waters once the taps are read, codes to write, and the way to the sink."""

from __future__ import annotations

import re

import pytest
from fastapi.testclient import TestClient
from planned import TYPED

SIX = {**TYPED, "reads": ""}


@pytest.fixture
def planned(client: TestClient) -> TestClient:
    """A browser after the six answers of a first evening, nothing mixed yet."""
    client.post("/begin", data=SIX)
    return client


def make(client: TestClient, liquid: str, **more: str) -> str:
    """The page after one liquid was made."""
    return client.post("/plan/ready/made", data={"liquid": liquid, "how": "mixed", **more}).text


def test_without_a_plan_it_leads_to_the_plan(client: TestClient) -> None:
    """There is nothing to get ready for."""
    answer = client.get("/plan/ready", follow_redirects=False)

    assert "/plan" == answer.headers["location"]


def test_the_first_liquid_is_in_hand_with_its_cautions(planned: TestClient) -> None:
    """Fixer at 1+4 for half a litre, label first, and the maker's sheet above all."""
    page = planned.get("/plan/ready").text

    assert "500 mL of Fixer, 1+4: 100 mL and 400 mL of water." in page
    assert "Label the bottle before you fill it" in page
    assert "safety sheet" in page


def test_each_liquid_made_gets_a_code_to_write(planned: TestClient) -> None:
    """The code stands large, and the next liquid is in hand."""
    page = make(planned, "fix")

    assert re.search(r'ready-code-letters">[2-9A-Z]{4}-[2-9A-Z]<', page)
    assert "Stop bath is mixed" in page


def test_the_stop_bath_says_to_vent(planned: TestClient) -> None:
    """Carbonate into acid makes gas: said where the stop bath is made."""
    assert "open the lid after the first inversion, glasses on" in make(planned, "fix")


def test_a_target_until_the_taps_are_read_then_amounts(planned: TestClient) -> None:
    """Mix, hold back, read; with both taps read, hot and cold by the millilitre."""
    before = planned.get("/plan/ready?liquid=develop-A").text
    after = planned.post("/plan/ready/taps", data={"liquid": "develop-A", "hot": "52", "cold": "14"}).text

    assert "Hold back the last 50 mL" in before
    assert "hot water" not in before.split("ready-minded")[0]
    assert re.search(r"hot water</th><td class=\"number\">\d+ mL", after)


def test_taps_are_refused_at_their_fields(planned: TestClient) -> None:
    """Hot no warmer than cold, and what is no temperature."""
    for hot, cold, field in (("14", "52", "hot"), ("warm", "14", "hot"), ("52", "", "cold")):
        sent = {"liquid": "develop-A", "hot": hot, "cold": cold}
        answer = planned.post("/plan/ready/taps", data=sent)

        assert (422, True) == (answer.status_code, f'id="{field}-refused"' in answer.text)


def test_the_jug_is_read_and_topped_up(planned: TestClient) -> None:
    """What is held back becomes so much hot and so much cold; they are 50 mL together."""
    planned.post("/plan/ready/taps", data={"liquid": "develop-A", "hot": "52", "cold": "14"})
    page = planned.get("/plan/ready?liquid=develop-A&jug=19.5").text

    found = re.search(r"The last 50 mL: (\d+) mL hot and (\d+) mL cold", page)
    assert found is not None
    assert 50 == int(found[1]) + int(found[2])


def test_a_bottle_that_stood_there_is_taken_with_its_rolls(planned: TestClient) -> None:
    """A litre of fixer with seven rolls behind it; 300 mL would be too little."""
    little = planned.post(
        "/plan/ready/made", data={"liquid": "fix", "how": "already", "volume": "300", "used": "7"}
    )
    page = make(planned, "fix", how="already", volume="1000", used="7", cap="white")

    assert (422, True) == (little.status_code, 'id="volume-refused"' in little.text)
    assert "white cap" in page


def test_the_last_liquid_leads_to_the_sink_and_twice_to_the_same(planned: TestClient) -> None:
    """What the developer reads is taken, the run is opened, a second press opens no other."""
    for liquid in ("fix", "stop", "wetting", "develop-A"):
        page = make(planned, liquid)
    assert "Go to the sink" in page
    there = [
        planned.post("/plan/ready/sink", data={"reads": reads}, follow_redirects=False).headers["location"]
        for reads in ("20.5", "")
    ]

    assert re.fullmatch(r"/sink/[0-9a-f-]{36}", there[0])
    assert there[0] == there[1]


def test_a_developer_too_warm_to_time_is_refused_at_the_reading(planned: TestClient) -> None:
    """Thirty degrees is no temperature to develop at; nothing is opened."""
    for liquid in ("fix", "stop", "wetting", "develop-A"):
        make(planned, liquid)
    answer = planned.post("/plan/ready/sink", data={"reads": "30"})

    assert 422 == answer.status_code
    assert "too-warm-to-time" in answer.text
