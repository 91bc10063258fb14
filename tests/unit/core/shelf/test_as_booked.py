"""What bottles hold by their ledger: dates and film go with what is poured, and mistakes leave no trace."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime
from uuid import UUID
from zoneinfo import ZoneInfo

from tankside.core.shelf.as_booked import Vessel, contents_of
from tankside.core.shelf.bookings import Booking, opposite
from tankside.core.shelf.contents import Contents
from tankside.core.shelf.ledger import LedgerLine, LineKind

ZONE = ZoneInfo("Europe/Berlin")
MARCH, APRIL, MAY = date(2026, 3, 1), date(2026, 4, 20), date(2026, 5, 2)
LITRE = Vessel("R5TN-6", 1000.0, MARCH)


def booked(
    number: int, bottle: str, kind: LineKind, ml: float, *, on: date, act: str = "", area: float = 0.0
) -> Booking:
    """A line booked at noon of a day."""
    act = act or f"shelf:{number}"
    then = datetime(on.year, on.month, on.day, 12, tzinfo=UTC)
    return Booking(UUID(int=number), LedgerLine(bottle, kind, ml, area, act), act, number, then)


MIXED = booked(1, "R5TN-6", "mixed", 1000.0, on=MARCH)


def test_a_bath_that_came_back_the_same_evening_was_never_part_full() -> None:
    """Out and back on one day; what stays short into the night counts from that day."""
    out = booked(2, "R5TN-6", "drawn", -500.0, on=APRIL)
    back = booked(3, "R5TN-6", "returned", 490.0, on=APRIL, area=2.0)
    whole = contents_of([LITRE], [MIXED, out, back], zone=ZONE)["R5TN-6"]
    short = contents_of(
        [LITRE], [MIXED, out, replace(back, recorded=back.recorded.replace(day=21))], zone=ZONE
    )

    assert Contents(990.0, 1000.0, 2.0, MARCH) == whole
    assert short["R5TN-6"].part_full_since is None
    assert APRIL == contents_of([LITRE], [MIXED, out], zone=ZONE)["R5TN-6"].part_full_since


def test_decanting_carries_dates_and_stops_the_air() -> None:
    """A half bottle of April into two: a full one keeps the date made, a part-full one April too."""
    half = booked(2, "R5TN-6", "drawn", -500.0, on=APRIL)
    act = [
        booked(3, "R5TN-6", "decanted", -500.0, on=MAY, act="shelf:over"),
        booked(4, "AAAA-2", "decanted", 250.0, on=MAY, act="shelf:over"),
        booked(5, "BBBB-4", "decanted", 250.0, on=MAY, act="shelf:over"),
    ]
    vessels = [LITRE, Vessel("AAAA-2", 250.0, MAY), Vessel("BBBB-4", 500.0, MAY)]
    held = contents_of(vessels, [MIXED, half, *act], zone=ZONE)

    assert Contents(250.0, 250.0, 0.0, MARCH) == held["AAAA-2"]
    assert Contents(250.0, 500.0, 0.0, MARCH, APRIL) == held["BBBB-4"]
    assert 0.0 == held["R5TN-6"].ml


def test_pouring_over_keeps_the_older_date_of_the_two() -> None:
    """A bottle of March poured into one of April is of March, full or not."""
    other = Vessel("AAAA-2", 1000.0, APRIL)
    fresh = booked(2, "AAAA-2", "mixed", 500.0, on=APRIL)
    act = [
        booked(3, "R5TN-6", "decanted", -400.0, on=MAY, act="shelf:over", area=-3.0),
        booked(4, "AAAA-2", "decanted", 400.0, on=MAY, act="shelf:over", area=3.0),
    ]
    charged = replace(MIXED, line=replace(MIXED.line, area_units=8.0))
    held = contents_of([LITRE, other], [charged, fresh, *act], zone=ZONE)

    assert Contents(900.0, 1000.0, 3.0, MARCH) == held["AAAA-2"]
    assert Contents(600.0, 1000.0, 5.0, MARCH, MAY) == held["R5TN-6"]


def test_what_was_taken_back_leaves_no_date() -> None:
    """Drawn by mistake in April and taken back in May: full all along."""
    wrong = booked(2, "R5TN-6", "drawn", -500.0, on=APRIL)
    undone = replace(booked(3, "R5TN-6", "drawn", 0.0, on=MAY), line=opposite(wrong))
    put_right = booked(4, "R5TN-6", "drawn", 400.0, on=MAY, act="shelf:2")

    assert (
        Contents(1000.0, 1000.0, 0.0, MARCH)
        == contents_of([LITRE], [MIXED, wrong, undone], zone=ZONE)["R5TN-6"]
    )
    assert 900.0 == contents_of([LITRE], [MIXED, wrong, put_right], zone=ZONE)["R5TN-6"].ml


def test_the_day_is_that_of_the_place() -> None:
    """Half past eleven at night in London is the next day in Berlin."""
    late = replace(
        booked(2, "R5TN-6", "drawn", -500.0, on=APRIL), recorded=datetime(2026, 4, 20, 23, 30, tzinfo=UTC)
    )

    assert date(2026, 4, 21) == contents_of([LITRE], [MIXED, late], zone=ZONE)["R5TN-6"].part_full_since
    assert contents_of([LITRE], [MIXED, late], zone=UTC)["R5TN-6"].part_full_since == APRIL


def test_contamination_and_unknown_codes() -> None:
    """What got in is said; a code that nobody put on the shelf is passed over."""
    spoilt = booked(2, "R5TN-6", "contaminated", 0.0, on=APRIL)
    held = contents_of([LITRE], [MIXED, spoilt, booked(3, "ZZZZ-D", "drawn", -10.0, on=APRIL)], zone=ZONE)

    assert held["R5TN-6"].contaminated
    assert ["R5TN-6"] == list(held)
