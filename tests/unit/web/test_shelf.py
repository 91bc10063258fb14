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


STOCK = {"kind": "developer", "name": "Umber", "parts": "stock", "used": "", "full": "6", "part": "2"}


def test_a_stock_says_until_when_it_is_good(client: TestClient) -> None:
    """Six months from 25 November; in a bottle twice as large, two."""
    full, half = code_of(client, **STOCK), code_of(client, **STOCK, holds="2000")

    assert "Good until 25 May." in client.get(f"/shelf/{full}").text
    assert "Good until 25 Jan." in client.get(f"/shelf/{half}").text
    assert "part full since 25 Nov in a bottle of 2000 mL" in client.get(f"/shelf/{half}").text


def test_a_litre_is_decanted_and_taken_back(client: TestClient) -> None:
    """Four codes to write; the litre leaves the shelf; taken back it stands there again."""
    code = code_of(client, **STOCK)
    page = client.post(f"/shelf/{code}/decant", data={"count": "4", "holds": "250"}).text
    assert 4 == page.split("Write")[1].split("on the bottles")[0].count("ready-code-letters")
    assert code not in client.get("/shelf").text
    assert 1 == page.count('name="act"')
    act = page.split('name="act" value="')[1].split('"')[0]
    client.post(f"/shelf/{code}/take-back", data={"act": act})
    shelf = client.get("/shelf").text

    assert code in shelf
    assert "1 bottle." in shelf


def test_too_many_bottles_are_refused_at_their_field(client: TestClient) -> None:
    """A litre does not fill five quarters; nothing is booked and what was typed stays."""
    code = code_of(client, **STOCK)
    answer = client.post(f"/shelf/{code}/decant", data={"count": "5", "holds": "250"})

    assert (422, True) == (answer.status_code, 'id="count-refused"' in answer.text)
    assert "1 bottle." in client.get("/shelf").text


def test_another_is_poured_in_topped_up_and_filtered(client: TestClient) -> None:
    """Rolls add up, and the ledger says each act."""
    into, other = (
        code_of(client, volume="500", holds="1000", used="4"),
        code_of(client, volume="300", used="2"),
    )
    client.post(f"/shelf/{into}/pour-in", data={"other": other})
    client.post(f"/shelf/{into}/top-up", data={"ml": "100"})
    client.post(f"/shelf/{into}/filtered", data={})
    page = client.get(f"/shelf/{into}").text

    for words in (f"300 mL decanted: from {other}", "100 mL topped up", "Filtered", "6 rolls used"):
        assert words in page
    assert other not in client.get("/shelf").text


def test_what_is_not_alike_is_not_poured_together(client: TestClient) -> None:
    """Nor more than there is room for."""
    into = code_of(client, volume="500", holds="1000")
    thinner = code_of(client, volume="300", parts="1+9")
    answer = client.post(f"/shelf/{into}/pour-in", data={"other": thinner})
    over = client.post(f"/shelf/{into}/top-up", data={"ml": "600"})

    assert (422, 422) == (answer.status_code, over.status_code)
    assert 'id="other-refused"' not in client.get(f"/shelf/{into}").text


def test_a_leader_is_timed_fresh_and_tonight(client: TestClient) -> None:
    """Offered while it is new; 120 s after 35 s is no for this batch."""
    code = code_of(client, **STOCK)
    assert "While it is fresh" in client.get(f"/shelf/{code}?new=yes").text
    early = client.post(f"/shelf/{code}/leader", data={"seconds": "120", "temp_c": "20"})
    assert 422 == early.status_code
    client.post(f"/shelf/{code}/leader", data={"seconds": "35", "temp_c": "20", "fresh": "yes"})
    page = client.post(f"/shelf/{code}/leader", data={"seconds": "2:00", "temp_c": "20"}).text

    assert "Its leader took 3.4 times its fresh time: not for this batch." in page
    assert "A leader was black in 35 s, while it was fresh" in page


def test_months_and_price_may_be_typed_later(client: TestClient) -> None:
    """Kept with the batch; nonsense is refused at its field."""
    code = code_of(client, **{**STOCK, "full": "", "part": ""})
    assert "How long it keeps is on its leaflet." in client.get(f"/shelf/{code}").text
    refused = client.post(f"/shelf/{code}/keeps", data={"full": "2", "part": "6", "price": "dear"})
    page = client.post(f"/shelf/{code}/keeps", data={"full": "6", "part": "2", "price": "12.50"}).text

    assert 422 == refused.status_code
    assert (True, True) == tuple(f'id="{one}-refused"' in refused.text for one in ("part", "price"))
    assert "Keeps 6 months in a full bottle, 2 months once part full; typed from its leaflet." in page


def test_the_date_opens_its_working(client: TestClient) -> None:
    """The leaflet's months beside the day they come to; a bottle without them has no such page."""
    known, unknown = code_of(client, **STOCK), code_of(client, **{**STOCK, "full": "", "part": ""})
    page = client.get(f"/shelf/{known}/why/good-until")

    assert (200, True) == (page.status_code, "Why 25 May 2027?" in page.text)
    assert f"/shelf/{known}/why/good-until" in client.get(f"/shelf/{known}").text
    assert 200 != client.get(f"/shelf/{unknown}/why/good-until").status_code


def test_a_stock_that_a_plan_uses_is_counted_in_rolls(planned: TestClient) -> None:
    """A litre at 1+1 in half a litre: 4 rolls; what nobody plans with is told by its volume alone."""
    code, other = code_of(planned, **STOCK), code_of(planned, **{**STOCK, "name": "Sepia"})
    shelf = planned.get("/shelf").text

    assert "4 rolls left at 1+1" in shelf
    assert "1000 mL left. Volume binds: 250 mL for a tankful. Good until 25 May." in shelf
    assert 200 == planned.get(f"/shelf/{code}/why/developer-left").status_code
    assert 200 != planned.get(f"/shelf/{other}/why/developer-left").status_code
