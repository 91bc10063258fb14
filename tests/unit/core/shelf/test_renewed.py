"""How new a topped-up bath is, by its ledger."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from uuid import UUID

import pytest

from tankside.core.shelf.bookings import Booking, opposite
from tankside.core.shelf.ledger import LedgerLine, LineKind
from tankside.core.shelf.renewed import first_filling_left
from tankside.core.solutions.replenishing import original_left

THEN = datetime(2026, 3, 1, tzinfo=UTC)


def booked(*lines: tuple[LineKind, float]) -> list[Booking]:
    """Lines in the order they were booked."""
    return [
        Booking(UUID(int=number), LedgerLine("R5TN-6", kind, ml), f"shelf:{number}", 0, THEN)
        for number, (kind, ml) in enumerate(lines, 1)
    ]


def test_ten_rolls_at_seventy_of_a_litre() -> None:
    """The same as the series of a bath topped up by the same each time: (1 - 0.07) to the tenth, 48 %."""
    each: list[tuple[LineKind, float]] = [("drawn", -70.0), ("topped up", 70.0)]
    share = first_filling_left(booked(("mixed", 1000.0), *each * 10))

    assert share == pytest.approx(0.93**10)
    assert share == pytest.approx(original_left(10, bath_ml=1000, top_up_ml=70))


def test_topped_up_into_half_a_bottle() -> None:
    """500 mL of old and 250 mL of new: two thirds; never topped up there is nothing to say."""
    assert first_filling_left(booked(("mixed", 1000.0), ("drawn", -500.0))) is None
    assert 2 / 3 == pytest.approx(
        first_filling_left(booked(("mixed", 1000.0), ("drawn", -500.0), ("topped up", 250.0))) or 0.0
    )


def test_what_was_taken_back_renews_nothing() -> None:
    """A line and the one that names it."""
    lines = booked(("mixed", 500.0), ("topped up", 250.0), ("topped up", 0.0))
    lines[2] = replace(lines[2], line=opposite(lines[1]))

    assert first_filling_left(lines) is None
