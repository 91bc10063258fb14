"""The tables of the contents page are what was measured; every literature test stands on one line of them."""

from __future__ import annotations

import re
from pathlib import Path

from literature.apart import HEAD, kept, lines
from literature.deviations import KINDS, PAGE, with_tables

LITERATURE = Path(__file__).parents[1] / "literature"
OF_THE_HOUSE = {
    "counting.every_row_is_of_one_kind", "counting.memory_is_told_apart",
    "rates.every_thermal_row_is_asked_for",
}  # fmt: skip
"""Tests that look at the tables of data and compare nothing."""


def test_the_page_shows_what_was_measured() -> None:
    """After a change of a model or a source: python tests/literature/deviations.py."""
    text = PAGE.read_text(encoding="utf-8")

    assert text == with_tables(text)
    assert len(KINDS) == text.count(HEAD)


def test_each_test_stands_on_one_line() -> None:
    """None is left out, named twice or long gone: a new one is named in agreement.toml, and measured."""
    there = {
        f"{file.stem.removeprefix('test_')}.{name}"
        for file in LITERATURE.glob("test_*.py")
        if file.stem != "test_agreement"
        for name in re.findall(r"^def test_(\w+)", file.read_text(encoding="utf-8"), re.MULTILINE)
    }

    assert sorted(there - OF_THE_HOUSE) == sorted(test for line in lines() for test in line.tests)


def test_each_line_leads_to_its_page_and_was_measured() -> None:
    """Its kind is one of three, its page is there, and its worst is kept."""
    for line in lines():
        assert line.kind in KINDS
        assert PAGE.with_name(f"{line.page}.md").exists(), line
    assert {line.number for line in lines()} == set(kept())
