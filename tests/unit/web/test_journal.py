"""The Journal's pages over invented evenings: what they say, what they keep, what they refuse."""

from __future__ import annotations

import re

import pytest
from evening_clock import SetClock
from fastapi import FastAPI
from fastapi.testclient import TestClient
from season import DAY_S, Season

from tankside.core.review.evidence import NextMorning, NotAsked
from tankside.workflows.read_journal import Which, read_tankful

PICTURE = b"\xff\xd8\xff\xe1\x00\x08placed\xff\xda\x00\x04xy\x12\x34\xff\xd9"


@pytest.fixture
def season(app: FastAPI) -> Season:
    """Two evenings, the second late and long, looked at two days later."""
    season = Season(app.state.house)
    assert isinstance(season.house.clock, SetClock)
    season.house.clock.seconds = 3 * DAY_S
    return season


@pytest.fixture
def which(season: Season) -> Which:
    """The evening with something to say about it."""
    season.evening()
    return season.evening(developed_s=579.0, fix_s=347.0)


def test_runs_stand_at_their_day_and_ask_once(client: TestClient, which: Which) -> None:
    """Oldest first, the last one named above, each asked about until it is answered."""
    text = client.get("/journal").text

    assert ["25 November, 19:44", "26 November, 19:44"] == re.findall(r'journal-day">([^<]+)<', text)
    assert "The last run: 26 November" in text
    assert 2 == text.count("not judged yet")
    client.post(f"/journal/{which.run}/morning", data={"shadows": "right", "contrast": "right"})
    assert 1 == client.get("/journal").text.count("not judged yet")


def test_a_tankful_says_its_verdict_and_what_differed(client: TestClient, which: Which) -> None:
    """In words, in a picture, in tables; nothing inline."""
    text = client.get(f"/journal/{which.run}/A").text

    assert "Counts as 9:40 of development at 20.0 °C where 9:30 was meant" in text
    assert re.search(r"Contrast against the aim</th><td>\+1 % \(\S+ to \+\d\)</td>", text)
    assert re.search(r"<strong>Drained 9 s late\.</strong> Too small to see in the film\.", text)
    assert re.search(r"<strong>Fix 47 s longer\.</strong> Harmless", text)
    assert re.search(r'<th scope="row">Fix</th><td[^>]*>5:00</td><td[^>]*>5:47</td>', text)
    assert not re.search(r"<style|<script(?! [^>]*src=)|\sstyle=|\son[a-z]+=", text)


def test_a_run_of_one_tankful_is_its_page(client: TestClient, which: Which) -> None:
    """The run leads straight to its only tankful."""
    answer = client.get(f"/journal/{which.run}", follow_redirects=False)

    assert (303, f"/journal/{which.run}/A") == (answer.status_code, answer.headers["location"])


def test_from_an_answer_to_a_row(client: TestClient, season: Season, which: Which) -> None:
    """Harsh: half of it is offered, taken, and said as taken; the old time is kept."""
    text = client.post(f"/journal/{which.run}/morning", data={"shadows": "right", "contrast": "harsh"}).text
    button = re.search(r'name="proposal" value="([^"]+)".*?>(Take half of it: [^<]+)<', text, re.DOTALL)
    assert button is not None
    assert "Leave it as it is" in text
    taken = client.post(f"/journal/{which.run}/proposal", data={"proposal": button[1], "do": "take"}).text

    assert "The next plan uses it" in taken
    assert "Take half of it" not in taken
    rows = season.house.desk.combinations.all()[0].rows
    assert ["leaflet", "accepted"] == [row.source for row in rows]


def test_left_as_it_is(client: TestClient, season: Season, which: Which) -> None:
    """Leaving it takes the offer away and adds nothing."""
    text = client.post(f"/journal/{which.run}/morning", data={"shadows": "right", "contrast": "flat"}).text
    proposal = re.findall(r'name="proposal" value="([^"]+)"', text)[0]
    after = client.post(f"/journal/{which.run}/proposal", data={"proposal": proposal, "do": "leave"}).text

    assert "Take" not in after
    assert 1 == len(season.house.desk.combinations.all()[0].rows)


