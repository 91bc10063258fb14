"""Server and phone are gone while a bath runs: the first screen says what happened and what is best now."""

from __future__ import annotations

from pathlib import Path

import pytest
from browser.sink_evening import RUN, SinkEvening, press, settled, sink_evening
from browser.taps import Taps
from playwright.sync_api import Browser, Page, expect


def _gone(evening: SinkEvening, page: Page, *, from_s: float, until_s: float) -> None:
    """Nothing runs between the two moments; then program and page are started again."""
    evening.until_s(from_s - 3)
    evening.pass_s(3)  # the page writes its last look down every two seconds
    evening.stop()
    evening.clock.pass_s(until_s - evening.at_s)
    evening.start()
    page.goto(f"{evening.address}/sink/{RUN}")
    expect(page.locator("#clock")).not_to_have_text("")
    page.evaluate("sinkTick.pass(200)")


def test_a_developer_two_minutes_over_is_said_in_one_breath(chromium: Browser, tmp_path: Path) -> None:
    """S5: 2:10 over, +13 % (10 to 17), pour out now; one press on the plate drains, and the plate goes."""
    with sink_evening(chromium, tmp_path) as evening:
        page = evening.open("phone")
        evening.until_s(0)
        press(Taps(page), "R5TN-6, pouring")
        _gone(evening, page, from_s=370, until_s=700)

        plate = page.locator("#notices .plate").first
        expect(plate.locator("h2")).to_have_text("A: 2:10 over. Pour out now.")
        for words in ("+13 % (10 to 17)", "one grade softer", "Every tap was kept.", "21:06:10 to 21:11:40"):
            expect(plate).to_contain_text(words)
        expect(page.locator("#notices .plate", has_text="over. Pour out now.")).to_have_count(1)
        expect(page.locator("#main-words")).to_have_text("Draining")
        press(Taps(page), "Draining")
        expect(page.locator("#notices", has_text="Out of touch")).to_have_count(0)


@pytest.mark.parametrize("remembers", [True, False])
def test_a_shorter_outage_says_what_comes_next(chromium: Browser, tmp_path: Path, *, remembers: bool) -> None:
    """Back at 7:00 nothing is late; a device names its own last look, a fresh one the last note."""
    with sink_evening(chromium, tmp_path) as evening:
        page = evening.open("phone")
        evening.until_s(0)
        press(Taps(page), "R5TN-6, pouring")
        if not remembers:
            page.evaluate("localStorage.clear()")
            page.evaluate("Storage.prototype.setItem = () => {}")
        _gone(evening, page, from_s=370, until_s=420)

        since = "21:06:10" if remembers else "21:00:00"
        plate = page.locator("#notices .plate").first
        expect(plate).to_contain_text(f"Out of touch from {since} to 21:07:00.")
        expect(plate).to_contain_text("Nothing is late. Next: Draining, in 2:30.")
        plate.get_by_role("button", name="I have read it").tap()
        expect(page.locator("#notices", has_text="Out of touch")).to_have_count(0)
        settled(page)


def test_a_page_turned_over_for_a_moment_says_nothing(chromium: Browser, tmp_path: Path) -> None:
    """Ten seconds away are no outage."""
    with sink_evening(chromium, tmp_path) as evening:
        page = evening.open("phone")
        evening.until_s(0)
        press(Taps(page), "R5TN-6, pouring")
        evening.until_s(99)
        evening.pass_s(1)
        evening.clock.pass_s(10)
        page.reload()
        settled(page)
        expect(page.locator("#notices", has_text="Out of touch")).to_have_count(0)
