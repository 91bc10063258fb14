"""The ground of every page in a real browser: policy, size, theme, focus, WCAG 2.2 AA by axe."""

from __future__ import annotations

import pytest
from browser.accessible import shortcomings
from browser.conftest import OpenPage
from browser.live import served
from browser.specimen import add_specimen
from browser.watch import Watch
from fakes import memory_house
from playwright.sync_api import Browser, Page

from tankside.web.templating import CONTENTS
from tankside.wiring import app_over

DOORS = ("/", "/contents", "/settings", "/start/demo", "/start/restore", "/start/phone")
PATHS = (*DOORS, *(place.path for place in CONTENTS))
# One of each build; axe takes its time.
JUDGED = ("/", "/contents", "/settings", "/start/phone", "/densities")


def sideways_px(page: Page) -> int:
    """How far the page can be pushed sideways."""
    return int(page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth"))


def test_every_page_fits_and_is_clean(open_page: OpenPage, size: str, theme: str) -> None:
    """No sideways scroll and nothing that axe finds, at each size and in each theme."""
    page = open_page("/", size=size, theme=theme)
    found = {}
    for path in PATHS:
        page.goto(path)
        found[path] = (sideways_px(page), shortcomings(page) if path in JUDGED else [])

    assert {path: (0, []) for path in PATHS} == found


def test_every_drawing_and_field_is_clean(chromium: Browser, size: str, theme: str) -> None:
    """The same for the page that holds one of each drawing, field and plate."""
    width, height = {"small": (320, 640), "phone": (390, 844), "laptop": (1280, 800)}[size]
    with served(add_specimen(app_over(memory_house()))) as address:
        context = chromium.new_context(viewport={"width": width, "height": height}, base_url=address)
        context.add_cookies([{"name": "tankside-theme", "value": theme, "url": address}])
        page = context.new_page()
        watch = Watch(address)
        watch.put_on(page)
        page.goto("/specimen")

        assert (0, [], []) == (sideways_px(page), shortcomings(page), watch.troubles)
        assert "temp" == page.evaluate("document.activeElement.id")
        context.close()


def test_a_theme_is_chosen_without_any_script(chromium: Browser, address: str) -> None:
    """A form and a cookie are enough; the page is redrawn in the new ground."""
    context = chromium.new_context(java_script_enabled=False, base_url=address)
    page = context.new_page()
    page.goto("/settings")
    page.get_by_label("Dim").check()
    page.get_by_role("button", name="Keep this theme").click()

    assert "dim" == page.locator("html").get_attribute("data-theme")
    assert page.get_by_label("Dim").is_checked()
    context.close()


def test_units_are_chosen_without_any_script(chromium: Browser, address: str) -> None:
    """The same for units, which the first page then says."""
    context = chromium.new_context(java_script_enabled=False, base_url=address)
    page = context.new_page()
    page.goto("/settings")
    page.get_by_label("Fahrenheit").check()
    page.get_by_role("button", name="Keep these units").click()
    page.goto("/")

    assert page.get_by_text("Litres and Fahrenheit").is_visible()
    context.close()


@pytest.mark.parametrize(("scheme", "ground"), [("light", "rgb(239, 242, 236)"), ("dark", "rgb(16, 25, 26)")])
def test_an_unchosen_theme_follows_the_device(
    chromium: Browser, address: str, scheme: str, ground: str
) -> None:
    """Without a choice the ground is that of the device."""
    context = chromium.new_context(color_scheme=scheme, base_url=address)
    page = context.new_page()
    page.goto("/")

    assert ground == page.evaluate("getComputedStyle(document.body).backgroundColor")
    context.close()


def test_contents_stand_in_the_margin_of_a_laptop_and_behind_a_door_on_a_phone(open_page: OpenPage) -> None:
    """Seven names at once on the laptop; on a phone a door of 48 px opens the same scale."""
    laptop, phone = open_page("/plan", size="laptop"), open_page("/plan", size="phone")
    door = phone.get_by_role("link", name="Contents", exact=True)

    assert 7 == laptop.get_by_role("navigation", name="Contents").get_by_role("link").count()
    assert not laptop.get_by_role("link", name="Contents", exact=True).is_visible()
    assert not phone.get_by_role("navigation", name="Contents").is_visible()
    box = door.bounding_box()
    assert box is not None
    assert min(box["width"], box["height"]) >= 48
    door.tap()
    phone.wait_for_url("**/contents")
    rows = phone.get_by_role("navigation", name="All pages").get_by_role("link")
    assert [place.name for place in CONTENTS] == rows.locator(".name").all_inner_texts()


def test_the_keyboard_skips_to_the_page(open_page: OpenPage) -> None:
    """The first stop of the keyboard leads past the margin."""
    page = open_page("/rolls", size="laptop")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")

    assert "page" == page.evaluate("document.activeElement.id")


def test_paper_is_white_in_every_theme(open_page: OpenPage, theme: str) -> None:
    """Printed from dark or dim, the sheet is still black on white."""
    page = open_page("/shelf", size="laptop", theme=theme)
    page.emulate_media(media="print", color_scheme="dark")

    colours = page.evaluate("(s => [s.backgroundColor, s.color])(getComputedStyle(document.body))")
    assert ["rgb(255, 255, 255)", "rgb(0, 0, 0)"] == colours
    assert not page.locator(".margin").is_visible()
