"""Tests of one bottle as its ledger tells them: each stays named, void ones with their reason."""

from __future__ import annotations

from datetime import UTC, datetime
from uuid import UUID

from tankside.core.shelf.accounts import account
from tankside.core.shelf.bath_tests import tests_of as noted_of
from tankside.core.shelf.bookings import Booking, opposite
from tankside.core.shelf.ledger import BathTest, LedgerLine, LineKind

AT = datetime(2026, 3, 7, 20, tzinfo=UTC)
FRESH = BathTest("clearing", "river 100", 30.0, 20.0, fresh=True)
LATER = BathTest("clearing", "river 100", 42.0, 20.0)


def booked(number: int, kind: LineKind, test: BathTest | None = None, **more: float) -> Booking:
    """One line at the shelf."""
    line = LedgerLine("F9QD-2", kind, because=f"shelf:{number}", test=test, **more)  # type: ignore[arg-type]
    return Booking(UUID(int=number), line, f"shelf:{number}", 0, AT)


def test_tests_are_told_in_their_order() -> None:
    """The fresh one and the later one, neither void."""
    told = noted_of([booked(1, "mixed", ml=1000.0), booked(2, "tested", FRESH), booked(3, "tested", LATER)])

    assert [(FRESH, None), (LATER, None)] == [(one.test, one.void) for one in told]


def test_a_test_taken_back_stays_named() -> None:
    """It is void, not gone; its sums are what they were."""
    first = booked(2, "tested", LATER)
    back = Booking(UUID(int=9), opposite(first), "shelf:9", 0, AT)
    told = noted_of([first, back])

    assert [(LATER, "taken back")] == [(one.test, one.void) for one in told]
    assert 0.0 == account([first, back]).counted_units


def test_topping_up_voids_what_was_tested_before_but_not_what_was_fresh() -> None:
    """What is in the bottle now is another bath; the fresh time is still the measure."""
    told = noted_of(
        [booked(1, "tested", FRESH), booked(2, "tested", LATER), booked(3, "topped up", ml=100.0)]
    )

    assert [(FRESH, None), (LATER, "topped up since")] == [(one.test, one.void) for one in told]


def test_film_is_summed_as_it_is_and_as_it_counts() -> None:
    """Two rolls of tabular film: an area of 2, counted as 3, and both taken back by one line."""
    line = booked(1, "returned", ml=500.0, area_units=2.0, counted_units=3.0)
    stands = account([line])
    nothing = account([line, Booking(UUID(int=9), opposite(line), "shelf:9", 0, AT)])

    assert (2.0, 3.0) == (stands.area_units, stands.counted_units)
    assert (0.0, 0.0) == (nothing.area_units, nothing.counted_units)
