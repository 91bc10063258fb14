"""The shelf: bottles with what is left in them, their ledgers, and pouring away."""

from __future__ import annotations

import pytest
from fastapi.testclient import TestClient

FIXER = {"kind": "fixer", "name": "Fixer", "parts": "1+4", "volume": "1000", "used": "15", "cap": "white"}


def code_of(client: TestClient, **changes: str) -> str:
    """The code of a bottle put on the shelf."""
    answer = client.post("/shelf/mix", data={**FIXER, **changes}, follow_redirects=False)
    return answer.headers["location"].removeprefix("/shelf/").removesuffix("?new=yes")


def test_an_empty_shelf_says_how_to_begin(client: TestClient) -> None:
    """A sentence and one way on."""
    page = client.get("/shelf").text

    assert "Nothing on the shelf." in page
    assert "/shelf/mix" in page


def test_a_litre_of_fixer_after_fifteen_rolls(client: TestClient) -> None:
    """Sources say 20 and 25 a litre: 5 to 10 are left, never a mean."""
    code = code_of(client)
    page = client.get("/shelf").text

    for words in (code, "5 to 10 rolls left", "15 rolls used of 20 to 25. Two sources differ.", "white cap"):
        assert words in page


def test_a_bottle_shows_its_ledger(client: TestClient) -> None:
    """Mixed, then the rolls it had, with a surface drawn."""
    page = client.get(f"/shelf/{code_of(client)}").text

    assert "1000 mL mixed" in page
    assert "15 rolls went through it" in page
    assert "shelf-levels" in page


def test_a_contaminated_bottle_is_named(client: TestClient) -> None:
    """Said on the shelf and on its page; it is no longer counted in rolls."""
    code = code_of(client)
    client.post(f"/shelf/{code}/contaminated", data={"words": "developer"})
    page = client.get("/shelf").text

    assert "1 is contaminated." in page
    assert "rolls left" not in page


def test_a_discarded_bottle_leaves_the_shelf_and_keeps_its_ledger(client: TestClient) -> None:
    """Poured away once it was confirmed."""
    code = code_of(client)
    client.post(f"/shelf/{code}/discard")

    assert code not in client.get("/shelf").text
    assert "Poured away" in client.get(f"/shelf/{code}").text


@pytest.mark.parametrize(
    ("field", "typed"), [("name", ""), ("parts", "some"), ("volume", "much"), ("used", "few")]
)
def test_what_cannot_be_read_is_refused_at_its_field(client: TestClient, field: str, typed: str) -> None:
    """What was typed stays."""
    answer = client.post("/shelf/mix", data={**FIXER, field: typed})

    assert (422, True) == (answer.status_code, f'id="{field}-refused"' in answer.text)


def test_the_next_plan_takes_it(client: TestClient) -> None:
    """Fixer on the shelf is the fixer of a plan made from rolls."""
    six = {
        "film": "Ferry 200", "format": "135-36", "index": "200", "developer": "Umber", "dilution": "1+1",
        "time": "9:30", "temp": "20", "tank": "500", "reads": "21.0", "answered": "reads",
    }  # fmt: skip
    client.post("/begin", data=six)
    code = code_of(client, used="2")
    rolls = client.get("/rolls").text
    roll = rolls.split('name="roll" value="')[1].split('"')[0]
    client.app.state.house.clock.seconds += 60  # type: ignore[attr-defined]

    assert code in client.post("/plan/rolls", data={"roll": roll}).text
