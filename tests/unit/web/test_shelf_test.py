"""The test of a bottle at the shelf: what is asked, what it says, what stays named."""

from __future__ import annotations

import re

import pytest
from fastapi.testclient import TestClient

FIXER = {"kind": "fixer", "name": "Fixer", "parts": "1+4", "volume": "1000", "used": "15", "cap": "white"}
PIECE = {"film": "Ferry 125", "clears": "75", "temp": "15", "fresh": "45", "fresh_temp": "20"}


def bottle(client: TestClient, **changes: str) -> str:
    """The path of a bottle put on the shelf."""
    answer = client.post("/shelf/mix", data={**FIXER, **changes}, follow_redirects=False)
    return answer.headers["location"].removesuffix("?new=yes")


@pytest.mark.parametrize(
    ("clears", "temp", "answer", "words"),
    [
        ("75", "15", "5 to 10 rolls left", "at 15.0 °C on 7 Mar, fresh 45 s at 20.0 °C: 1.2 times."),
        ("92", "20", "Discard it", "Its clearing time has doubled: discard it, whatever the count says."),
    ],
)
def test_a_season_of_fixer_and_its_test_piece(
    client: TestClient, clears: str, temp: str, answer: str, words: str
) -> None:
    """15 of 20 to 25 used: 75 s at 15 C is 1.18 times the fresh 45 s at 20 C; 92 s at 20 C is 2.04 times."""
    path = bottle(client)
    page = client.post(f"{path}/test", data={**PIECE, "clears": clears, "temp": temp}).text

    assert answer in page
    assert words in re.sub(r"on \d+ \w+,", "on 7 Mar,", page)
    assert "15 rolls used of 20 to 25." in client.get("/shelf").text


def test_a_test_is_due_from_half_the_count_on(client: TestClient) -> None:
    """The shelf says so until one is noted."""
    path = bottle(client)
    before = client.get("/shelf").text
    client.post(f"{path}/test", data=PIECE)

    assert "Test before the next film." in before
    assert "One is doubtful." in before
    assert "Test before" not in client.get("/shelf").text


def test_a_fresh_bottle_times_its_own_measure(client: TestClient) -> None:
    """Nothing went through it: what it takes now is what later tests are judged by."""
    path = bottle(client, used="")
    asked = client.get(f"{path}/test").text
    page = client.post(f"{path}/test", data={"film": "Ferry 125", "clears": "30", "temp": "20"}).text

    assert "It is fresh: it cleared in" in asked
    assert "Cleared in 30 s at 20.0 °C, Ferry 125, fresh." in page


def test_a_test_taken_back_stays_named(client: TestClient) -> None:
    """It is struck out with its reason, and the ledger has both lines."""
    path = bottle(client)
    page = client.post(f"{path}/test", data={**PIECE, "clears": "92", "temp": "20"}).text
    acts = re.findall(r'name="act" value="([^"]+)"', page)
    after = client.post(f"{path}/take-back", data={"act": acts[-1]}).text

    assert 1 == len(set(acts))
    assert "<s>Cleared in 92 s at 20.0 °C, Ferry 125</s>, taken back" in after
    assert "5 to 10 rolls left" in after
    assert "Test taken back" in after


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"clears": "2"}, "clears"),
        ({"temp": "45"}, "temp"),
        ({"film": ""}, "film"),
        ({"fresh": "0.5"}, "fresh"),
    ],
)
def test_what_is_no_test_is_refused_at_its_field(
    client: TestClient, changes: dict[str, str], field: str
) -> None:
    """Nothing is booked, and what was typed stays."""
    path = bottle(client)
    answer = client.post(f"{path}/test", data={**PIECE, **changes})

    assert (422, True) == (answer.status_code, f'id="{field}-refused"' in answer.text)
    assert "Not tested yet." in client.get(path).text


def test_a_stop_bath_counts_by_its_label_and_ends_by_its_indicator(client: TestClient) -> None:
    """Published: 12 a litre (Anchell 2008, p. 268); its label's 18 go before; an indicator turned ends it."""
    path = bottle(client, kind="stop bath", name="Stop", parts="1+19", used="9")
    published = client.get("/shelf").text
    client.post(f"{path}/label", data={"label": "18"})
    by_label = client.get("/shelf").text
    turned = client.post(f"{path}/test", data={"turned": "yes", "ph": "5.8"}).text

    assert "3 rolls left" in published
    assert "9 rolls used of 12, the one count published" in published
    assert "9 rolls left" in by_label
    assert "9 rolls used of 18 by its label." in by_label
    assert "Its indicator has turned" in turned
    assert "Indicator turned, pH 5.8" in turned


def test_a_developer_has_no_test_here(client: TestClient) -> None:
    """Nobody is sent to a page that cannot judge it."""
    path = bottle(client, kind="developer", name="Umber", parts="stock", used="")

    assert 404 == client.get(f"{path}/test").status_code


def test_wetting_agent_is_told_by_its_volume(client: TestClient) -> None:
    """A litre at 1+199 in 300 mL a roll is 1.5 mL each: 666 rolls, told as about 600."""
    bottle(client, kind="wetting agent", name="Wetting agent", parts="stock", volume="1000", used="")

    assert "about 600 rolls left" in client.get("/shelf").text


def test_what_to_mind_stands_where_it_is_handled(client: TestClient) -> None:
    """Waste of a fixer at its discarding, heat and drying at its test, every kind at mixing."""
    path = bottle(client)

    page = client.get(path).text
    assert "into its own labelled can" in page
    assert "Never heat or dry used fixer." in client.get(f"{path}/test").text
    assert "Water first, then the acid." in client.get("/shelf/mix").text


def test_tonight_takes_stock_and_a_fixer_that_needs_no_test(planned: TestClient) -> None:
    """A litre less the 250 mL of a 1+1 tankful is the broken line; of two fixers the untested one waits."""
    stock = {"kind": "developer", "name": "Umber", "parts": "stock", "volume": "1000"}
    planned.post("/shelf/mix", data=stock)
    due, good = bottle(planned, used="12"), bottle(planned, used="13")
    planned.post(f"{good}/test", data={**PIECE, "clears": "50", "temp": "20"})
    roll = planned.get("/rolls").text.split('name="roll" value="')[1].split('"')[0]
    planned.app.state.house.clock.seconds += 60  # type: ignore[attr-defined]
    plan = planned.post("/plan/rolls", data={"roll": roll}).text
    shelf = planned.get("/shelf").text

    assert good.removeprefix("/shelf/") in plan
    assert due.removeprefix("/shelf/") not in plan
    assert "Broken line: 750 mL after tonight." in shelf
    assert 'class="after"' in shelf
    assert "Test before tonight." not in shelf
