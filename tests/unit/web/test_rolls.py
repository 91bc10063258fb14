"""The Rolls page over a desk in memory."""

from __future__ import annotations

import re

import pytest
from fastapi.testclient import TestClient

NEW = {
    "film": "Ferry 200",
    "format": "135-36",
    "index": "200",
    "camera": "black box",
    "exposed": "2026-09-12",
}


def add(client: TestClient, **changes: str) -> str:
    """Add a roll and return its code."""
    answer = client.post("/rolls/add", data={**NEW, **changes}, follow_redirects=False)
    return answer.headers["location"].removeprefix("/rolls/").removesuffix("?new=yes")


def test_an_empty_page_says_how_to_begin(client: TestClient) -> None:
    """No roll yet: a sentence and one way on."""
    page = client.get("/rolls").text

    assert "No roll is waiting." in page
    assert "Add a roll" in page


def test_a_new_roll_shows_its_code_to_write(client: TestClient) -> None:
    """Four characters and a check character, and the roll stands in the list."""
    code = add(client)

    assert re.fullmatch(r"[2-9A-Z]{4}-[2-9A-Z]", code)
    assert "Write this on its sticker." in client.get(f"/rolls/{code}?new=yes").text
    assert code in client.get("/rolls").text


def test_film_and_camera_are_preset_to_the_last(client: TestClient) -> None:
    """The next roll is mostly like the last."""
    add(client)
    page = client.get("/rolls/add").text

    assert 'value="Ferry 200"' in page
    assert 'value="black box"' in page


def test_found_by_its_code_however_it_is_typed(client: TestClient) -> None:
    """Small letters and no dash will do."""
    code = add(client)
    answer = client.get("/rolls", params={"find": code.lower().replace("-", "")}, follow_redirects=False)

    assert (303, f"/rolls/{code}") == (answer.status_code, answer.headers["location"])


@pytest.mark.parametrize(("field", "typed"), [("index", "fast"), ("exposed", "yesterday"), ("film", " ")])
def test_what_cannot_be_read_is_refused_at_its_field(client: TestClient, field: str, typed: str) -> None:
    """Everything typed stays, nothing is kept."""
    answer = client.post("/rolls/add", data={**NEW, field: typed})

    assert 422 == answer.status_code
    assert f'id="{field}-refused"' in answer.text
    assert 'value="black box"' in answer.text
    assert "0 waiting" in client.get("/rolls").text


def test_a_piece_names_the_roll_it_was_cut_from(client: TestClient) -> None:
    """Owner, precious and piece-of are kept and shown again."""
    whole = add(client)
    piece = add(client, piece_of=whole, precious="yes", owner="a guest", format="135-length", length_m="0.6")
    page = client.get(f"/rolls/{piece}").text

    assert f'value="{whole}"' in page
    assert 'value="a guest"' in page
    assert "0.6 m of 135" in client.get("/rolls").text


def test_changed_but_for_its_code(client: TestClient) -> None:
    """Editing keeps the code."""
    code = add(client)
    client.post(f"/rolls/{code}", data={**NEW, "index": "400"})

    assert "EI 400" in client.get("/rolls").text
    assert code in client.get("/rolls").text
