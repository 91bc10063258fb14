"""Leaflets: rows kept with where they come from, and asked for where a roll has none."""

from __future__ import annotations

import re

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

LEAFLET = {
    "film": "Quay 50",
    "index": "50",
    "developer": "Umber",
    "dilution": "1+3",
    "time": "12",
    "temp": "20",
    "source": "leaflet",
}


def only_leaflet(client: TestClient) -> str:
    """The path of the one leaflet that is kept."""
    found = re.search(r'href="(/leaflets/[0-9a-f-]{36})"', client.get("/leaflets").text)
    assert found is not None
    return found[1]


def test_the_first_evening_leaves_its_row(planned: TestClient) -> None:
    """What was typed on the first evening stands there with its source."""
    page = planned.get(only_leaflet(planned)).text

    assert "9:30" in page
    assert "leaflet" in page


def test_another_row_is_kept_beside_the_first_and_narrows_the_doubt(planned: TestClient) -> None:
    """24 C with its printed time; the plan that stands takes it in by one tap."""
    path = only_leaflet(planned)
    row = {"time": "7:00", "temp": "24", "index": "200", "source": "leaflet"}
    page = planned.post(f"{path}/rows", data=row).text
    planned.post("/plan/change", data={"change": "as-kept"})

    assert "9:30" in page
    assert "7:00" in page
    assert "Use it in the plan that stands" in page
    assert "one of 2 rows" in planned.get("/plan/why/time").text


@pytest.mark.parametrize(("field", "typed"), [("time", "9.30"), ("temp", "warm"), ("index", "fast")])
def test_a_row_is_refused_at_its_field(planned: TestClient, field: str, typed: str) -> None:
    """What was typed stays under its sentence."""
    row = {"time": "7:00", "temp": "24", "index": "200", field: typed}
    answer = planned.post(f"{only_leaflet(planned)}/rows", data=row)

    assert (422, True) == (answer.status_code, f'id="{field}-refused"' in answer.text)


def test_a_film_without_a_leaflet_is_asked_for_one_and_planned(planned: TestClient, app: FastAPI) -> None:
    """From the list of rolls to the questions of developer and time, and back to a plan of that roll."""
    new = {"film": "Quay 50", "format": "135-36", "index": "50", "exposed": "2026-11-01"}
    planned.post("/rolls/add", data=new)
    code = re.search(
        r"rolls-code\">([^<]+)</span>\s*<span class=\"rolls-film\">Quay", planned.get("/rolls").text
    )
    assert code is not None
    asked = planned.post("/plan/rolls", data={"roll": code[1]})
    app.state.house.clock.seconds += 60
    plan = planned.post("/leaflets/new", data={**LEAFLET, "roll": code[1]}).text

    assert "A time for Quay 50" in asked.text
    assert f'name="roll" value="{code[1]}"' in asked.text
    assert "12:00" in plan


def test_what_its_developer_holds_and_how_its_time_goes(planned: TestClient, app: FastAPI) -> None:
    """Both are kept with the combination, shown as kept, and the plan says why it offers no correction."""
    path = only_leaflet(planned)
    page = planned.post(f"{path}/facts", data={"rule": "table only", "hydroquinone": "no"}).text
    planned.post("/plan/change", data={"change": "as-kept"})
    kept = app.state.house.desk.combinations.all()[0]

    assert ("table only", False) == (kept.time_rule, kept.hydroquinone)
    assert re.search(r'value="table only"\s+checked', page) or re.search(r'value="table only" checked', page)
    assert "No correction is offered" in planned.get("/plan").text


def test_a_leaflet_for_rotary_is_a_combination_of_its_own(client: TestClient, app: FastAPI) -> None:
    """The same film, developer and dilution printed for another agitation stands beside the first."""
    client.post("/leaflets/new", data=LEAFLET)
    page = client.post("/leaflets/new", data={**LEAFLET, "time": "10", "moved": "rotary"}).text

    assert "rolled without a stop" in page
    assert 2 == len(app.state.house.desk.combinations.all())


def test_a_dilution_with_two_readings_is_asked_back(client: TestClient) -> None:
    """1:4 again as two big choices; a tap on one of them is the answer."""
    asked = client.post("/leaflets/new", data={**LEAFLET, "dilution": "1:4"})
    kept = client.post("/leaflets/new", data={**LEAFLET, "dilution": "1:4", "meant-dilution": "1+4"})

    assert 422 == asked.status_code
    assert "1:4 is printed for two things." in asked.text
    assert "Umber 1+4" in kept.text


def test_an_unknown_leaflet_is_not_found(client: TestClient) -> None:
    """No page for a key that nobody keeps."""
    assert 404 == client.get("/leaflets/00000000-0000-0000-0000-000000000009").status_code
