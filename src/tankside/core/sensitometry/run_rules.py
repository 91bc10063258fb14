"""Patterns that chance rarely makes: the Western Electric run rules."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray


@dataclass(frozen=True, slots=True)
class RunRule:
    """`least` of the last `of` points beyond `beyond` sigmas on one side."""

    number: int
    least: int
    of: int
    beyond: float


WESTERN_ELECTRIC = (
    RunRule(1, 1, 1, 3.0),
    RunRule(2, 2, 3, 2.0),
    RunRule(3, 4, 5, 1.0),
    RunRule(4, 8, 8, 0.0),
)
"""One beyond 3 sigma; two of three beyond 2; four of five beyond 1; eight on one side of the middle."""

NUMBERS = (1, 2, 3, 4)
FOR_A_HOME_CHART = (1, 4)
"""All four cry wolf every 92 points, these two every 153 (Champ and Woodall 1987, from memory)."""


def broken_rules(
    values: FloatArray, *, mean: float, sigma: float, numbers: Sequence[int] = NUMBERS
) -> tuple[tuple[int, ...], ...]:
    """For each value the rules that it completes, itself being one of those beyond.

    Arguments: values oldest first; `sigma` above 0 in their unit; `numbers` of the rules asked for.
    Result: numbers of rules, empty where nothing is odd.
    Source: Western Electric, Statistical Quality Control Handbook (1956), as told by the article seen:
    a false alarm every 91.75 points with all four. Doubt: none; chance breaks them too.

    >>> broken_rules(np.array([0.0, 2.5, 0.0, 2.5]), mean=0.0, sigma=1.0)
    ((), (), (), (2,))
    """
    scores = (np.asarray(values, dtype=float) - mean) / sigma
    asked = [rule for rule in WESTERN_ELECTRIC if rule.number in numbers]
    told = [{rule.number for rule in asked if _completes(scores[: i + 1], rule)} for i in range(len(scores))]
    return tuple(tuple(sorted(one)) for one in told)


def _completes(scores: FloatArray, rule: RunRule) -> bool:
    """Whether the last score completes the rule on its own side."""
    side = 1.0 if scores[-1] > 0 else -1.0
    beyond = side * scores[-rule.of :] > rule.beyond
    return bool(beyond[-1]) and int(np.sum(beyond)) >= rule.least
