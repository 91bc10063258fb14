"""The page 'Again' and the first screen of a house that has a last time."""

from __future__ import annotations

import re

import pytest
from evening_before import DAY_S, lived_before, planned_before, waiting
from evening_clock import SetClock, at
from fastapi import FastAPI
from fastapi.testclient import TestClient

from tankside.workflows.house import House
from tankside.workflows.keep_bottles import discard
from tankside.workflows.open_run import open_run, run_for


@pytest.fixture
def house(app: FastAPI) -> House:
    """The house behind the client, the day after its first evening; two rolls wait."""
    opened: House = app.state.house
    lived_before(opened, at(0.0))
    assert isinstance(opened.clock, SetClock)
    opened.clock.seconds = DAY_S
    waiting(opened, opened.clock.now())
    return opened


def form_of(page: str) -> dict[str, str | list[str]]:
    """What the form would send if only the reading were typed."""
    key = re.findall(r'name="key" value="([^"]+)"', page)[0]
    return {"key": key, "roll": re.findall(r'name="roll" value="([^"]+)" checked', page), "reads": "20"}


def main_act(page: str) -> str:
    """What stands on the main act."""
    return re.findall(r'class="act act-main"[^>]*>([^<]+)<', page)[0]


def test_a_fresh_house_begins(client: TestClient) -> None:
    """There is no last time: the demo first, and Again leads to the first evening."""
    assert "Look around with the demo" == main_act(client.get("/").text)
    assert "/begin" == client.get("/again", follow_redirects=False).headers["location"]


@pytest.mark.usefixtures("house")
def test_the_first_screen_offers_again(client: TestClient) -> None:
    """Again is the main act, and one line says that two rolls wait; the rolls page has a door too."""
    page = client.get("/").text

    assert ("Again", True) == (main_act(page), "2 rolls are waiting." in page)
    assert 'href="/again"' in client.get("/rolls").text


def test_an_open_run_leads_to_the_sink(client: TestClient, app: FastAPI) -> None:
    """One line says that it is open, and the main act goes there."""
    house: House = app.state.house
    plan = planned_before(house, at(0.0))
    run = open_run(house.desk, house.live_runs, run_for(plan.key), plan.key, at(0.0))
    page = client.get("/").text

    assert ("Go to the sink", True) == (main_act(page), f'href="/sink/{run}"' in page)
    assert "A run is open at the sink since 19:30." in page


def test_one_number_and_to_the_sink(client: TestClient, house: House) -> None:
    """Both rolls are ticked; the second press leads to the same run."""
    form = form_of(client.get("/again").text)
    there = [client.post("/again", data=form, follow_redirects=False).headers["location"] for _ in range(2)]

    assert 2 == len(form["roll"])
    assert re.fullmatch(r"/sink/[0-9a-f-]{36}", there[0])
    assert there[0] == there[1]
    assert 2 == len(house.desk.run_log.headings())


@pytest.mark.parametrize(
    ("typed", "field"), [({"reads": ""}, "reads"), ({"reads": "30"}, "reads"), ({"roll": []}, "rolls")]
)
def test_each_refusal_stands_at_its_field(
    client: TestClient, house: House, typed: dict[str, str], field: str
) -> None:
    """Nothing typed, a developer too warm, no roll: what was typed stays, nothing is opened."""
    answer = client.post("/again", data={**form_of(client.get("/again").text), **typed})

    assert (422, True) == (answer.status_code, f'id="{field}-refused"' in answer.text)
    assert 1 == len(house.desk.run_log.headings())


def test_without_fixer_the_ordinary_way_leads_on(client: TestClient, house: House) -> None:
    """One sentence, the main act plans step by step, and Get ready then asks for the fixer."""
    plan = house.desk.plans.latest()
    assert plan is not None
    discard(house.desk, house.dice, plan.liquid("fix").bottle or "", house.clock.now())
    form = form_of(client.get("/again").text)
    told = client.post("/again", data=form)
    by_hand = client.post("/again/plan", data=form)

    assert (422, "Plan it step by step") == (told.status_code, main_act(told.text))
    assert "again-no-bottle" in told.text
    assert ("/plan/ready", True) == (by_hand.url.path, "Fixer is mixed" in by_hand.text)


@pytest.mark.usefixtures("house")
def test_cautions_stand_on_the_page(client: TestClient) -> None:
    """Gloves, glasses, vent the tank, and the maker's sheet above all."""
    page = client.get("/again").text

    for words in ("Gloves: developer", "open the lid after the first inversion", "safety sheet goes before"):
        assert words in page
