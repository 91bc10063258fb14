"""A fixer by count, by test piece and by look: each ends it, none outweighs another."""

from __future__ import annotations

import pytest

from tankside.core.permanence.clearing import ClearingTest
from tankside.core.permanence.fixer_standing import FixerKnown, Past, fixer_test_due, judge_fixer

FRESH = ClearingTest(45, 20)


@pytest.mark.checks(of=judge_fixer)
@pytest.mark.parametrize(
    ("used", "seconds", "bad", "past"),
    [
        (15.0, 75.0, False, ()),
        (15.0, 92.0, False, ("test",)),
        (20.0, 75.0, False, ()),
        (20.5, 75.0, False, ("count",)),
        (1.0, 45.0, True, ("look",)),
        (21.0, 90.0, True, ("count", "test", "look")),
    ],
)
def test_count_test_and_look_bind_each_for_itself(
    used: float, seconds: float, *, bad: bool, past: tuple[Past, ...]
) -> None:
    """Published: 20 rolls a litre (Anchell 2008, p. 108), done at doubled clearing (NAVEDTRA 14209, 249)."""
    known = FixerKnown(used, 1000, fresh=FRESH, latest=ClearingTest(seconds, 20), looks_bad=bad)

    assert past == judge_fixer(known).past


@pytest.mark.checks(of=judge_fixer)
@pytest.mark.parametrize(
    ("seconds", "temp_c", "done"), [(75.0, 15.0, False), (128.0, 15.0, True), (92.0, 20.0, True)]
)
def test_a_cold_test_piece_is_judged_at_the_fresh_temperature(
    seconds: float, temp_c: float, *, done: bool
) -> None:
    """Published factor of two in 10 K (TM 11-2323, 33c): at 15 C it has doubled at 45 x 2 x 1.41 = 127 s."""
    known = FixerKnown(3.0, 1000, fresh=FRESH, latest=ClearingTest(seconds, temp_c))

    assert done == judge_fixer(known).done


@pytest.mark.checks(of=fixer_test_due)
@pytest.mark.parametrize(
    ("used", "tested", "since", "due"),
    [(9.0, False, 0.0, False), (10.0, False, 0.0, True), (14.0, True, 0.0, False), (14.0, True, 1.0, True)],
)
def test_from_half_the_count_on_a_test_goes_before_film(
    used: float, since: float, *, tested: bool, due: bool
) -> None:
    """Ours: half of 20 is used, and film went in since the last test piece."""
    latest = ClearingTest(50, 20) if tested else None
    known = FixerKnown(used, 1000, fresh=FRESH, latest=latest, units_since=since)

    assert due == judge_fixer(known).test_due
    assert due == fixer_test_due(known, judge_fixer(known).left)


def test_without_a_fresh_time_nothing_is_judged_by_the_test_piece() -> None:
    """The count stands alone."""
    stands = judge_fixer(FixerKnown(3.0, 1000, latest=ClearingTest(300, 20)))

    assert (None, ()) == (stands.clearing, stands.past)
