"""Why a bottle is good until its day, in values and in words."""

from __future__ import annotations

from datetime import date

import pytest

from tankside.core.planning.explain_shelf import why_good_until
from tankside.core.quantities.preferences import Preferences
from tankside.core.shelf.contents import Contents
from tankside.core.solutions.keeping import by_leaflet
from tankside.wording import why

METRIC = Preferences()
RULE = by_leaflet(6, 2)
MADE = date(2026, 3, 1)


def test_a_full_bottle_stands_on_its_leaflet_alone() -> None:
    """Six months from 1 March: one source, 1 September, and a leader test that goes before it."""
    found = why_good_until(Contents(250, 250, 0, MADE), RULE, developer=True)

    assert ["keeps-full"] == [one.code for one in found.lengths]
    assert 6.0 == pytest.approx(found.answer.value, abs=0.05)
    assert "Why 1 Sep 2026?" == why.title(found, METRIC)
    assert ("Time a leader in it: that goes before any date.",) == why.narrows_sentences(found, METRIC)


def test_what_ends_first_counts() -> None:
    """Part full since 20 April: two months from then, 20 June; both stand beside each other."""
    found = why_good_until(Contents(125, 250, 0, MADE, date(2026, 4, 20)), RULE, developer=False)
    full, part = found.lengths

    assert "20 Jun 2026" == why.headline(found, METRIC)
    assert found.answer.value == part.estimate.value < full.estimate.value
    assert ("Part full", "2 months from 20 Apr 2026, as air got in.") == why.length_words(part, METRIC)
    assert () == found.narrows
