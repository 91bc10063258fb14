"""The demo beside the person's own: opened when asked for, apart, marked, and alone where time runs fast."""

from __future__ import annotations

import pytest
from fakes import memory_house
from fastapi.testclient import TestClient

from tankside.core.refusals import refuse
from tankside.web.app import demo_alone, make_app
from tankside.web.when_asked import WhenAsked
from tankside.wording.refusals import say
from tankside.workflows.house import House

ADDRESS = "http://localhost:8420"
LINE = "Demo: all is invented"


class Opening:
    """Opens a house in memory, and counts how often; the first `fails` times the disk is full."""

    def __init__(self, *, fails: int = 0) -> None:
        self.times = 0
        self.fails = fails
        self.house = memory_house()

    def __call__(self) -> House:
        """The same house each time."""
        self.times += 1
        if self.times <= self.fails:
            raise refuse("disk-full", ways_on=("free-some-room",), file="demo.db")
        return self.house


def demo_over(opening: Opening) -> WhenAsked:
    """The demo's pages over what `opening` opens."""
    return WhenAsked(opening, lambda house: make_app(house, say=say, invented=True))


def browser(app: object) -> TestClient:
    """A browser on its own pages."""
    headers = {"origin": ADDRESS, "sec-fetch-site": "same-origin"}
    return TestClient(app, base_url=ADDRESS, headers=headers)  # type: ignore[arg-type]


def test_it_is_opened_by_the_first_request_and_once() -> None:
    """The person's own pages open nothing; two of the demo's open it once."""
    opening = Opening()
    client = browser(make_app(memory_house(), say=say, demo=demo_over(opening)))
    assert 200 == client.get("/rolls").status_code
    assert 0 == opening.times
    assert [200, 200] == [client.get(path).status_code for path in ("/demo/", "/demo/rolls")]
    assert 1 == opening.times


def test_each_of_its_pages_says_so_and_no_other_does() -> None:
    """The line stands over the demo's pages with the way back, and over none of the person's own."""
    client = browser(make_app(memory_house(), say=say, demo=demo_over(Opening())))
    for path in ("/", "/rolls", "/plan", "/sink", "/journal", "/shelf", "/settings", "/nowhere"):
        assert LINE in client.get(f"/demo{path}").text
        assert LINE not in client.get(path).text
    assert 'href="/">Back to my own' in client.get("/demo/rolls").text


def test_what_is_done_in_it_stays_in_it() -> None:
    """A roll added in the demo stands on the demo's desk and not on the person's."""
    own, opening = memory_house(), Opening()
    client = browser(make_app(own, say=say, demo=demo_over(opening)))
    roll = {"film": "Ferry 125", "format": "135-36", "index": "125", "grain": "cubic"}
    assert 200 == client.post("/demo/rolls/add", data=roll).status_code
    assert (0, 1) == (len(own.desk.rolls.all()), len(opening.house.desk.rolls.all()))


def test_where_it_cannot_be_opened_that_is_said_and_tried_again() -> None:
    """A full disk is a refusal on a page; with room again it opens."""
    client = browser(make_app(memory_house(), say=say, demo=demo_over(Opening(fails=1))))
    refused = client.get("/demo/")
    assert 422 == refused.status_code
    assert "The disk is full" in refused.text
    assert 200 == client.get("/demo/").status_code


@pytest.mark.parametrize("path", ["/rolls", "/sink", "/plan", "/begin"])
def test_a_film_of_ones_own_is_not_run_paced(path: str) -> None:
    """On a fast clock the demo is there and every other page refuses in one sentence."""
    client = browser(demo_alone(demo_over(Opening()), say=say))
    assert 200 == client.get("/demo/rolls").status_code
    refused = client.get(path)
    assert 422 == refused.status_code
    assert "a film of your own develops no faster for it" in refused.text
    assert "Start it without --pace." in refused.text
    assert 422 == client.post(path, data={}).status_code


def test_a_fast_clock_opens_at_the_demo() -> None:
    """The address that is printed leads there."""
    answer = browser(demo_alone(demo_over(Opening()), say=say)).get("/", follow_redirects=False)
    assert (303, "/demo/") == (answer.status_code, answer.headers["location"])


def test_a_refusal_that_is_no_refusal_is_a_fault() -> None:
    """What is no refusal is not swallowed while the demo opens."""

    def broken() -> House:
        raise RuntimeError("a bug")

    demo = WhenAsked(broken, lambda house: make_app(house, say=say, invented=True))
    answer = browser(make_app(memory_house(), say=say, demo=demo)).get("/demo/")
    assert 500 == answer.status_code
