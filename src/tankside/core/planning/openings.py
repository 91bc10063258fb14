"""Whether acts can be placed at all: what each needs of the hands leaves the others only so much."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tankside.core.planning.acts import Act

PASSES = 60
"""Enough for openings to stand still in all evenings tried; after that they pass (ours)."""

HAIR_S = 1e-6
"""Starts this near to an edge are let pass: the judge decides, here nothing sound may be lost."""


@dataclass(frozen=True, slots=True)
class Openings:
    """For each act the earliest and latest start, how long it takes, and whose it is, all in seconds."""

    earliest_s: NDArray[np.float64]
    latest_s: NDArray[np.float64]
    for_s: NDArray[np.float64]
    whose: NDArray[np.int64]

    @classmethod
    def of(cls, acts: Sequence[Act]) -> Openings:
        """The openings that acts have by themselves."""
        rows = [(one.earliest_s, one.latest_s, one.for_s) for one in acts]
        numbers = np.array(rows, dtype=np.float64).reshape(-1, 3)
        whose = np.array([ord(one.tankful[0]) for one in acts], dtype=np.int64)
        return cls(numbers[:, 0], numbers[:, 1], numbers[:, 2], whose)

    def later(self, by_s: float) -> Openings:
        """The same, `by_s` later."""
        return Openings(self.earliest_s + by_s, self.latest_s + by_s, self.for_s, self.whose)

    def near(self, other: Openings, *, within_s: float) -> Openings:
        """Those that may come in each other's way: within `within_s` of the span of the other acts."""
        from_s = other.earliest_s.min(initial=np.inf) - within_s
        to_s = (other.latest_s + other.for_s).max(initial=-np.inf) + within_s
        here = (self.latest_s + self.for_s > from_s) & (self.earliest_s < to_s)
        return Openings(self.earliest_s[here], self.latest_s[here], self.for_s[here], self.whose[here])

    def beside(self, other: Openings) -> Openings:
        """These and those."""
        return Openings(
            np.concatenate((self.earliest_s, other.earliest_s)),
            np.concatenate((self.latest_s, other.latest_s)),
            np.concatenate((self.for_s, other.for_s)),
            np.concatenate((self.whose, other.whose)),
        )


def may_be_placed(acts: Openings, *, between_s: float) -> bool:
    """False only where no placing can pass the judge; True promises nothing.

    Whatever start another act takes from its opening, it shuts the starts that every one of them would shut:
    from its latest less this act's length to its earliest and its own length, `between_s` (0 s or more) added
    on both sides for another tankful. Openings shrink by that until they stand still, or one is gone.
    Own model: docs/science/two-tanks. Doubt: none; the rule only ever takes away what must collide.

    >>> from tankside.core.planning.acts import Act
    >>> pour = Act("A", "fix", "pour", 0, 30, 0, 0)
    >>> turn = Act("B", "fix", "invert", 10, 10, 0, 35)
    >>> [may_be_placed(Openings.of([pour, turn]), between_s=gap_s) for gap_s in (0.0, 10.0)]
    [True, False]
    """
    first_s, last_s = acts.earliest_s.copy(), acts.latest_s.copy()
    gap_s = np.where(acts.whose[:, None] == acts.whose[None, :], 0.0, between_s)
    before_s, after_s = acts.for_s[:, None] + gap_s, acts.for_s[None, :] + gap_s
    itself = np.eye(len(first_s), dtype=bool)
    for _ in range(PASSES):
        shut_from_s = last_s[None, :] - before_s + HAIR_S
        shut_to_s = first_s[None, :] + after_s - HAIR_S
        shut_from_s[itself] = np.inf
        too_early = (shut_from_s < first_s[:, None]) & (first_s[:, None] < shut_to_s)
        too_late = (shut_from_s < last_s[:, None]) & (last_s[:, None] < shut_to_s)
        if not (too_early.any() or too_late.any()):
            break
        first_s = np.where(too_early, shut_to_s + HAIR_S, first_s[:, None]).max(axis=1, initial=-np.inf)
        last_s = np.where(too_late, shut_from_s - HAIR_S, last_s[:, None]).min(axis=1, initial=np.inf)
        if (first_s > last_s + HAIR_S).any():
            return False
    return True
