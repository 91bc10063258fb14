"""Two rolls as last time, counted in taps from the first screen to the first pour; and the page looked at."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from browser.accessible import shortcomings
from browser.live import SIZES, served
from browser.sink_evening import TICK, settled
from browser.taps import Taps
from browser.test_ground import sideways_px
from browser.watch import Watch
from evening_before import DAY_S, lived_before, waiting
from evening_clock import SetClock
from playwright.sync_api import Browser, Locator, Page, expect
from unit.core.run.evening import START_US

from tankside.machine.dice import MachineDice
from tankside.wiring import app_over, open_house

OpenAgain = Callable[..., Page]


@pytest.fixture
def open_again(chromium: Browser, tmp_path: Path) -> Iterator[OpenAgain]:
    """Opens a path of a house the day after its first evening, where three rolls wait."""
    clock = SetClock(wall_us=START_US, elapsed_us=4_000_000_000, boot="first")
    contexts, watches = [], []
    with (
        open_house(tmp_path / "tankside.db", clock, MachineDice()) as house,
        served(app_over(house)) as address,
    ):
        lived_before(house, clock.now())
        clock.pass_s(DAY_S)
        waiting(house, clock.now(), 3)

        def opened(path: str = "/", *, size: str = "phone", theme: str | None = None) -> Page:
            width, height = SIZES[size]
            touched = size != "laptop"
            context = chromium.new_context(
                viewport={"width": width, "height": height},
                base_url=address,
                has_touch=touched,
                is_mobile=touched,
            )
            contexts.append(context)
            context.set_default_timeout(15_000)
            context.add_init_script(TICK)
            if theme:
                context.add_cookies([{"name": "tankside-theme", "value": theme, "url": address}])
            page = context.new_page()
            watches.append(Watch(address))
            watches[-1].put_on(page)
            page.goto(path)
            return page

        yield opened
        for context in contexts:
            context.close()
    assert [] == [trouble for watch in watches for trouble in watch.unexpected()]


def to_the_first_pour(taps: Taps) -> None:
    """From the page 'Again', its rolls chosen, to a developer that is poured."""
    page = taps.page
    taps.enter(page.get_by_label("What the developer reads"), "20.0")
    taps.tap(page.get_by_role("button", name="To the sink"))
    page.wait_for_url(re.compile("/sink/"))
    settled(page)
    for _ in range(2):
        act = page.locator("#main-act")
        pours = "pour" in act.inner_text().lower()
        taps.tap(act)
        settled(page)
        if pours:
            break
    expect(page.locator("#main-act")).to_contain_text("Draining")


def boxes(page: Page) -> Locator:
    """The boxes of the rolls."""
    return page.locator('input[name="roll"]')


def again(page: Page) -> Taps:
    """The first screen and its main act, one tap."""
    taps = Taps(page)
    taps.tap(page.get_by_role("link", name="Again", exact=True))
    page.wait_for_url("**/again")
    return taps


def test_two_rolls_as_last_time(open_again: OpenAgain) -> None:
    """The two that are offered: Again, to the sink, pouring, and one number."""
    taps = again(open_again("/"))
    assert [True, True, False] == [box.is_checked() for box in boxes(taps.page).all()]
    to_the_first_pour(taps)

    assert taps.taps <= 6
    assert 1 == taps.entries


def test_two_other_rolls_than_those_offered(open_again: OpenAgain) -> None:
    """One box emptied and another ticked are two taps more, and still no more than six."""
    taps = again(open_again("/"))
    taps.tap(boxes(taps.page).nth(0))
    taps.tap(boxes(taps.page).nth(2))
    to_the_first_pour(taps)

    assert taps.taps <= 6
    assert 1 == taps.entries


def test_the_page_fits_and_is_clean(open_again: OpenAgain, size: str, theme: str) -> None:
    """First screen and Again: no sideways scroll and nothing that axe finds."""
    page = open_again("/", size=size, theme=theme)
    found = {"first": (sideways_px(page), shortcomings(page))}
    page.goto("/again")
    found["again"] = (sideways_px(page), shortcomings(page))

    assert {"first": (0, []), "again": (0, [])} == found
