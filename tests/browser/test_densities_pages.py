"""The Densities in a real browser: a strip typed on a run's page becomes a curve, a time, the next plan's."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from browser.accessible import shortcomings
from browser.live import SIZES, THEMES, served
from browser.watch import Watch
from evening_clock import SetClock, at
from playwright.sync_api import Browser, Page
from season import DAY_S, Season
from strips import densities, law, typed

from tankside.wiring import app_over
from tankside.workflows.read_journal import Which
from tankside.workflows.read_step_strip import Alone, read_step_strip

STEADY = (0.56, 0.57, 0.55, 0.56, 0.57, 0.56, 0.55, 0.56, 0.57, 0.55, 0.56, 0.57)
READINGS = " ".join(f"{one:.2f}" for one in densities(0.62))


@pytest.fixture(scope="module")
def season() -> Iterator[tuple[str, Season, Which]]:
    """An address with one evening, two strips of other times and a row of control strips, all invented."""
    season = Season()
    house, which = season.house, season.evening()
    key = house.desk.combinations.all()[0].key
    for time_s in (400.0, 900.0):
        strip = typed(law(time_s, c_inf=1.0, k_per_s=0.0018))
        read_step_strip(house.desk, house.dice, strip, Alone(key, time_s, 20.0), at(DAY_S))
    for n, contrast in enumerate(
        (0.56, 0.57, 0.55, 0.56, 0.57, 0.56, 0.55, 0.56, 0.57, 0.55, 0.56, 0.57, 0.8)
    ):
        control = replace(typed(contrast), control=True, words="new thermometer" if n == 12 else "")
        read_step_strip(house.desk, house.dice, control, Alone(key, 570.0, 20.0), at(DAY_S + 3600.0 * n))
    assert isinstance(house.clock, SetClock)
    house.clock.seconds = 3 * DAY_S
    with served(app_over(house)) as address:
        yield address, season, which


def opened(chromium: Browser, address: str, size: str, theme: str, *, scripts: bool = True) -> Page:
    """A page of that size in that theme."""
    width, height = SIZES[size]
    context = chromium.new_context(
        viewport={"width": width, "height": height}, base_url=address, java_script_enabled=scripts
    )
    context.add_cookies([{"name": "tankside-theme", "value": theme, "url": address}])
    return context.new_page()


def test_every_page_fits_and_is_clean(
    chromium: Browser, season: tuple[str, Season, Which], size: str
) -> None:
    """No sideways scroll and nothing that axe finds, at each size; the page of curves in each theme."""
    address, there, which = season
    key, strip = there.house.desk.combinations.all()[0].key, there.house.desk.step_strips.all()[0].key
    pages = [
        ("light", "/densities"), *((theme, f"/densities/{key}") for theme in THEMES),
        ("light", f"/densities/{key}/control"), ("light", f"/densities/strip/{strip}"),
        *(("dark", f"/densities/strip/{strip}/why/{about}") for about in ("curve", "speed")),
        ("light", f"/densities/strip/new?run={which.run}&tankful=A"), ("light", "/densities/strip/new"),
        ("light", "/densities/tablet/new"),
    ]  # fmt: skip
    found = {}
    watch = Watch(address)
    for theme, path in pages:
        page = opened(chromium, address, size, theme)
        watch.put_on(page)
        page.goto(path)
        page.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true; })")
        wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        found[theme, path] = (wide, shortcomings(page))
        page.context.close()

    assert dict.fromkeys(pages, (0, [])) == found
    assert [] == watch.unexpected()


def test_from_a_strip_to_the_next_plan(chromium: Browser, season: tuple[str, Season, Which]) -> None:
    """Without any script: refused, kept, seen as curve and time, taken; the next plan has the new time."""
    address, there, which = season
    before = there.next_plan().tankfuls[0].development.time_s.value
    page = opened(chromium, address, "phone", "light", scripts=False)
    page.goto(f"/journal/{which.run}/A")
    page.get_by_role("link", name="Read a step strip").click()
    page.get_by_label("Densities", exact=True).fill(READINGS.rsplit(" ", 1)[0])
    page.get_by_label("Base and fog, read on clear film").fill("0.26")
    page.get_by_role("button", name="Keep it").click()
    assert page.get_by_text("20 readings for a tablet of 21 steps.").is_visible()
    page.get_by_label("Densities", exact=True).fill(READINGS)
    page.get_by_role("button", name="Keep it").click()
    assert page.get_by_role("heading", name="Time for contrast 0.56").is_visible()
    told = page.locator(".densities-time").inner_text()
    assert page.locator("svg.curves-phone.curves-family").is_visible()
    page.get_by_role("button", name="Take half of it").click()

    assert page.get_by_text("The next plan uses it.").is_visible()
    after = there.next_plan().tankfuls[0].development.time_s.value
    minutes, seconds = told.split(" ")[0].split(":")
    assert 60 * int(minutes) + int(seconds) < after < before
    page.context.close()


@pytest.mark.parametrize("size", ["phone", "laptop"])
def test_words_of_the_curves_stand_apart(
    chromium: Browser, season: tuple[str, Season, Which], size: str
) -> None:
    """No two texts of a plot lie over one another, and none leaves its picture."""
    address, there, _ = season
    page = opened(chromium, address, size, "light")
    page.goto(f"/densities/{there.house.desk.combinations.all()[0].key}")
    told = page.evaluate(
        """(size) => [...document.querySelectorAll(`svg.curves-${size}`)].map((svg) => {
      const whole = svg.getBoundingClientRect();
      const box = (one) => [one.textContent, one.getBoundingClientRect()];
      const texts = [...svg.querySelectorAll("text")].map(box);
      const out = texts.filter(([, b]) => b.right > whole.right + 1 || b.left < whole.left - 1
        || b.bottom > whole.bottom + 1).map(([text]) => text);
      const pairs = texts.flatMap(([a, p], i) => texts.slice(i + 1).filter(([, q]) =>
        p.left < q.right - 1 && q.left < p.right - 1 && p.top < q.bottom - 4 && q.top < p.bottom - 4
      ).map(([b]) => `${a} / ${b}`));
      return [texts.length > 5, out, pairs];
    })""",
        size,
    )
    page.context.close()

    assert [[True, [], []], [True, [], []]] == told
