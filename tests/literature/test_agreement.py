"""What the literature tests compare is noted, held to what is kept, and said upwards."""

from __future__ import annotations

import numpy as np
import pytest
from literature.apart import Apart, Kept, said, stale


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
