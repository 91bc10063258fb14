"""What can be done with one bottle, and what its page says of dates and tests."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from zoneinfo import ZoneInfo

from tankside.core.quantities.display import volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import LEAST_ML
from tankside.core.shelf.renewed import first_filling_left
from tankside.core.solutions.leader_test import leader_test_due
from tankside.wording.keeping import (
    age_sentence,
    leader_sentence,
    reference_sentence,
    renewed_sentence,
    rule_sentence,
    until_sentence,
)
from tankside.workflows.look_at_shelf import BottleNow, bottles_now
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk
from tankside.workflows.pour_over import alike
from tankside.workflows.time_leader import may_be_fresh


@dataclass(frozen=True, slots=True)
class LeaderTold:
    """The leader test of a developer: what it was fresh, what it said last, and which may be timed now."""

    reference: str
    last: str
    due: bool
    asks_fresh: bool
    asks_tonight: bool


@dataclass(frozen=True, slots=True)
class BottleActs:
    """Everything on a bottle's page beside its level and ledger; `act` is offered while it may be used."""

    dates: tuple[str, ...]
    until: bool
    rule: str
    leader: LeaderTold | None
    usable: bool
    room: str
    others: tuple[tuple[str, str], ...]


def bottle_acts(desk: Desk, code: str, preferences: Preferences, zone: str, now: Instant) -> BottleActs:
    """What the page of one bottle offers today."""
    there = ZoneInfo(zone)
    today = moment_of(now).astimezone(there).date()
    bottles = bottles_now(desk, there, today)
    one = next(each for each in bottles if each.bottle.code == code)
    renewed = first_filling_left(desk.ledger.of_bottle(code))
    told = (
        age_sentence(one.contents, today, preferences),
        until_sentence(one.until, today),
        "" if renewed is None else renewed_sentence(renewed),
    )
    usable = not one.account.discarded and one.contents.ml > LEAST_ML
    room_ml = max(0.0, one.contents.holds_ml - one.contents.ml)
    return BottleActs(
        tuple(each for each in told if each) if usable else (),
        usable and one.until is not None,
        rule_sentence(one.batch.keeps),
        _leader(one, preferences, there, now) if one.batch.kind == "developer" else None,
        usable,
        volume_text(room_ml, preferences) if room_ml > LEAST_ML else "",
        tuple(
            (each.bottle.code, f"{each.bottle.code}, {volume_text(each.contents.ml, preferences)}")
            for each in alike(bottles, one)
        ),
    )


def _leader(one: BottleNow, preferences: Preferences, zone: ZoneInfo, now: Instant) -> LeaderTold:
    """Its leader test today."""
    today: date = moment_of(now).astimezone(zone).date()
    due = one.leader is None and leader_test_due(
        age_days=(today - one.contents.made).days,
        part_full=one.contents.part_full_since is not None,
        precious=False,
    )
    return LeaderTold(
        reference_sentence(one.fresh, preferences) if one.fresh else "",
        leader_sentence(one.leader) if one.leader and one.leader.ratio != 1.0 else "",
        due,
        one.fresh is None and may_be_fresh(one, now, zone),
        one.fresh is not None,
    )
