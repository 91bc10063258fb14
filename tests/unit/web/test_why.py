"""Why each number of a plan is what it is."""

from __future__ import annotations

import pytest
from fastapi.testclient import TestClient
from planned import TYPED

TAPS = {"liquid": "develop-A", "hot": "52", "cold": "14"}


def begun(client: TestClient, **changes: str) -> TestClient:
    """A browser after six answers."""
    client.post("/begin", data={**TYPED, **changes})
    return client


def test_the_time_with_its_doubt_and_every_source(client: TestClient) -> None:
    """9:00 within a quarter of a minute: leaflet and tank as lengths, parts of the doubt."""
    page = begun(client).get("/plan/why/time").text

    for words in (
        "9:00 ± 0:15",
        "Nine times in ten",
        "lies between 8:45 and 9:15.",
        "From the leaflet",
        "The tank is warmer",
        "rate with temperature",
        "Read the tank at one minute.",
    ):
        assert words in page
    assert 2 == page.count('<g class="doubt">')


@pytest.mark.parametrize("about", ["mix-to", "hot", "cold", "end"])
def test_each_number_has_its_page(client: TestClient, about: str) -> None:
    """Temperature to mix to, waters, end: each with an answer, a scale and what it was worked out from."""
    begun(client, reads="")
    client.post("/plan/ready/taps", data=TAPS)
    answer = client.get(f"/plan/why/{about}")

    assert 200 == answer.status_code
    assert '<p class="answer">' in answer.text
    assert "All figures and sources" in answer.text


def test_an_end_is_said_by_the_clock(client: TestClient) -> None:
    """Hours and minutes, up to the whole minute, and never as a length from the pour."""
    assert "± 1 min" in begun(client).get("/plan/why/end").text


def test_a_start_of_a_second_tankful(client: TestClient) -> None:
    """With a second roll and one tank it says that the tank decides."""
    begun(client)
    client.post("/plan/change", data={"change": "another-roll"})

    assert "The same tank" in client.get("/plan/why/second-start").text


def test_what_has_no_working_is_not_found(client: TestClient) -> None:
    """Neither an unknown number nor one without a plan."""
    assert 404 == client.get("/plan/why/time").status_code
    assert 404 == begun(client).get("/plan/why/luck").status_code


def test_a_time_of_ones_own_is_taken_and_given_back(client: TestClient) -> None:
    """10:00 stands in place of the worked-out one, called one's own; then the other again."""
    begun(client)
    own = client.post("/plan/why/time", data={"own": "10:00", "then": "own", "tankful": "A"}).text
    again = client.post("/plan/why/time", data={"then": "worked-out", "tankful": "A"}).text

    assert "Your own time" in own
    assert "Why 10:00?" in own
    assert "Why 9:00?" in again


def test_a_time_that_can_be_read_two_ways_is_asked_back(client: TestClient) -> None:
    """9.30 is no time until somebody says which."""
    answer = begun(client).post("/plan/why/time", data={"own": "9.30", "then": "own", "tankful": "A"})

    assert (422, True) == (answer.status_code, 'id="own-refused"' in answer.text)
