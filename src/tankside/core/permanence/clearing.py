"""The clearing test of a fixer: read at its own temperature, judged at one temperature."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.refusals import refuse

Q10_FIXING = 2.0
"""Rate of fixing per 10 K. Source: US TM 11-2323, para. 33c: time doubles per 18 F below 68 F."""

DISCARD_AT = 2.0
"""Multiple of the fresh clearing time at which a fixer is done. Source: NAVEDTRA 14209 (1993), p. 249."""

TIMES_CLEARING = 2.0
TIMES_CLEARING_TABULAR = 3.0
"""Fixing time over clearing time; tabular or unknown film takes the larger. Source: NAVEDTRA 14209 and needs
of iodide-rich films (common practice)."""

Verdict = Literal["good", "discard"]


@dataclass(frozen=True, slots=True)
class ClearingTest:
    """A test piece that cleared in `seconds` at `temp_c`; wetted or dry alike, but the same each time."""

    seconds: float
    temp_c: float

    def __post_init__(self) -> None:
        if not 5 <= self.seconds <= 1800:
            raise refuse("clearing-time-out-of-range", at="seconds", seconds=self.seconds)
        if not 10 <= self.temp_c <= 30:
            raise refuse("clearing-temperature-out-of-range", at="temp_c", temp_c=self.temp_c)

    def at(self, temp_c: float) -> float:
        """The clearing time in s that the same bath would show at `temp_c`."""
        return self.seconds * float(Q10_FIXING ** ((self.temp_c - temp_c) / 10.0))


@dataclass(frozen=True, slots=True)
class ClearingAnswer:
    """`ratio` to fresh at one temperature, the verdict, and how long to fix at the bath's own temperature."""

    ratio: float
    verdict: Verdict
    fix_s: float
    fix_tabular_s: float


def judge_clearing(fresh: ClearingTest, tonight: ClearingTest) -> ClearingAnswer:
    """Judge tonight's test piece against the fresh one of the same film; fix by the real time.

    Source: NAVEDTRA 14209 (1993): fix for twice the clearing time, discard when it has doubled;
    US TM 11-2323 para. 33c for the temperature.
    Doubt: about 5 % of a clearing time by eye; silver can pass its limit before the time doubles, so the
    count of film area binds as well (`capacity`).

    >>> answer = judge_clearing(ClearingTest(45, 20), ClearingTest(75, 15))
    >>> (round(answer.ratio, 2), answer.verdict, answer.fix_s, answer.fix_tabular_s)
    (1.18, 'good', 150.0, 225.0)
    """
    ratio = tonight.at(fresh.temp_c) / fresh.seconds
    return ClearingAnswer(
        ratio,
        "discard" if ratio >= DISCARD_AT else "good",
        TIMES_CLEARING * tonight.seconds,
        TIMES_CLEARING_TABULAR * tonight.seconds,
    )
