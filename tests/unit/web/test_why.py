"""Why each number of a plan is what it is."""

from __future__ import annotations

import pytest
from fastapi.testclient import TestClient
from planned import TYPED

TAPS = {"liquid": "develop-A", "hot": "52", "cold": "14"}


def begun(client: TestClient, **changes: str) -> TestClient:
    """A browser after six answers."""
    client.post("/begin", data={**TYPED, **changes})
    return client


def test_the_time_with_its_doubt_and_every_source(client: TestClient) -> None:
    """9:00 within a quarter of a minute: leaflet and tank as lengths, parts of the doubt."""
    page = begun(client).get("/plan/why/time").text

    for words in (
        "9:00 ± 0:15",
        "Nine times in ten",
        "lies between 8:45 and 9:15.",
        "From the leaflet",
        "The tank is warmer",
        "rate with temperature",
        "Read the tank at one minute.",
    ):
        assert words in page
    assert 2 == page.count('<g class="doubt">')


@pytest.mark.parametrize("about", ["mix-to", "hot", "cold", "end"])
def test_each_number_has_its_page(client: TestClient, about: str) -> None:
    """Temperature to mix to, waters, end: each with an answer, a scale and what it was worked out from."""
    begun(client, reads="")
    client.post("/plan/ready/taps", data=TAPS)
    answer = client.get(f"/plan/why/{about}")

    assert 200 == answer.status_code
    assert '<p class="answer">' in answer.text
    assert "All figures and sources" in answer.text


def test_an_end_is_said_by_the_clock(client: TestClient) -> None:
    """Hours and minutes, up to the whole minute, and never as a length from the pour."""
    assert "± 1 min" in begun(client).get("/plan/why/end").text


def test_a_start_of_a_second_tankful(client: TestClient) -> None:
    """With a second roll and one tank it says that the tank decides."""
    begun(client)
    client.post("/plan/change", data={"change": "another-roll"})

    assert "The same tank" in client.get("/plan/why/second-start").text


def test_what_has_no_working_is_not_found(client: TestClient) -> None:
    """Neither an unknown number nor one without a plan."""
    assert 404 == client.get("/plan/why/time").status_code
    assert 404 == begun(client).get("/plan/why/luck").status_code


def test_a_time_of_ones_own_is_taken_and_given_back(client: TestClient) -> None:
    """10:00 stands in place of the worked-out one, called one's own; then the other again."""
    begun(client)
    own = client.post("/plan/why/time", data={"own": "10:00", "then": "own", "tankful": "A"}).text
    again = client.post("/plan/why/time", data={"then": "worked-out", "tankful": "A"}).text

    assert "Your own time" in own
    assert "Why 10:00?" in own
    assert "Why 9:00?" in again


def test_a_time_that_can_be_read_two_ways_is_asked_back(client: TestClient) -> None:
    """9.30 is no time until somebody says which."""
    answer = begun(client).post("/plan/why/time", data={"own": "9.30", "then": "own", "tankful": "A"})

    assert (422, True) == (answer.status_code, 'id="own-refused"' in answer.text)


@pytest.mark.parametrize(
    ("about", "words"),
    [
        (
            "wash",
            (
                "4 fills of 5:00",
                "Enough if half",
                "The slower source",
                "Planned on: half leaves in 60 s",
                "too good",
                "well below",
            ),
        ),
        ("fix", ("8:00", "Tabular or unknown grain", "At least, at most")),
        ("least-stock", ("250 mL", "The tank holds", "Note the leaflet")),
        ("contrast", ("0.56", "Tonight", "from roll to roll", "in place of ± ")),
        ("time", ("The tank over its bath", "A step strip developed for")),
    ],
)
def test_the_working_of_each_number(client: TestClient, about: str, words: tuple[str, ...]) -> None:
    """Answer, sources, doubt or its absence, what would narrow it; nothing of a residual under the floor."""
    page = begun(client).get(f"/plan/why/{about}").text

    for one in words:
        assert one in page
    assert "0.001 g/m" not in page


@pytest.mark.parametrize("about", ["wash", "time", "contrast"])
def test_a_plot_stands_beside_its_table(client: TestClient, about: str) -> None:
    """The same figures drawn and written."""
    page = begun(client).get(f"/plan/why/{about}").text

    assert '<svg class="plot"' in page
    assert page.index('<svg class="plot"') < page.index("<table>")


def test_why_a_fixer_has_rolls_left(client: TestClient) -> None:
    """From the bottle's page to two counts; another number of it is refused, another bottle not found."""
    told = {"kind": "fixer", "name": "Fixer", "parts": "1+4", "volume": "1000", "used": "15"}
    where = client.post("/shelf/mix", data=told, follow_redirects=False).headers["location"].split("?")[0]

    assert f"{where}/why/fixer-left" in client.get(where).text
    assert "5 to 10 rolls" in client.get(f"{where}/why/fixer-left").text
    assert 422 == client.get(f"{where}/why/stop-left").status_code
    assert 404 == client.get(f"{where}/why/luck").status_code
    assert 404 == client.get("/shelf/AAAA-A/why/fixer-left").status_code


def test_why_a_stop_bath_has_rolls_left(client: TestClient) -> None:
    """From the bottle's page: its label's count less what it took; the indicator ends it."""
    told = {
        "kind": "stop bath",
        "name": "Stop",
        "parts": "1+19",
        "volume": "1000",
        "used": "9",
        "label": "15",
    }
    where = client.post("/shelf/mix", data=told, follow_redirects=False).headers["location"].split("?")[0]
    working = client.get(f"{where}/why/stop-left").text
    client.post(f"{where}/test", data={"turned": "yes"})

    assert f"{where}/why/stop-left" in client.get(where).text
    for words in (
        "Why 6 rolls?",
        "By the count on its label",
        "15 rolls a litre, less 9 used: 6.",
        "Acid left in a litre",
    ):
        assert words in working
    assert "Its indicator has turned" in client.get(f"{where}/why/stop-left").text
    assert 422 == client.get(f"{where}/why/fixer-left").status_code


@pytest.mark.parametrize("about", ["contrast", "least-stock", "fix", "wash"])
def test_the_plan_has_a_door_to_each_working(client: TestClient, about: str) -> None:
    """One line under the rest; it leads to a page."""
    page = begun(client).get("/plan").text

    assert f"/plan/why/{about}?tankful=A" in page


def test_the_way_back_to_a_tankful_of_the_journal(client: TestClient) -> None:
    """Who comes from the journal goes back to the same tankful of the same run."""
    run = "00000000-0000-0000-0000-000000000007"
    page = begun(client).get(f"/plan/why/wash?tankful=A&back=journal&run={run}").text

    assert f'href="/journal/{run}/A">Back to tankful A</a>' in page
