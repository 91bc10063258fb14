"""For how many rolls a bottle of stock is enough, in values and in words."""

from __future__ import annotations

import pytest

from tankside.core.planning.developer_left import Tankfuls, rolls_left, why_developer_left
from tankside.core.quantities.preferences import Preferences
from tankside.core.solutions.notation import Dilution
from tankside.wording import why

HALF = Tankfuls(Dilution(1, 1), 500.0, 1)


@pytest.mark.parametrize(
    ("stock_ml", "use", "rolls"),
    [
        (750.0, HALF, 3),
        (749.0, HALF, 2),
        (249.0, HALF, 0),
        (1000.0, Tankfuls(Dilution(1, 0), 600.0, 2), 2),
        (250.0, Tankfuls(Dilution(1, 49), 500.0, 1), 25),
    ],
)
def test_whole_tankfuls_by_volume(stock_ml: float, use: Tankfuls, rolls: int) -> None:
    """250 mL make one of 1+1 in half a litre; what is left over makes none."""
    assert rolls == rolls_left(stock_ml, use)


def test_its_working_says_what_it_counts() -> None:
    """Volume binds, and a leader test goes before any count."""
    found = why_developer_left(780.0, HALF)

    assert "Why 3 rolls?" == why.title(found, Preferences())
    assert ("By volume", "250 mL of stock for each tankful of 1 roll.") == why.length_words(
        found.lengths[0], Preferences()
    )
    assert ("A leader test goes before any count.",) == why.leaves_out_sentences(found)
