"""The same pages under an address of their own: no link, form, redirect or script leads out of its house."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from fakes import memory_house
from fastapi.testclient import TestClient

from tankside.web import templating
from tankside.web.app import make_app
from tankside.web.assets import FOLDER as STATIC

WEB = Path(templating.__file__).parent
TEMPLATES = sorted(templating.FOLDER.rglob("*.html"))
SCRIPTS = sorted(STATIC.rglob("*.js"))
ADDRESS_IN_TEMPLATE = re.compile(r"""\b(?:href|action|formaction|src|poster)=(["'])(.*?)\1""")
MAY_BEGIN = ("{{ to(", "{{ static_url(", "{{ outside(", "#", "?")
WRITTEN_OUT_IN_SCRIPT = re.compile(r"""(?<!\bto\()["'`]/[a-z]""")
SENT_ON = re.compile(r"RedirectResponse\(|[\"']location[\"']", re.IGNORECASE)
PAGES = ("/", "/contents", "/rolls", "/rolls/add", "/plan", "/sink", "/journal", "/begin", "/settings")


ADDRESS = "http://localhost:8420"


def under_demo() -> TestClient:
    """A browser on the pages of a house that is mounted under /demo."""
    outer = make_app(memory_house(), say=lambda refusal: refusal.code)
    inner = make_app(memory_house(), say=lambda refusal: refusal.code, invented=True)
    outer.mount("/demo", inner)
    return TestClient(outer, base_url=ADDRESS, headers={"origin": ADDRESS, "sec-fetch-site": "same-origin"})


def named(path: Path) -> str:
    """A file as a failing test calls it."""
    return path.relative_to(WEB).as_posix()


@pytest.mark.parametrize("template", TEMPLATES, ids=named)
def test_no_template_writes_an_address_out(template: Path) -> None:
    """It should give every address through to(), static_url() or outside(), or within the page."""
    addresses = [found[2] for found in ADDRESS_IN_TEMPLATE.finditer(template.read_text(encoding="utf-8"))]
    assert [] == [address for address in addresses if not address.startswith(MAY_BEGIN)]


@pytest.mark.parametrize("script", SCRIPTS, ids=named)
def test_no_script_writes_an_address_out(script: Path) -> None:
    """It should take addresses from the page or from address.js, which knows where the house lies."""
    assert [] == WRITTEN_OUT_IN_SCRIPT.findall(script.read_text(encoding="utf-8"))


def test_only_one_place_sends_a_browser_on() -> None:
    """It should leave redirects to addresses.py, which knows where the house lies."""
    files = [path for path in WEB.rglob("*.py") if path.name != "addresses.py"]
    assert [] == [named(path) for path in files if SENT_ON.search(path.read_text(encoding="utf-8"))]


@pytest.mark.parametrize("path", PAGES)
def test_every_link_of_a_page_stays_in_its_house(path: str) -> None:
    """It should lead from a page under /demo only to pages under /demo, but for the one way back."""
    answer = under_demo().get(f"/demo{path}")
    assert 200 == answer.status_code
    addresses = re.findall(r'(?:href|action|src)="(/[^"]*)"', answer.text)
    assert addresses
    assert {"/"} >= {address for address in addresses if not address.startswith("/demo/")}


def test_a_form_sends_on_within_its_house() -> None:
    """It should answer a kept choice under /demo with a page under /demo."""
    answer = under_demo().post("/demo/settings/theme", data={"theme": "dark"}, follow_redirects=False)
    assert (303, "/demo/settings") == (answer.status_code, answer.headers["location"])


def test_styles_come_from_the_same_house(client: TestClient) -> None:
    """It should fetch styles under the address of the page, in both houses."""
    own = re.findall(r'href="([^"]+\.css)"', client.get("/").text)
    demo = re.findall(r'href="([^"]+\.css)"', under_demo().get("/demo/").text)
    assert [f"/demo{address}" for address in own] == demo
    assert 200 == under_demo().get(demo[0]).status_code


def test_a_lost_file_is_said_on_a_page_whose_links_hold() -> None:
    """It should link its styles from the house, though the file was looked for below /static."""
    page = under_demo().get("/demo/static/no-such-file.css").text
    assert "/demo/static/" in page
    assert "/static/static/" not in page
