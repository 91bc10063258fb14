"""What axe finds against WCAG 2.2 AA."""

from __future__ import annotations

from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]


def shortcomings(page: Page) -> list[str]:
    """Each rule that the page breaks, with the first places that break it."""
    found = Axe().run(page, options={"runOnly": TAGS}).response["violations"]
    return [f"{rule['id']}: {[node['html'] for node in rule['nodes'][:3]]}" for rule in found]


def undecided(page: Page) -> set[tuple[str, str, str]]:
    """What axe leaves to a person: rule, its reason, and the id of the place that holds the element."""
    found = Axe().run(page, options={"runOnly": TAGS}).response["incomplete"]
    return {
        (rule["id"], reason, page.evaluate(PLACE, node["target"][0]))
        for rule in found
        for node in rule["nodes"]
        for reason in _reasons(node)
    }


PLACE = "(target) => document.querySelector(target)?.closest('body > [id], main > [id]')?.id ?? target"


def _reasons(node: dict[str, Any]) -> set[str]:
    """Why axe could not tell, by its own keys."""
    checks = [*node["any"], *node["all"], *node["none"]]
    return {str((one.get("data") or {}).get("messageKey") or one["id"]) for one in checks}
