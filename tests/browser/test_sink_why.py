"""Why the developer ends when it does: one press on the surface, the working behind it, and back."""

from __future__ import annotations

from pathlib import Path

import pytest
from browser.sink_evening import press, settled, sink_evening
from browser.taps import Taps
from playwright.sync_api import Browser, expect


@pytest.mark.parametrize("size", ["phone", "laptop"])
def test_why_stands_where_it_is_asked(chromium: Browser, tmp_path: Path, size: str) -> None:
    """A reading of 18.0 moves the end; Why names plan and reading, and closes on the same sink."""
    with sink_evening(chromium, tmp_path) as evening:
        page = evening.open(size)
        evening.until_s(0)
        press(Taps(page), "R5TN-6, pouring")
        evening.until_s(60)
        page.locator('[data-other="0"]').click()
        for _ in range(2):
            page.locator('#sheet-dip [data-step="-1"]').click()
        page.locator("#dip-note").click()
        settled(page)
        evening.pass_s(1)
        if size == "phone":
            page.locator('[data-other="2"]').click()
        page.locator("#more-why" if size == "phone" else "#why").click()

        said = page.locator("#why-sentences li")
        expect(said).to_have_count(2)
        expect(said.nth(0)).to_contain_text("Planned: 9:30 (")
        expect(said.nth(1)).to_contain_text("21:01:00: the tank read 18.0 °C, so it ends at ")
        expect(page.locator("#heading-why")).not_to_have_text("Why 9:30?")
        href = page.locator("#why-page").get_attribute("href") or ""
        assert href.startswith("/plan/why/time?tankful=A&plan=")
        assert href.endswith("&back=sink")
        page.locator("#sheet-why [data-close]").click()
        expect(page.locator("#main-words")).to_have_text("Draining")
