"""Keeping times that the program offers by itself are those that were printed."""

from __future__ import annotations

import pytest

from tankside.catalogue.capacity import printed_of
from tankside.core.solutions.keeping import printed_keeping


@pytest.mark.checks(of=printed_keeping)
def test_a_working_fixer_keeps_as_printed() -> None:
    """Anchell, Darkroom Cookbook, 3rd ed., 2008, p. 108: two months (published)."""
    (row,) = printed_of("life", "working fixer")
    found = printed_keeping("fixer", working=True)

    assert found is not None
    assert (row.value, row.unit, row.provenance.how) == (found.full_months, "months", "published")
    assert row.provenance.key == found.provenance.key


def test_what_stands_there_from_memory_only_is_not_offered() -> None:
    """Six months of a stock developer are quoted from memory: its leaflet is asked."""
    assert {"from memory"} == {one.provenance.how for one in printed_of("life", "D-76 stock full bottle")}
    assert printed_keeping("developer", working=False) is None
