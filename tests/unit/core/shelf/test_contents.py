"""Laws of pouring from bottle to bottle."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.refusals import Refused
from tankside.core.shelf.contents import Contents, decanted, drawn, merged, which_to_use
from tankside.core.shelf.fitness import Standing, fitness_of, may_develop

DAY = date(2026, 3, 1)
volumes = st.floats(50, 2000)
areas = st.floats(0, 40)


def contents(ml: float, area_units: float, *, days: int = 0, spoilt: bool = False) -> Contents:
    """A full bottle."""
    made = DAY + timedelta(days=days)
    return Contents(ml, ml, area_units, made, contaminated=spoilt, counted_units=1.5 * area_units)


@given(ml=volumes, area=areas, shares=st.lists(st.floats(0.05, 1), min_size=1, max_size=6))
def test_decanting_loses_and_makes_nothing(ml: float, area: float, shares: list[float]) -> None:
    """Volume and area add up, area per litre stays."""
    poured = [ml * one / sum(shares) for one in shares]
    of = contents(ml, area)
    parts = decanted(of, [(one, one * 1.2) for one in poured], on=DAY)

    assert ml == pytest.approx(sum(one.ml for one in parts))
    assert area == pytest.approx(sum(one.area_units for one in parts))
    assert 1.5 * area == pytest.approx(sum(one.counted_units for one in parts))
    assert [of.units_per_l] * len(parts) == pytest.approx([one.units_per_l for one in parts])


@given(one=volumes, other=volumes, area=areas, days=st.integers(-90, 90))
def test_merging_adds_area_and_keeps_the_older_date(one: float, other: float, area: float, days: int) -> None:
    """In whatever order they are poured."""
    first, second = contents(one, area), contents(other, 3.0, days=days)
    both = merged(first, second, into_ml=one + other, on=DAY)

    assert one + other == pytest.approx(both.ml)
    assert area + 3.0 == both.area_units
    assert 1.5 * (area + 3.0) == pytest.approx(both.counted_units)
    assert min(first.made, second.made) == both.made
    assert both == merged(second, first, into_ml=one + other, on=DAY)


def test_contamination_spreads_and_stays() -> None:
    """Into what it is merged with, and into every bottle it is decanted to."""
    both = merged(contents(250, 0), contents(250, 0, spoilt=True), into_ml=500, on=DAY)

    assert both.contaminated
    assert [True, True] == [one.contaminated for one in decanted(both, [(200, 200)] * 2, on=DAY)]
    assert which_to_use([(both, None)], ml=100, today=DAY) is None


def test_a_contaminated_batch_is_never_offered_again() -> None:
    """Not even overridden."""
    found = fitness_of(Standing(DAY, DAY, contaminated=True), today=DAY, precious=False)
    with pytest.raises(Refused) as no:
        may_develop(found, precious=False, override=True)

    assert "batch-contaminated" == no.value.refusal.code


def test_topped_to_the_brim_it_stands_full() -> None:
    """Two half bottles made one full one stop the clock of the air; a part-full one keeps its first day."""
    half = drawn(contents(250, 0), 125, on=DAY)
    full = merged(half, half, into_ml=250, on=DAY + timedelta(days=9))
    again = drawn(half, 25, on=DAY + timedelta(days=9))

    assert full.part_full_since is None
    assert DAY == again.part_full_since


@pytest.mark.parametrize(
    "pour",
    [
        lambda: decanted(contents(250, 0), [(300, 300)], on=DAY),
        lambda: decanted(contents(250, 0), [(250, 200)], on=DAY),
        lambda: drawn(contents(250, 0), 300, on=DAY),
        lambda: merged(contents(250, 0), contents(250, 0), into_ml=400, on=DAY),
    ],
)
def test_what_does_not_go_is_refused(pour: object) -> None:
    """More than there is, or into a bottle too small."""
    with pytest.raises(Refused) as no:
        pour()  # type: ignore[operator]

    assert no.value.refusal.code in {"more-than-is-there", "bottle-too-small"}
