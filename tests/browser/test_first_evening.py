"""From the first screen to a plan, counted in taps; and the pages it goes through, looked at by axe."""

from __future__ import annotations

import re
from collections.abc import Mapping
from urllib.parse import urlencode

from browser.accessible import shortcomings
from browser.conftest import OpenPage
from browser.taps import Taps
from browser.watch import Watch
from playwright.sync_api import expect

# One screen each: the fields that are typed; format stands on the one that most films have.
SIX: tuple[Mapping[str, str], ...] = (
    {"film": "Ferry 200"},
    {"index": "200"},
    {"developer": "Umber", "dilution": "1+1"},
    {"time": "9 1/2", "temp": "20"},
    {"tank": "500"},
    {"reads": "21.0"},
)
GIVEN = {"film": "Ferry 200", "format": "135-36", "index": "200", "developer": "Umber"}
SCREENS = {
    "first": {},
    "two-readings": {**GIVEN, "dilution": "1:4", "answered": "developer"},
    "refused": {**GIVEN, "dilution": "1+1", "time": "soon", "temp": "20", "answered": "time"},
    "own-time": {**GIVEN, "dilution": "1+1", "own": "yes", "ask": "time"},
    "last": {**GIVEN, "dilution": "1+1", "time": "9:30", "temp": "20", "tank": "500", "answered": "tank"},
}


def begin(taps: Taps) -> None:
    """From the first screen through the six questions."""
    taps.tap(taps.page.get_by_role("link", name="Begin with my own"))
    for number, answers in enumerate(SIX, 1):
        expect(taps.page.locator("[aria-current=step] .begin-number")).to_have_text(str(number))
        for field, text in answers.items():
            taps.enter(taps.page.locator(f"#{field}"), text)
        taps.tap(taps.page.locator("button.act-main"))
    expect(taps.page).to_have_url(re.compile("/plan$"))
    taps.page.wait_for_load_state()


def test_six_answers_no_more(taps: Taps) -> None:
    """Seven taps and eight entries from the first screen to the plan."""
    begin(taps)

    expect(taps.page.get_by_text("9:00 (8:45 to 9:15)")).to_be_visible()
    assert (7, 8) == taps.spent


def test_by_keys_alone(open_page: OpenPage) -> None:
    """On a laptop each question is answered by typing, Tab and Enter."""
    page = open_page("/begin", size="laptop")
    for answers in SIX:
        for field, text in answers.items():
            page.locator(f"#{field}").press_sequentially(text)
        page.keyboard.press("Enter")

    expect(page).to_have_url(re.compile("/plan$"))


def test_a_tap_on_a_reading_is_the_answer(open_page: OpenPage, watch: Watch) -> None:
    """1:4 is asked back, and one tap goes on with the reading chosen."""
    watch.expected.append("422")
    page = open_page(f"/begin?{urlencode(SCREENS['two-readings'])}")
    page.get_by_role("button", name="1 part in 4").tap()

    expect(page.get_by_text("developer: Umber 1+3")).to_be_visible()


def test_an_answer_given_can_be_changed(open_page: OpenPage) -> None:
    """The line of an answer leads back to its question, and the others are kept."""
    page = open_page(f"/begin?{urlencode(SCREENS['last'])}")
    page.get_by_role("link", name="index: 200").tap()
    page.locator("#index").fill("400")
    page.get_by_role("button", name="Next").tap()

    expect(page.get_by_text("index: 400")).to_be_visible()
    expect(page.locator("#reads")).to_be_visible()


def test_every_screen_is_fit_for_everyone(open_page: OpenPage, watch: Watch, theme: str) -> None:
    """Axe finds nothing, at the narrowest size, in each theme; nothing scrolls sideways."""
    watch.expected.append("422")
    page = open_page("/begin", size="small", theme=theme)
    for screen in SCREENS.values():
        page.goto(f"/begin?{urlencode(screen)}")

        assert [] == shortcomings(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_a_roll_out_of_the_camera(taps: Taps) -> None:
    """Like the last one: three taps from the list to the code, nothing typed."""
    begin(taps)
    taps.page.goto("/rolls")
    before = taps.taps, taps.entries
    taps.tap(taps.page.get_by_role("link", name="Add a roll"))
    taps.tap(taps.page.get_by_role("button", name="Keep it"))

    expect(taps.page.get_by_text("Write this on its sticker.")).to_be_visible()
    taps.tap(taps.page.get_by_role("link", name="Written"))
    assert (3, 0) == (taps.taps - before[0], taps.entries - before[1])


def test_plan_and_rolls_are_fit_for_everyone(taps: Taps, open_page: OpenPage, size: str) -> None:
    """Axe and geometry on pages that hold something."""
    begin(taps)
    page = open_page("/plan", size=size)
    for path in ("/plan", "/rolls", "/rolls/add"):
        page.goto(path)

        assert [] == shortcomings(page)
        assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
