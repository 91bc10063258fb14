"""Every bottle as it stands today: what is in it, until when it is good, and what its leader test said."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, tzinfo
from zoneinfo import ZoneInfo

from tankside.core.refusals import Refused
from tankside.core.shelf.accounts import LEAST_ML, Account, account
from tankside.core.shelf.as_booked import Vessel, contents_of
from tankside.core.shelf.bath_tests import Tested, tests_of
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.core.shelf.contents import Contents, bottle_good_until
from tankside.core.shelf.ledger import BathTest
from tankside.core.solutions.leader_test import DUE_AFTER_DAYS, LeaderAnswer, LeaderTest, judge_leader
from tankside.workflows.ports import Desk


@dataclass(frozen=True, slots=True)
class BottleNow:
    """A bottle with all that the ledger and its batch say of it.

    `until` is its last day, None where nobody has typed how long it keeps. `fresh` is the leader timed while
    its batch was new, `leader` what the test that counts today said; None where there is none.
    """

    bottle: Bottle
    batch: Batch
    account: Account
    contents: Contents
    until: date | None
    fresh: LeaderTest | None
    leader: LeaderAnswer | None

    @property
    def empty(self) -> bool:
        """Whether nothing is left in it and nothing comes back to it."""
        gone = self.account.ml is not None and self.account.ml <= LEAST_ML
        return self.account.discarded or (gone and (not self.batch.reusable or self.account.poured_over))


def bottles_now(desk: Desk, zone: tzinfo, today: date) -> tuple[BottleNow, ...]:
    """Every bottle that was ever put on the shelf, by code, as it stands on a day at a place."""
    batches = {one.key: one for one in desk.batches.all()}
    bottles, booked = desk.bottles.all(), desk.ledger.all()
    lines: dict[str, list[Booking]] = {one.code: [] for one in bottles}
    for one in booked:
        lines.setdefault(one.line.bottle, []).append(one)
    vessels = [
        Vessel(one.code, one.holds_ml, batches[one.batch].made.astimezone(zone).date()) for one in bottles
    ]
    contents = contents_of(vessels, booked, zone=zone)
    tests = {one.code: tests_of(lines[one.code]) for one in bottles}
    fresh = _fresh_by_batch(bottles, tests)
    return tuple(
        BottleNow(
            one,
            batches[one.batch],
            account(lines[one.code]),
            contents[one.code],
            bottle_until(batches[one.batch], contents[one.code]),
            test_of(fresh[one.batch].test) if one.batch in fresh else None,
            _leader(tests[one.code], fresh.get(one.batch), zone, today),
        )
        for one in bottles
    )


def bottle_now(desk: Desk, code: str, zone: tzinfo, today: date) -> BottleNow | None:
    """The bottle of one code, as `bottles_now` tells it."""
    return next((one for one in bottles_now(desk, zone, today) if one.bottle.code == code), None)


def last_days(desk: Desk) -> Mapping[str, date | None]:
    """The last day of every bottle at the place, None where nobody knows how long it keeps."""
    place = next(iter(desk.places.all()), None)
    zone = ZoneInfo(place.zone if place else "UTC")
    return {one.bottle.code: one.until for one in bottles_now(desk, zone, date.min)}


def bottle_until(batch: Batch, contents: Contents) -> date | None:
    """The last day of one bottle, None where nobody knows how long it keeps."""
    return bottle_good_until(contents, batch.keeps) if batch.keeps else None


def test_of(test: BathTest) -> LeaderTest | None:
    """A leader's time as it was noted; None for any other test."""
    if test.kind != "leader" or test.seconds is None:
        return None
    return LeaderTest(test.seconds, 20.0 if test.temp_c is None else test.temp_c)


def _fresh_by_batch(
    bottles: Iterable[Bottle], tests: Mapping[str, tuple[Tested, ...]]
) -> Mapping[object, Tested]:
    """The latest leader that was timed while each batch was new, in whichever of its bottles."""
    found: dict[object, Tested] = {}
    for bottle in bottles:
        for one in tests[bottle.code]:
            if one.test.kind == "leader" and one.test.fresh and one.void is None:
                found[bottle.batch] = one
    return found


def _leader(tests: Iterable[Tested], fresh: Tested | None, zone: tzinfo, today: date) -> LeaderAnswer | None:
    """What the last leader here says; a good one counts for four weeks, a bad one until the next."""
    if fresh is None or (reference := test_of(fresh.test)) is None:
        return None
    later = [one for one in tests if one.test.kind == "leader" and not one.test.fresh and one.void is None]
    last = later[-1] if later else fresh
    tonight = test_of(last.test)
    if tonight is None:
        return None
    try:
        answer = judge_leader(reference, tonight)
    except Refused:
        return None
    stale = (today - last.at.astimezone(zone).date()).days > DUE_AFTER_DAYS
    return None if stale and answer.verdict == "good" else answer
