"""Whether a batch of developer may be used tonight: its test goes before its date."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from tankside.core.refusals import refuse
from tankside.core.solutions.leader_test import LeaderAnswer, leader_test_due

Reason = Literal["leader-slow", "past-its-date", "test-due", "contaminated"]


@dataclass(frozen=True, slots=True)
class Fitness:
    """`reasons` against using the batch; `overridden` when it is used all the same, which is noted."""

    reasons: tuple[Reason, ...]
    overridden: bool = False

    @property
    def good(self) -> bool:
        """Whether nothing speaks against it."""
        return not self.reasons


@dataclass(frozen=True, slots=True)
class Standing:
    """What is known of a batch on one day: dates, whether it stands part full or spoilt, its leader test.

    `good_until` is None where nobody knows how long it keeps.
    """

    made: date
    good_until: date | None
    part_full: bool = False
    contaminated: bool = False
    leader: LeaderAnswer | None = None


def fitness_of(batch: Standing, *, today: date, precious: bool) -> Fitness:
    """What speaks against a batch today; a leader test that is due and missing does too.

    Own model: docs/science/keeping. Doubt: that of the test, about 15 %.

    >>> fitness_of(Standing(date(2026, 3, 1), date(2026, 9, 1)), today=date(2026, 3, 9), precious=False).good
    True
    """
    reasons: list[Reason] = ["contaminated"] if batch.contaminated else []
    if batch.leader is not None and batch.leader.verdict != "good":
        reasons.append("leader-slow")
    if batch.good_until is not None and today > batch.good_until:
        reasons.append("past-its-date")
    age_days = (today - batch.made).days
    if batch.leader is None and leader_test_due(
        age_days=age_days, part_full=batch.part_full, precious=precious
    ):
        reasons.append("test-due")
    return Fitness(tuple(reasons))


def may_develop(found: Fitness, *, precious: bool, override: bool = False) -> Fitness:
    """`found` if the batch may be used; held for a precious roll, refused for any other, unless overridden.

    A contaminated batch is never offered again, whatever the person says.
    Own model: docs/science/keeping. Doubt: none.

    >>> may_develop(Fitness(("leader-slow",)), precious=True, override=True).overridden
    True
    """
    if found.good:
        return found
    if "contaminated" in found.reasons:
        raise refuse("batch-contaminated", ways_on=("another-bottle", "mix-fresh"))
    if override:
        return Fitness(found.reasons, overridden=True)
    if precious:
        raise refuse("batch-held-for-precious", ways_on=("mix-fresh", "another-roll-first", "take-it-anyway"))
    if found.reasons == ("test-due",):
        return found
    raise refuse("batch-not-tonight", ways_on=("mix-fresh", "another-bottle", "take-it-anyway"))
