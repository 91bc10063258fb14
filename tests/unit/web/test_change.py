"""Changing a plan: one tap each, what is refused with its ways on, and what was assumed."""

from __future__ import annotations

import re

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient
from planned import TYPED


def tap(client: TestClient, change: str, **fields: str) -> str:
    """The page after one change."""
    return client.post("/plan/change", data={"change": change, **fields}).text


def test_another_roll_and_a_second_tank_are_one_tap_each(planned: TestClient) -> None:
    """B is added after A, and with a second tank it begins sooner."""
    assert "B is added." in tap(planned, "another-roll")
    assert re.search(r"B is poured [\d:]+ after A instead of [\d:]+\.", tap(planned, "second-tank"))


def test_a_roll_is_left_out_again(planned: TestClient) -> None:
    """Two rolls, then the first one by its button."""
    page = tap(planned, "another-roll")
    found = re.search(r'value="(leave-out:[0-9a-f-]+)"', page)
    assert found is not None

    assert "B is left out." in tap(planned, found[1])


def test_it_begins_later_by_a_tap_or_at_a_time(planned: TestClient) -> None:
    """A quarter of an hour, or the clock."""
    assert 'poured at <b class="figures">20:00</b>' in tap(planned, "later:900")
    assert 'poured at <b class="figures">21:10</b>' in tap(planned, "starts", starts="21:10")


@pytest.mark.parametrize(
    ("change", "fields", "gone"),
    [
        ("fix", {"fix": "6:00"}, "Fix 8:00."),
        ("stop", {"stop": "0:45"}, "Stop bath 1:00."),
        ("wash", {"wash": "3:00", "fills": "6"}, "Wash in 4 fills"),
        ("wetting", {"wetting": "2:00"}, "Wetting bath 1:00."),
        ("room", {"room": "17"}, "The room is at"),
        ("fixer-parts", {"fixer-parts": "1+9"}, "Fixer 1+4"),
        ("agitation", {"first": "60", "then": "5", "every": "30"}, "Inverted for the first 30 s"),
    ],
)
def test_what_was_assumed_and_is_told_is_assumed_no_more(
    planned: TestClient, change: str, fields: dict[str, str], gone: str
) -> None:
    """Each assumption has its field; once told it leaves the list."""
    assert gone in planned.get("/plan/change").text
    assert gone not in tap(planned, change, **fields)


def test_another_agitation_makes_the_time_a_guess(planned: TestClient) -> None:
    """The plan says so, and never converts silently."""
    tap(planned, "agitation", first="60", then="5", every="30")

    assert "take it as a first guess" in planned.get("/plan").text


@pytest.mark.parametrize(
    ("change", "fields", "field"),
    [
        ("fix", {"fix": "soon"}, "fix"),
        ("starts", {"starts": "evening"}, "starts"),
        ("wash", {"wash": "5:00", "fills": "0"}, "fills"),
        ("agitation", {"first": "30", "then": "90", "every": "60"}, "then"),
        ("room", {"room": "2"}, "room"),
        ("second-tank", {"tank_ml": "big"}, "tank_ml"),
        ("fixer-parts", {"fixer-parts": "1:4"}, "fixer-parts"),
    ],
)
def test_what_cannot_be_read_is_refused_at_its_field(
    planned: TestClient, change: str, fields: dict[str, str], field: str
) -> None:
    """One sentence under it, what was typed stays, the plan is as it was."""
    answer = planned.post("/plan/change", data={"change": change, **fields})

    assert (422, True) == (answer.status_code, f'id="{field}-refused"' in answer.text)


def test_too_little_stock_is_refused_with_its_ways_on(client: TestClient, app: FastAPI) -> None:
    """80 mL a roll at 1+4: 600 mL hold 120 of 160; one roll, 800 mL, or 1+2 with its time."""
    client.post("/begin", data={**TYPED, "dilution": "1+4", "tank": "600"})
    combination = app.state.house.desk.combinations.all()[0]
    client.post(f"/leaflets/{combination.key}/least", data={"least": "80"})
    tap(client, "as-kept")
    page = tap(client, "another-roll")

    assert "600 mL at 1+4 hold 120 mL of stock, and 2 rolls need 160 mL." in page
    assert "Put only 1 roll in" in page
    assert 'value="800 ml"' in page
    assert "dilution=1%2B2" in page
    assert "B" not in re.findall(r"<td>(.)</td>", page)


def test_the_larger_tank_is_taken_and_the_roll_with_it(client: TestClient, app: FastAPI) -> None:
    """800 mL holds exactly 160: one tap, and both rolls share it."""
    client.post("/begin", data={**TYPED, "dilution": "1+4", "tank": "600"})
    combination = app.state.house.desk.combinations.all()[0]
    client.post(f"/leaflets/{combination.key}/least", data={"least": "80"})
    tap(client, "as-kept")
    tap(client, "another-roll", before="larger-tank", tank_ml="800 ml")
    plan = app.state.house.desk.plans.latest()

    assert [(800.0, 2)] == [(one.tank.volume_ml, len(one.rolls)) for one in plan.tankfuls]


def test_what_is_no_change_is_refused(planned: TestClient) -> None:
    """A made-up word changes nothing."""
    assert 422 == planned.post("/plan/change", data={"change": "paint-it"}).status_code
