"""The science pages: their examples run, their headings are there, their plots are what is drawn today."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest

from tankside.figures.science_pages import PAGES, drawn

SCIENCE = Path(__file__).parents[2] / "docs" / "science"
EVERY_PAGE = sorted(SCIENCE.glob("*.md"))
NUMBER = re.compile(r"-?\d+\.\d+")


def without_digits_that_machines_differ_in(svg: str) -> str:
    """The drawing with its coordinates to one decimal."""
    return NUMBER.sub(lambda found: f"{float(found[0]):.1f}", svg).replace("-0.0", "0.0")


@pytest.mark.parametrize("page", EVERY_PAGE, ids=lambda page: page.stem)
def test_examples_run(page: Path) -> None:
    """Every example on a science page gives what the page says."""
    failed, _ = doctest.testfile(str(page), module_relative=False)

    assert failed == 0


@pytest.mark.parametrize("page", sorted(PAGES))
def test_pages_say_what_they_must(page: str) -> None:
    """Model, origin, range and doubt stand on each page, with at least one example and its own plot."""
    text = (SCIENCE / f"{page}.md").read_text(encoding="utf-8")

    for heading in ("**Model.**", "**Where it comes from.**", "**Range.**", "**What is doubtful.**"):
        assert heading in text
    assert ">>> " in text
    assert f"](figures/{page}.svg)" in text


@pytest.mark.parametrize("page", sorted(PAGES))
def test_plots_are_drawn_as_they_stand(page: str) -> None:
    """Drawing a plot again gives the one that is kept beside its page."""
    kept = (SCIENCE / "figures" / f"{page}.svg").read_text(encoding="utf-8")

    assert without_digits_that_machines_differ_in(kept) == without_digits_that_machines_differ_in(drawn(page))


def test_no_plot_without_its_page() -> None:
    """Every kept plot belongs to a page that draws it."""
    assert {plot.stem for plot in (SCIENCE / "figures").glob("*.svg")} == set(PAGES)
