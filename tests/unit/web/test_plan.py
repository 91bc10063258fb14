"""From six answers to the Plan page, over a desk in memory."""

from __future__ import annotations

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient
from planned import TYPED


def planned(client: TestClient, **changes: str) -> str:
    """The page that six answers lead to."""
    return client.post("/begin", data={**TYPED, **changes}).text


def test_six_answers_end_in_a_plan(client: TestClient) -> None:
    """A leaflet with one row and 21.0 C read: the time with its doubt, and what settles it."""
    page = planned(client)

    assert "9:00 (8:45 to 9:15)" in page
    assert "Read the tank at one minute and I settle it." in page


@pytest.mark.parametrize(("reads", "time"), [("20.0", "9:30"), ("19.0", "10:30")])
def test_a_colder_developer_asks_more_time(client: TestClient, reads: str, time: str) -> None:
    """The same leaflet, another reading."""
    assert time in planned(client, reads=reads)


def test_while_it_is_not_mixed_the_plan_says_to_what(client: TestClient) -> None:
    """An empty last answer: the temperature to mix to stands in its place."""
    page = planned(client, reads="")

    assert "Mix it to" in page
    assert "/plan/why/mix-to" in page


def test_what_is_assumed_is_one_sentence_with_a_way_to_change_it(client: TestClient) -> None:
    """Everything nobody was asked."""
    page = planned(client)

    assert 1 == page.count("Assumed: ")
    assert 'href="/plan/change"' in page


def test_the_roll_waits_on_its_page_with_a_code(client: TestClient) -> None:
    """The roll and its leaflet are kept."""
    planned(client)

    assert "1 waiting" in client.get("/rolls").text


def test_a_refused_plan_keeps_nothing(client: TestClient) -> None:
    """A developer too warm to be timed is refused at the last question, and no roll is left behind."""
    answer = client.post("/begin", data={**TYPED, "reads": "31"})

    assert 422 == answer.status_code
    assert "0 waiting" in client.get("/rolls").text


def test_chosen_rolls_become_a_plan(app: FastAPI, client: TestClient) -> None:
    """A second roll of the same film, ticked together with the first a minute later."""
    planned(client)
    app.state.house.clock.seconds += 60
    client.post("/rolls/add", data={"film": "Ferry 200", "format": "135-36", "index": "200"})
    codes = [part.split('"')[0] for part in client.get("/rolls").text.split('name="roll" value="')[1:]]

    page = client.post("/plan/rolls", data={"roll": codes}).text
    assert "Two rolls" in page
