"""What a test of a bath said: a test piece timed, an indicator or a strip looked at, the bath itself."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Literal
from uuid import UUID

from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.ledger import BathTest

Void = Literal["taken back", "another film", "topped up since"]


@dataclass(frozen=True, slots=True)
class Tested:
    """One test as the ledger has it: `line` is the row to take back, `run` the run it was noted in, if any.

    `void` says why it counts no more; a void test stays named.
    """

    line: UUID
    test: BathTest
    at: datetime
    run: UUID | None = None
    void: Void | None = None


def tests_of(booked: Sequence[Booking]) -> tuple[Tested, ...]:
    """Every test that was ever noted of one bottle, the earliest first, void ones named as such.

    A debt is told by its last line: a test that was put right counts as it was told last. What was tested
    before the bottle was topped up says nothing of what is in it now; what was fresh is still the measure.
    """
    found: dict[tuple[str, int], Tested] = {}
    for one in booked:
        key = (one.line.because, one.place)
        if one.line.kind == "topped up" and one.line.reverses is None:
            found = {
                at: was if was.test.fresh else _voided(was, "topped up since") for at, was in found.items()
            }
        elif one.line.kind == "tested" and one.line.test is not None:
            found[key] = Tested(one.key, one.line.test, one.recorded, one.run)
        elif one.line.kind == "tested" and key in found:
            found[key] = _voided(found[key], "taken back")
    return tuple(found.values())


def _voided(tested: Tested, void: Void) -> Tested:
    """The same test, void for the reason that came first."""
    return Tested(tested.line, tested.test, tested.at, tested.run, tested.void or void)


def indicator_turned(booked: Sequence[Booking]) -> bool:
    """Whether the latest indicator or strip that stands says that the bath is done.

    Own model: docs/science/stop-bath: the indicator is the test; nothing is computed from a pH. Doubt: none.
    """
    told = [one.test for one in tests_of(booked) if one.test.kind == "indicator" and one.void is None]
    return bool(told) and told[-1].spent
