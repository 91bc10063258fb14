"""First evening: six questions, kept in the address, read as people write."""

from __future__ import annotations

from urllib.parse import urlencode

import pytest
from fastapi.testclient import TestClient

GIVEN = {
    "film": "Ferry 200",
    "format": "135-36",
    "index": "200",
    "developer": "Umber",
    "dilution": "1+1",
    "time": "9:30",
    "temp": "20",
    "tank": "500",
}


def asked(client: TestClient, **answers: str) -> str:
    """The page after these answers."""
    return client.get(f"/begin?{urlencode(answers)}").text


def test_six_questions_no_more(client: TestClient) -> None:
    """One is open, five are to come."""
    page = client.get("/begin").text

    assert 1 == page.count('aria-current="step"')
    assert 5 == page.count("is-coming")


def test_answers_stay_visible_and_lead_back(client: TestClient) -> None:
    """Each answer given is a line that leads back to its question, and the next question is open."""
    page = asked(client, film="Ferry 200", format="120", answered="film")

    assert "film: Ferry 200, 120" in page
    assert "ask=film" in page
    assert "At what index was it exposed?" in page


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ({"time": "9 1/2"}, "9:30 at 20.0 °C"),
        ({"time": "9:30", "temp": "68 F"}, "9:30 at 20.0 °C"),
        ({"dilution": "1 in 50"}, "developer: Umber 1+49"),
    ],
)
def test_read_as_printed(client: TestClient, written: dict[str, str], said: str) -> None:
    """Half minutes, degrees Fahrenheit and 'one in fifty' are understood."""
    assert said in asked(client, **{**GIVEN, **written}, answered="tank")


def test_one_to_four_is_asked_back_with_its_millilitres(client: TestClient) -> None:
    """1:4 stands for two things: both are offered, in the volume of the tank or of 300 mL."""
    answers = {name: GIVEN[name] for name in ("film", "format", "index", "developer")}
    answer = client.get(f"/begin?{urlencode({**answers, 'dilution': '1:4', 'answered': 'developer'})}")

    assert 422 == answer.status_code
    assert "1:4 is printed for two things." in answer.text
    assert "60 + 240 mL" in answer.text
    assert "75 + 225 mL" in answer.text


def test_the_chosen_reading_takes_the_place_of_what_was_typed(client: TestClient) -> None:
    """A tap on a reading is the answer."""
    answers = {name: GIVEN[name] for name in ("film", "format", "index", "developer")}
    page = asked(client, **answers, dilution="1:4", answered="developer", **{"meant-dilution": "1+4"})

    assert "developer: Umber 1+4" in page
    assert "What time and temperature does the leaflet print?" in page


def test_what_cannot_be_read_is_refused_at_its_field(client: TestClient) -> None:
    """The typed text stays, the sentence stands under it, the other answers are kept."""
    answer = client.get(f"/begin?{urlencode({**GIVEN, 'time': 'soon', 'answered': 'time'})}")

    assert 422 == answer.status_code
    assert 'value="soon"' in answer.text
    assert 'id="time-refused"' in answer.text
    assert 'name="film" value="Ferry 200"' in answer.text


def test_without_a_leaflet_there_is_a_way_on(client: TestClient) -> None:
    """A time of one's own is taken, and called one."""
    answers = {name: GIVEN[name] for name in ("film", "format", "index", "developer", "dilution")}
    assert "I have no leaflet" in asked(client, **answers, answered="developer")
    page = asked(client, **answers, ask="time", own="yes")

    assert "Which time, at which temperature?" in page
    assert 'name="own" value="yes"' in page
