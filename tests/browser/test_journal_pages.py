"""The Journal's pages in a real browser: clean by axe, no sideways scroll, whole without any script."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from browser.accessible import shortcomings
from browser.live import SIZES, served
from browser.watch import Watch
from evening_clock import SetClock, at
from playwright.sync_api import Browser, Page
from season import DAY_S, Season

from tankside.core.review.evidence import NextMorning
from tankside.wiring import app_over
from tankside.workflows.answer_next_morning import answer_next_morning


@pytest.fixture(scope="module")
def season() -> Iterator[tuple[str, dict[str, str]]]:
    """An address with two invented evenings, one judged, one late; and the pages by name."""
    season = Season()
    house = season.house
    judged, late = season.evening(), season.evening(reads_c=19.4, developed_s=579.0, fix_s=347.0)
    answer_next_morning(house.desk, house.dice, judged, NextMorning("thin", "harsh"), at(2 * DAY_S))
    assert isinstance(house.clock, SetClock)
    house.clock.seconds = 3 * DAY_S
    pages = {
        "list": "/journal",
        "judged": f"/journal/{judged.run}/A",
        "late": f"/journal/{late.run}/A",
        "morning": f"/journal/{late.run}/morning",
        "densities": f"/journal/{late.run}/densities",
    }
    with served(app_over(house)) as address:
        yield address, pages


def opened(chromium: Browser, address: str, size: str, theme: str, *, scripts: bool = True) -> Page:
    """A page of that size in that theme."""
    width, height = SIZES[size]
    context = chromium.new_context(
        viewport={"width": width, "height": height}, base_url=address, java_script_enabled=scripts
    )
    context.add_cookies([{"name": "tankside-theme", "value": theme, "url": address}])
    return context.new_page()


def test_every_page_fits_and_is_clean(
    chromium: Browser, season: tuple[str, dict[str, str]], size: str, theme: str
) -> None:
    """No sideways scroll and nothing that axe finds, at each size and in each theme."""
    address, pages = season
    page = opened(chromium, address, size, theme)
    watch = Watch(address)
    watch.put_on(page)
    found = {}
    for name, path in pages.items():
        page.goto(path)
        wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        found[name] = (wide, shortcomings(page))
    page.context.close()

    assert {name: (0, []) for name in pages} == found
    assert [] == watch.unexpected()


@pytest.mark.parametrize("size", ["phone", "laptop"])
def test_words_stand_apart_and_within_the_picture(
    chromium: Browser, season: tuple[str, dict[str, str]], size: str
) -> None:
    """No two texts of the picture that is shown lie over one another, and none leaves it."""
    address, pages = season
    page = opened(chromium, address, size, "light")
    page.goto(pages["late"])
    over = page.evaluate(
        """(kind) => {
      const svg = document.querySelector(`.beside-${kind}`), whole = svg.getBoundingClientRect();
      const box = (one) => [one.textContent, one.getBoundingClientRect()];
      const texts = [...svg.querySelectorAll("text")].map(box);
      const out = texts.filter(([, b]) => b.right > whole.right + 1 || b.bottom > whole.bottom + 1);
      const pairs = texts.flatMap(([a, p], i) => texts.slice(i + 1).filter(([, q]) =>
        p.left < q.right - 1 && q.left < p.right - 1 && p.top < q.bottom - 5 && q.top < p.bottom - 5
      ).map(([b]) => `${a} / ${b}`));
      return [texts.length > 5, out.map(([text]) => text), pairs];
    }""",
        size,
    )
    page.context.close()

    assert [True, [], []] == over


def test_the_next_morning_needs_no_script(chromium: Browser, season: tuple[str, dict[str, str]]) -> None:
    """Refused, answered, taken: forms alone are enough."""
    address, pages = season
    page = opened(chromium, address, "phone", "light", scripts=False)
    page.goto(pages["morning"])
    page.get_by_role("group", name="Contrast").get_by_text("Flat").click()
    page.get_by_role("button", name="Keep").click()
    assert page.locator("#shadows-refused").is_visible()
    page.get_by_role("group", name="Shadows").get_by_text("Right").click()
    page.get_by_role("button", name="Keep").click()
    page.get_by_role("button", name="Leave it as it is").first.click()

    assert page.get_by_text("You said: shadows right, contrast flat.").is_visible()
    page.context.close()
