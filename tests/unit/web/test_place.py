"""The place: taps, room, tanks by their test, thermometers by ice."""

from __future__ import annotations

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient


def test_an_empty_place_leads_to_the_first_evening(client: TestClient) -> None:
    """Nothing is kept yet."""
    assert 'href="/begin"' in client.get("/place").text


def test_taps_and_room_are_kept(planned: TestClient, app: FastAPI) -> None:
    """All three, in the household's degrees."""
    planned.post("/place/taps", data={"hot": "52", "cold": "14", "room": "17"})
    place = app.state.house.desk.places.all()[0]

    assert (52.0, 14.0, 17.0) == (place.hot_c, place.cold_c, place.room_c)


def test_a_tank_is_worth_what_its_test_says(planned: TestClient, app: FastAPI) -> None:
    """500 mL at 40 C into a tank at 17 C that reads 35.8 after two minutes: 112 mL of water."""
    tank = app.state.house.desk.tanks.all()[0]
    planned.post(f"/place/tanks/{tank.key}", data={"warm": "40", "empty": "17", "read": "35.8"})

    assert 112 == round(app.state.house.desk.tanks.by_key(tank.key).worth_ml)


def test_a_steel_tank(planned: TestClient, app: FastAPI) -> None:
    """A second tank, of steel, is worth 47 mL; the first is changed to steel by one tap."""
    tanks = app.state.house.desk.tanks
    first = tanks.all()[0]
    planned.post("/place/tanks", data={"tank_ml": "500", "tank_name": "bright", "tank_kind": "steel"})
    page = planned.post(f"/place/tanks/{first.key}/made-of", data={"tank_kind": "steel"}).text

    assert {"steel"} == {one.kind for one in tanks.all()}
    assert 47 == next(round(one.worth_ml) for one in tanks.all() if one.name == "bright")
    assert "500 mL, steel" in page


def test_a_thermometer_is_put_right_by_ice(planned: TestClient, app: FastAPI) -> None:
    """0.3 in ice is 0.3 too high."""
    one = app.state.house.desk.thermometers.all()[0]
    page = planned.post(f"/place/thermometers/{one.key}", data={"ice": "0.3"}).text

    assert -0.3 == app.state.house.desk.thermometers.by_key(one.key).offset_c
    assert "reads 0.3 °C too high" in page


@pytest.mark.parametrize(
    ("path", "sent"),
    [
        ("/place/taps", {"hot": "14", "cold": "52"}),
        ("/place/taps", {"room": "cosy"}),
        ("/place/tanks", {"tank_ml": "large"}),
        ("/place/tanks/{tank}", {"warm": "40", "empty": "17", "read": "41"}),
        ("/place/thermometers/{thermometer}", {"ice": "5"}),
    ],
)
def test_what_cannot_be_is_refused_at_its_field(
    planned: TestClient, app: FastAPI, path: str, sent: dict[str, str]
) -> None:
    """One sentence at the field, and the test stays open."""
    desk = app.state.house.desk
    keys = {"tank": desk.tanks.all()[0].key, "thermometer": desk.thermometers.all()[0].key}
    answer = planned.post(path.format(**keys), data=sent)

    assert (422, 1) == (answer.status_code, answer.text.count('class="refused"'))


def test_another_tank_is_offered_to_the_next_plan(planned: TestClient, app: FastAPI) -> None:
    """By its volume and the person's name for it."""
    planned.post("/place/tanks", data={"tank_ml": "1000", "tank_name": "tall"})

    assert {"tall"} < {one.name for one in app.state.house.desk.tanks.all()}
