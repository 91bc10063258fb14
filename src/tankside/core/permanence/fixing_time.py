"""How long to fix: a multiple of the clearing time, in one bath or two."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.permanence.clearing import TIMES_CLEARING, TIMES_CLEARING_TABULAR
from tankside.core.refusals import refuse

Grain = Literal["ordinary", "tabular", "unknown"]
Baths = Literal[1, 2]

CEILING_S = 600.0
"""Most in fresh rapid fixer, which begins to bleach fine silver beyond it (common practice)."""


@dataclass(frozen=True, slots=True)
class FixingTime:
    """Seconds in each bath, in their order, and the most that all of them may come to."""

    each_s: tuple[float, ...]
    most_s: float = CEILING_S

    @property
    def whole_s(self) -> float:
        """All baths together."""
        return sum(self.each_s)


def fixing_time(clearing_s: float, *, grain: Grain, baths: Baths = 1) -> FixingTime:
    """Time in each fixing bath for film that clears in `clearing_s` (5 to 1800 s) in the first one.

    Twice the clearing time, three times for tabular or unknown film; two baths share it equally.
    Source: NAVEDTRA 14209 (1993), p. 249: twice the clearing time, equal times in two baths.
    Doubt: about 5 % of a clearing time by eye; sources say two and three times.

    >>> fixing_time(75, grain="ordinary").each_s, fixing_time(75, grain="tabular", baths=2).each_s
    ((150.0,), (112.5, 112.5))
    """
    if not 5 <= clearing_s <= 1800:
        raise refuse("clearing-time-out-of-range", at="clearing_s", seconds=clearing_s)
    times = TIMES_CLEARING if grain == "ordinary" else TIMES_CLEARING_TABULAR
    whole_s = times * clearing_s
    if whole_s > CEILING_S:
        raise refuse("fix-past-its-ceiling", ways_on=("mix-fresh",), needed_s=whole_s, most_s=CEILING_S)
    return FixingTime((whole_s / baths,) * baths)
