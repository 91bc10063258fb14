"""What axe finds against WCAG 2.2 AA."""

from __future__ import annotations

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]


def shortcomings(page: Page) -> list[str]:
    """Each rule that the page breaks, with the first places that break it."""
    found = Axe().run(page, options={"runOnly": TAGS}).response["violations"]
    return [f"{rule['id']}: {[node['html'] for node in rule['nodes'][:3]]}" for rule in found]
