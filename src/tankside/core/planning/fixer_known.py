"""What the ledger of one bottle tells of its fixer: film as it counts, and the test pieces that judge it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tankside.core.permanence.capacity import COUNTED_WATER_PARTS
from tankside.core.permanence.clearing import ClearingTest
from tankside.core.permanence.fixer_standing import FixerKnown, judge_fixer
from tankside.core.refusals import Refused
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bath_tests import Tested, tests_of
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch
from tankside.core.shelf.ledger import BathTest


def fixer_known(batch: Batch, booked: Sequence[Booking]) -> FixerKnown | None:
    """What the ledger of one bottle tells of its fixer; None where it is none that film could be counted in.

    Only test pieces of the film that the fresh one was of are judged. Source: the ledger. Doubt: none.
    """
    if batch.kind != "fixer":
        return None
    stands = account(booked)
    told = [one for one in fixer_tests(booked) if one.void is None]
    fresh = next((one for one in reversed(told) if one.test.kind == "clearing" and one.test.fresh), None)
    later = [one for one in told if one.test.kind == "clearing" and not one.test.fresh]
    known = FixerKnown(
        used_units=max(stands.counted_units, 0.0),
        working_ml=stands.put_in_ml,
        water_parts=batch.dilution.times - 1 if batch.dilution else COUNTED_WATER_PARTS,
        fresh=clearing_of(fresh.test) if fresh else None,
        latest=clearing_of(later[-1].test) if later else None,
        units_since=_since(later[-1], booked) if later else 0.0,
        looks_bad=any(one.test.kind == "look" and one.test.spent for one in told),
        film=fresh.test.film.casefold() if fresh else "",
    )
    return known if _countable(known) else None


def fixer_tests(booked: Sequence[Booking]) -> tuple[Tested, ...]:
    """Every test of a bottle of fixer, those of another film than the fresh one void, for they judge nothing.

    Source: the ledger. Doubt: none.
    """
    found = tests_of(booked)
    fresh = [one.test.film for one in found if one.void is None and one.test.fresh]
    film = fresh[-1].casefold() if fresh else None
    return tuple(
        replace(one, void="another film")
        if one.void is None and one.test.kind == "clearing" and film not in (None, one.test.film.casefold())
        else one
        for one in found
    )


def clearing_of(test: BathTest) -> ClearingTest | None:
    """A clearing test as the science judges it; None where its values are none.

    Source: `ClearingTest`. Doubt: about 5 % of a time by eye.
    """
    return piece(test.seconds, test.temp_c)


def piece(seconds: float | None, temp_c: float | None) -> ClearingTest | None:
    """A test piece of `seconds` at `temp_c` (C); None where one is missing or outside what says anything.

    Source: `ClearingTest`. Doubt: about 5 % of a time by eye.
    """
    if seconds is None or temp_c is None:
        return None
    try:
        return ClearingTest(seconds, temp_c)
    except Refused:
        return None


def _since(tested: Tested, booked: Sequence[Booking]) -> float:
    """Units that were booked after a test."""
    at = next(number for number, one in enumerate(booked) if one.key == tested.line)
    return max(0.0, sum(one.line.counted_units for one in booked[at + 1 :]))


def _countable(known: FixerKnown) -> bool:
    """Whether a count of film can be told at all."""
    try:
        judge_fixer(known)
    except Refused:
        return False
    return True
