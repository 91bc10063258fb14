"""How a fixer stands: the count of its film and its test piece bind both, and neither outweighs the other."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.permanence.capacity import COUNTED_WATER_PARTS, CapacityLeft, Fixed, capacity_left
from tankside.core.permanence.clearing import ClearingAnswer, ClearingTest, judge_clearing

Past = Literal["count", "test", "look"]

TEST_FROM_SHARE = 0.5
"""Once this share of the planned count is used a test piece goes before each session's film (ours)."""


@dataclass(frozen=True, slots=True)
class FixerKnown:
    """What is known of a working fixer.

    `used_units` of film as the fixer counts it went through `working_ml` (what was put in) with
    `water_parts` to one of concentrate; `fresh` and `latest` are its test pieces, `units_since` what went
    through after the latest. `looks_bad` once sulfur or cloud was seen;
    `film` is what its test pieces are of, in small letters.
    """

    used_units: float
    working_ml: float
    water_parts: float = COUNTED_WATER_PARTS
    fresh: ClearingTest | None = None
    latest: ClearingTest | None = None
    units_since: float = 0.0
    looks_bad: bool = False
    film: str = ""


@dataclass(frozen=True, slots=True)
class FixerStanding:
    """What is `left` by count, what the test piece says (None without a pair), and what speaks against it.

    `past` is empty while the fixer may be used; `test_due` before more film goes in.
    """

    left: CapacityLeft
    clearing: ClearingAnswer | None
    past: tuple[Past, ...]
    test_due: bool

    @property
    def done(self) -> bool:
        """Whether it is to be discarded whatever the count says: by its test piece or by its look."""
        return "test" in self.past or "look" in self.past


def judge_fixer(known: FixerKnown) -> FixerStanding:
    """How a fixer stands by its count, its test piece and its look.

    Own model: docs/science/fixing: any one of them ends it. The sources are those of `capacity_left` and
    `judge_clearing`. Doubt: 20 to 25 rolls a litre between sources; about 5 % of a clearing time.

    >>> known = FixerKnown(15.0, 1000, fresh=ClearingTest(45, 20), latest=ClearingTest(92, 20))
    >>> stands = judge_fixer(known)
    >>> stands.left.ordinary_rolls, stands.past
    (5, ('test',))
    """
    left = capacity_left(
        [Fixed(known.used_units)], working_ml=known.working_ml, water_parts=known.water_parts
    )
    clearing = judge_clearing(known.fresh, known.latest) if known.fresh and known.latest else None
    past: list[Past] = ["count"] if left.left_planned < -1e-9 else []
    if clearing is not None and clearing.verdict == "discard":
        past.append("test")
    if known.looks_bad:
        past.append("look")
    return FixerStanding(left, clearing, tuple(past), fixer_test_due(known, left))


def fixer_test_due(known: FixerKnown, left: CapacityLeft) -> bool:
    """Whether a test piece goes before more film: half the planned count is used, and film went in since.

    Own model: docs/science/fixing. Doubt: none; testing earlier costs a bit of film.

    >>> known = FixerKnown(14.0, 1000, latest=ClearingTest(42, 20), units_since=2.0)
    >>> fixer_test_due(known, capacity_left([Fixed(14.0)], working_ml=1000))
    True
    """
    untested = known.latest is None or known.units_since > 1e-9
    whole = left.left_planned + left.used_units
    return untested and known.used_units >= TEST_FROM_SHARE * whole - 1e-9
