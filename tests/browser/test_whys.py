"""Every why in a real browser: each size once, each theme once, by the house's measure of a clean page."""

from __future__ import annotations

import pytest
from browser.accessible import shortcomings
from browser.conftest import OpenPage
from browser.test_ground import sideways_px
from browser.test_pages_around_the_plan import CUT, FIXER, SIX, post

STOP = {"kind": "stop bath", "name": "Stop", "parts": "1+19", "volume": "1000", "used": "4", "label": "15"}
WHYS = ("/plan/why/wash", "/plan/why/contrast", "/plan/why/fix", "/plan/why/least-stock")


@pytest.mark.parametrize(("size", "theme"), [("small", "light"), ("phone", "dark"), ("laptop", "dim")])
def test_every_why_fits_and_is_clean(open_page: OpenPage, size: str, theme: str) -> None:
    """No sideways scroll, no cut text, nothing that axe finds; from the bottle's page to its working too."""
    page = open_page("/", size=size, theme=theme)
    post(page, "/begin", SIX)
    post(page, "/shelf/mix", FIXER)
    found = {}
    for path in WHYS:
        page.goto(path)
        found[path] = (sideways_px(page), page.evaluate(CUT), shortcomings(page))
    page.goto("/shelf")
    page.locator("a[href^='/shelf/']:not([href='/shelf/mix'])").first.click()
    page.locator("a[href$='/why/fixer-left']").click()
    page.wait_for_url("**/why/fixer-left")
    found["fixer"] = (sideways_px(page), page.evaluate(CUT), shortcomings(page))

    stop = post(page, "/shelf/mix", STOP).split("?")[0]
    page.goto(f"{stop}/why/stop-left")
    found["stop"] = (sideways_px(page), page.evaluate(CUT), shortcomings(page))

    assert {path: (0, [], []) for path in (*WHYS, "fixer", "stop")} == found
