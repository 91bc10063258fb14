"""The test of a fixer at the shelf in a real browser: from its bottle to a plan worked out by it."""

from __future__ import annotations

import re

from browser.accessible import shortcomings
from browser.conftest import OpenPage
from browser.test_ground import sideways_px
from browser.test_pages_around_the_plan import CUT, FIXER, SIX, post

STOP = {
    "kind": "stop bath",
    "name": "Stop bath",
    "parts": "1+19",
    "volume": "1000",
    "used": "9",
    "label": "18",
}


def test_a_fixer_is_tested_and_the_plan_takes_it_in(open_page: OpenPage, size: str) -> None:
    """Half the count is used, so the plan asks; five fields later the shelf judges and it asks no more."""
    page = open_page("/", size=size)
    post(page, "/begin", SIX)
    fixer = "/shelf/" + post(page, "/shelf/mix", {**FIXER, "used": "14"}).split("/shelf/")[1].split("?")[0]
    stop = "/shelf/" + post(page, "/shelf/mix", STOP).split("/shelf/")[1].split("?")[0]
    page.goto("/rolls")
    roll = page.locator("input[name=roll]").first.get_attribute("value") or ""
    post(page, "/plan/rolls", {"roll": roll})
    page.goto("/plan")
    page.get_by_role("link", name=re.compile("^Test ")).click()
    found = {"test": (sideways_px(page), page.evaluate(CUT), shortcomings(page))}
    for label, text in (
        ("Film of the test piece", "Ferry 200"),
        ("It cleared in", "42"),
        ("The bath reads", "20"),
        ("The same film cleared in", "30"),
        ("Then it read", "20"),
    ):
        page.get_by_label(label).fill(text)
    page.get_by_role("button", name="Keep this test").click()
    page.get_by_text("fresh 30 s: 1.4 times.").wait_for()
    page.get_by_role("button", name="Work the plan out by it").click()
    page.wait_for_url("**/plan")
    asked = page.get_by_role("link", name=re.compile("^Test ")).count()
    for path in ("/plan", "/shelf", fixer, f"{stop}/test", stop):
        page.goto(path)
        found[path] = (sideways_px(page), page.evaluate(CUT), shortcomings(page))

    assert 0 == asked
    assert [] == [(path, told) for path, told in found.items() if told != (0, [], [])]
