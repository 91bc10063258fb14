"""Pages outside the sciences: their examples run too, on a house of their own where they open one."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest

DOCS = Path(__file__).parents[2] / "docs"
WITH_EXAMPLES = [
    page
    for folder in ("inside", "how-to", "start")
    for page in sorted((DOCS / folder).glob("*.md"))
    if ">>> " in page.read_text(encoding="utf-8")
]


@pytest.mark.parametrize("page", WITH_EXAMPLES, ids=lambda page: page.stem)
def test_examples_run(page: Path) -> None:
    """Every example gives what the page says."""
    failed, tried = doctest.testfile(str(page), module_relative=False)

    assert (0, True) == (failed, tried > 0)


def test_one_roll_goes_through_the_code() -> None:
    """The walk from a text field to the next plan is one of them."""
    assert "one-roll-through-the-code" in {page.stem for page in WITH_EXAMPLES}


def test_every_page_that_the_program_names_is_there() -> None:
    """A docstring that argues from a page of docs/ argues from one that can be read."""
    source = DOCS.parent / "src"
    named = {
        found
        for file in source.rglob("*.py")
        for found in re.findall(r"docs/(?:science|how-to)/[a-z0-9-]+", file.read_text(encoding="utf-8"))
    }

    assert [] == sorted(one for one in named if not (DOCS.parent / f"{one}.md").exists())
