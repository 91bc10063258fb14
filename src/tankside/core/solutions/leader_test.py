"""The leader test: a fogged end of film in a drop of developer, timed to full black in room light."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.refusals import refuse

STOP_AT = 2.0
"""Multiple of the fresh time at which a developer is not used (common practice)."""

DUE_AFTER_DAYS = 28
FRESH_DAYS = 7
"""A leader timed so long after mixing still counts as the fresh one (ours)."""
MOST_STEP_K = 2.0
"""Two tests are alike within this difference of temperature (ours)."""

LeaderVerdict = Literal["good", "not for this batch"]


@dataclass(frozen=True, slots=True)
class LeaderTest:
    """A leader that was black after `seconds` (3 to 900) in developer of `temp_c` (14 to 28 C)."""

    seconds: float
    temp_c: float = 20.0

    def __post_init__(self) -> None:
        if not 3 <= self.seconds <= 900:
            raise refuse("leader-time-out-of-range", at="seconds", seconds=self.seconds)
        if not 14 <= self.temp_c <= 28:
            raise refuse("leader-temperature-out-of-range", at="temp_c", temp_c=self.temp_c)


@dataclass(frozen=True, slots=True)
class LeaderAnswer:
    """`ratio` of tonight's time to the fresh one, and what follows."""

    ratio: float
    verdict: LeaderVerdict


def judge_leader(fresh: LeaderTest, tonight: LeaderTest) -> LeaderAnswer:
    """Judge tonight's leader against the one taken when the batch was fresh, same film, same temperature.

    Own model: docs/science/keeping: no beyond twice the fresh time (common practice).
    Doubt: about 15 % of a time by eye.

    >>> judge_leader(LeaderTest(35), LeaderTest(120)).verdict
    'not for this batch'
    """
    if abs(fresh.temp_c - tonight.temp_c) > MOST_STEP_K:
        raise refuse(
            "leader-tests-not-alike",
            ways_on=("test-at-the-same-temperature",),
            fresh_c=fresh.temp_c,
            tonight_c=tonight.temp_c,
        )
    ratio = tonight.seconds / fresh.seconds
    return LeaderAnswer(ratio, "not for this batch" if ratio >= STOP_AT else "good")


def leader_test_due(*, age_days: int, part_full: bool, precious: bool) -> bool:
    """Whether a leader test is due before this developer is used: old, part full, or a precious roll.

    Own model: docs/science/keeping (common practice: over four weeks). Doubt: none.

    >>> leader_test_due(age_days=40, part_full=False, precious=False)
    True
    """
    return age_days > DUE_AFTER_DAYS or part_full or precious
