"""What the worked examples of the docs print has no more digits than its unit or its doubt allows."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from digits import too_fine
from project import ROOT

PAGES = [ROOT / "README.md", *sorted((ROOT / "docs").rglob("*.md"))]
HELP = ROOT / "docs" / "reference" / "commands.md"
"""Lists the options of every command with their ranges, which are no answers."""


def printed(page: Path) -> Iterator[str]:
    """The lines of its examples that a program printed."""
    inside = False
    for line in page.read_text(encoding="utf-8").splitlines():
        if line.startswith("```"):
            inside = not inside
        elif inside and not line.startswith((">>>", "...")):
            yield line


@pytest.mark.parametrize("page", [page for page in PAGES if page != HELP], ids=lambda page: page.stem)
def test_examples_print_what_their_doubt_allows(page: Path) -> None:
    """Numbers without a unit may go to 0.001, as residuals and scatters of densities do."""
    found = [one for line in printed(page) for one in too_fine(line, bare="standard deviation")]

    assert [] == found
