"""Counts what a flow costs the hands: taps, and entries typed."""

from __future__ import annotations

from dataclasses import dataclass

from playwright.sync_api import Locator, Page


@dataclass
class Taps:
    """Acts on a page and counts; a list that opens and is picked from costs two taps."""

    page: Page
    taps: int = 0
    entries: int = 0
    touched: bool | None = None

    def tap(self, what: Locator) -> None:
        """One tap, by touch where the page has it."""
        self.taps += 1
        if self.touched is None:
            self.touched = bool(self.page.evaluate("navigator.maxTouchPoints > 0"))
        if self.touched:
            what.tap()
        else:
            what.click()

    def enter(self, what: Locator, text: str) -> None:
        """One entry typed."""
        self.entries += 1
        what.fill(text)

    def choose(self, what: Locator, label: str) -> None:
        """Pick from a list that opens: one tap to open it, one to pick."""
        self.taps += 2
        what.select_option(label=label)

    @property
    def spent(self) -> tuple[int, int]:
        """Taps and entries so far."""
        return self.taps, self.entries
