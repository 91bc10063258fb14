"""The tables of the contents page are what was measured; every literature test stands on one line of them."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest
from literature.apart import HEAD, Apart, Kept, kept, lines, said, stale
from literature.deviations import KINDS, PAGE, with_tables

HERE = Path(__file__).parent
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
        for file in HERE.glob("test_*.py")
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


def test_what_is_compared_is_noted(apart: Apart) -> None:
    """Numbers, rows of numbers and names with numbers, on either side of the sign."""
    seen = Apart()

    assert seen.approx(1.0, abs=0.2) == 1.1
    assert 1.1 == seen.approx(1.0, abs=0.2)
    assert np.array([2.0, 3.0]) == seen.approx([2.0, 3.5], abs=1)
    assert seen.approx({"a": 4.0}) == {"a": 4.0}
    assert not seen.approx(1.0) == 2.0  # noqa: SIM201 - it is this comparison that is asked
    assert 1.0 == seen.worst("K")
    assert 0.5 == seen.worst("%")
    assert 0 == len(apart.pairs)


@pytest.mark.parametrize(
    ("worst", "nodeid", "is_stale"),
    [
        (0.8, "other", False),
        (0.2, "other", False),
        (1.5, "other", True),
        (0.9, "at", False),
        (0.2, "at", True),
    ],
)
def test_the_worst_may_neither_grow_nor_shrink_unnoticed(worst: float, nodeid: str, is_stale: bool) -> None:
    """Any test may be nearer than the worst, but the one where it was met; none may be further."""
    assert is_stale == stale(worst, Kept(1.0, "at"), nodeid=nodeid)


@pytest.mark.parametrize(
    ("worst", "unit", "text"),
    [
        (0.0072, "K", "0.008 K"), (0.0072, "%", "0.8 %"), (3e-8, "digits", "7 digits"), (1e-12, "%", "none"),
        (2.0, "days", "2 days"), (2e-8, "%", "under 0.0001 %"),
    ],
)  # fmt: skip
def test_a_worst_is_said_upwards_to_one_digit(worst: float, unit: str, text: str) -> None:
    """Never better than it was."""
    assert text == said(Kept(worst, "at"), unit)


def test_yes_or_no_has_no_worst() -> None:
    """Where a test asks for a range or for equality, the line holds."""
    assert "holds" == said(Kept(0.0, ""), "%")
