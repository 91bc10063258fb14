"""No page of the demo, and nothing that the sink is sent, shows more digits than its doubt allows."""

from __future__ import annotations

import json
from html.parser import HTMLParser
from uuid import UUID

import pytest
from browser.sink_states import STATES, state_screen
from digits import json_too_fine, too_fine
from evening_clock import SetClock, at
from fakes import memory_house
from fastapi.testclient import TestClient

from tankside.core.run.commands import Command, PourBath, TakeReading
from tankside.demo.lay_out import lay_out
from tankside.web.app import make_app
from tankside.web.plain_json import plain
from tankside.wording.refusals import say
from tankside.workflows.house import House
from tankside.workflows.open_run import open_run

ADDRESS = "http://localhost:8420"
FIRST = (
    "/", "/contents", "/rolls", "/shelf", "/plan", "/sink", "/journal", "/densities", "/negatives", "/place",
    "/leaflets", "/leaflets/new", "/shelf/mix", "/settings",
)  # fmt: skip
SEEN = ("aria-label", "aria-valuetext", "alt", "title", "value", "placeholder")
BARE = {"densities": "density", "strip": "density", "why/contrast": "density", "why/wash": "g/m²"}
"""What numbers without a unit are on the pages of this kind: densities and contrasts go to 0.01."""

RUN = UUID(int=77)
MOST = 150


class Read(HTMLParser):
    """What a person or a screen reader is told by a page, the JSON in it, and where it leads."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.told: list[str] = []
        self.json: list[str] = []
        self.leads: list[str] = []
        self._inside = False
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Words and data in attributes, and links."""
        given = {name: value for name, value in attrs if value}
        self._inside = self._inside or tag in ("script", "style")
        self.told += [given[name] for name in SEEN if name in given]
        self.json += [value for name, value in given.items() if name.startswith("data-") and value[0] == "{"]
        self.leads += [given["href"]] if tag == "a" and "href" in given else []

    def handle_endtag(self, tag: str) -> None:
        """Scripts and styles end."""
        if tag in ("script", "style"):
            self._inside = False

    def handle_data(self, data: str) -> None:
        """Text."""
        if not self._inside and data.strip():
            self.told.append(" ".join(data.split()))


@pytest.fixture(scope="module")
def house() -> House:
    """The invented season, and its evening begun: the developer is in, and was read between two marks."""
    house = memory_house()
    plan = lay_out(house, at(0.0))
    open_run(house.desk, house.live_runs, RUN, plan.key, at(60.0))
    for number, (asked, seconds) in enumerate(
        ((PourBath("A.develop"), 120.0), (TakeReading("tank", "A", 19.43), 185.0))
    ):
        house.live_runs.note(RUN, Command(f"phone:{number}", asked, "phone", RUN), at(seconds))
    assert isinstance(house.clock, SetClock)
    house.clock.seconds = 240.0
    return house


@pytest.fixture(scope="module")
def pages(house: House) -> dict[str, Read]:
    """Every page that can be reached by links, read; the demo has a few dozen."""
    client = TestClient(
        make_app(house, say=say, invented=True),
        base_url=ADDRESS, headers={"origin": ADDRESS, "sec-fetch-site": "same-origin"},
    )  # fmt: skip
    read: dict[str, Read] = {}
    to_do = [*FIRST, f"/sink/{RUN}"]
    while to_do and len(read) < MOST:
        path = to_do.pop(0).partition("#")[0]
        if not path.startswith("/") or path.startswith("/static") or path in read:
            continue
        answer = client.get(path)
        if "text/html" in answer.headers.get("content-type", ""):
            read[path] = Read(answer.text)
            to_do += read[path].leads
    return read


def test_every_page_of_the_demo(pages: dict[str, Read]) -> None:
    """Words, fields, labels and the data of each, to the step of its units."""
    assert len(pages) > 40
    assert any("/plan/why/" in path for path in pages)
    fine = {}
    for path, page in pages.items():
        bare = next((unit for part, unit in BARE.items() if part in path), "")
        planned = path.startswith(("/plan", "/again")) and "back=sink" not in path
        found = [one for words in page.told for one in too_fine(words, planned=planned, bare=bare)]
        found += [one for data in page.json for one in json_too_fine(data)]
        if found:
            fine[path] = found

    assert {} == fine


def test_the_sink_leads_a_run_in_whole_seconds(pages: dict[str, Read]) -> None:
    """The page of the open run holds its screen as JSON, and the reading moved its end."""
    (data,) = pages[f"/sink/{RUN}"].json
    (developer,) = [one for one in json.loads(data)["tankfuls"][0]["baths"] if one["id"] == "A.develop"]

    assert developer["low_s"] < developer["aim_s"] < developer["high_s"]
    assert 0 == developer["aim_s"] % 1


@pytest.mark.parametrize("state", STATES)
def test_every_state_at_the_sink(state: str) -> None:
    """What each screen is sent: times whole, temperatures to 0.1, no residual under 0.002."""
    assert [] == json_too_fine(json.dumps(plain(state_screen(state))))
