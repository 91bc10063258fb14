"""The science pages: their examples run, their headings are there, their plots are what is drawn today."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest

from tankside.figures.science_pages import PAGES, drawn

SCIENCE = Path(__file__).parents[2] / "docs" / "science"
CONTENTS = SCIENCE / "README.md"
EVERY_PAGE = sorted(page for page in SCIENCE.glob("*.md") if page != CONTENTS)
NOTHING_TO_DRAW = {"cautions", "codes"}
"""Pages of words and of arithmetic on letters."""

NUMBER = re.compile(r"-?\d+\.\d+")


def without_digits_that_machines_differ_in(svg: str) -> str:
    """The drawing with its coordinates to one decimal."""
    return NUMBER.sub(lambda found: f"{float(found[0]):.1f}", svg).replace("-0.0", "0.0")


@pytest.mark.parametrize("page", EVERY_PAGE, ids=lambda page: page.stem)
def test_examples_run(page: Path) -> None:
    """Every example on a science page gives what the page says."""
    failed, _ = doctest.testfile(str(page), module_relative=False)

    assert failed == 0


@pytest.mark.parametrize("page", EVERY_PAGE, ids=lambda page: page.stem)
def test_pages_say_what_they_must(page: Path) -> None:
    """Plain words first; model, origin, range, doubt and an example stand on it, and its own plot."""
    text = page.read_text(encoding="utf-8")

    assert text.split("\n\n")[1].startswith("**In short.** ")
    for heading in ("**Model.**", "**Where it comes from.**", "**Range.**", "**What is doubtful.**"):
        assert 1 == text.count(heading), heading
    assert ">>> " in text
    drawn_here = re.findall(r"!\[(.+)\]\(figures/([\w-]+)\.svg\)", text)
    expected = [] if page.stem in NOTHING_TO_DRAW else [page.stem]
    assert expected == [plot for _, plot in drawn_here]
    assert "![](" not in text


def test_the_contents_lead_to_every_page() -> None:
    """Each once in the list, in the order of an evening."""
    listed = re.findall(r"^\d+\. \[.+\]\(([\w-]+)\.md\)", CONTENTS.read_text(encoding="utf-8"), re.MULTILINE)

    assert sorted(listed) == [page.stem for page in EVERY_PAGE]


@pytest.mark.parametrize("page", sorted(PAGES))
def test_plots_are_drawn_as_they_stand(page: str) -> None:
    """Drawing a plot again gives the one that is kept beside its page."""
    kept = (SCIENCE / "figures" / f"{page}.svg").read_text(encoding="utf-8")

    assert without_digits_that_machines_differ_in(kept) == without_digits_that_machines_differ_in(drawn(page))


def test_no_plot_without_its_page() -> None:
    """Every kept plot belongs to a page that draws it."""
    assert {plot.stem for plot in (SCIENCE / "figures").glob("*.svg")} == set(PAGES)