def test_never_asked_again(client: TestClient, season: Season, which: Which) -> None:
    """One button, and the question is gone for ever."""
    text = client.post(f"/journal/{which.run}/morning", data={"do": "never"}).text

    assert "You are not asked about this tankful" in text
    assert NotAsked() == read_tankful(season.house.desk, which).said


def test_half_an_answer_is_asked_for(client: TestClient, season: Season, which: Which) -> None:
    """One row alone is refused at the other, and what was chosen stays chosen."""
    answer = client.post(f"/journal/{which.run}/morning", data={"shadows": "thin"})

    assert 422 == answer.status_code
    assert re.search(r'value="thin" checked', answer.text)
    assert 'id="contrast-refused"' in answer.text
    assert read_tankful(season.house.desk, which).said is None


def test_a_photograph_comes_with_the_answers(client: TestClient, season: Season, which: Which) -> None:
    """Kept without its tags, shown on the page and served; another file is refused and nothing is kept."""
    answers = {"shadows": "right", "contrast": "right"}
    refused = client.post(
        f"/journal/{which.run}/morning",
        data=answers,
        files={"photograph": ("a.jpg", b"GIF89a", "image/jpeg")},
    )
    assert 422 == refused.status_code
    assert 'id="photograph-refused"' in refused.text
    assert read_tankful(season.house.desk, which).said is None
    text = client.post(
        f"/journal/{which.run}/morning", data=answers, files={"photograph": ("a.gif", PICTURE, "text/plain")}
    ).text
    (source,) = re.findall(r'<img src="([^"]+)"', text)
    shown = client.get(source)

    assert ("image/jpeg", 200) == (shown.headers["content-type"], shown.status_code)
    assert b"placed" not in shown.content
    assert NextMorning("right", "right") == read_tankful(season.house.desk, which).said
    assert 404 == client.get(f"/journal/{which.run}/photograph/{'0' * 64}").status_code


def test_two_densities_and_what_refuses_them(client: TestClient, which: Which) -> None:
    """A comma is read; nonsense is refused at its field; thin shadows ask for another index."""
    typed = {"shadow_d": "0,18", "highlight_d": "1.03", "shadow_aim_d": "0.35", "highlight_aim_d": "1.20"}
    bad = client.post(f"/journal/{which.run}/densities", data={**typed, "slope": "steep"})
    assert 422 == bad.status_code
    assert 'id="slope-refused"' in bad.text
    assert 'value="0,18"' in bad.text
    text = client.post(f"/journal/{which.run}/densities", data={**typed, "slope": "0.5"}).text

    assert "Expose the next roll at EI 80" in text


@pytest.mark.parametrize("path", ["/journal/nonsense", f"/journal/{'0' * 32}", f"/journal/{'0' * 32}/A"])
def test_no_such_run_is_said(client: TestClient, path: str) -> None:
    """A refusal with a way on, never a fault."""
    assert 422 == client.get(path).status_code


def test_the_next_plan_says_what_changed_and_why(client: TestClient, season: Season, which: Which) -> None:
    """After taking half of it the plan is shorter, and says instead of what, and because of what."""
    code = season.house.desk.rolls.all()[0].code
    before = client.post("/plan/rolls", data={"roll": code}).text
    text = client.post(f"/journal/{which.run}/morning", data={"shadows": "right", "contrast": "harsh"}).text
    proposal = re.findall(r'name="proposal" value="([^"]+)"', text)[0]
    client.post(f"/journal/{which.run}/proposal", data={"proposal": proposal, "do": "take"})
    assert isinstance(season.house.clock, SetClock)
    season.house.clock.seconds += 60
    after = client.post("/plan/rolls", data={"roll": code}).text

    assert "Changed:" not in before
    assert re.search(r"Changed:</strong> \d:\d\d instead of 9:30\. You called the contrast harsh", after)
