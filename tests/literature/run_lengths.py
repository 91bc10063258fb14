"""How long run rules keep still when nothing is wrong: a Markov chain over what the rules can still see."""

from __future__ import annotations

from collections.abc import Sequence
from math import erf, sqrt

import numpy as np

from tankside.core.sensitometry.run_rules import broken_rules

ZONES = (-3.5, -2.5, -1.5, -0.5, 0.5, 1.5, 2.5, 3.5)
"""One value for each zone between the limits at 0, 1, 2 and 3 sigmas."""

History = tuple[float, ...]


def chance(zone: float) -> float:
    """Probability of a zone under the normal law."""
    low = abs(zone) - 0.5
    above = 0.5 * (1 - erf(low / sqrt(2)))
    return above if low == 3.0 else above - 0.5 * (1 - erf((low + 1) / sqrt(2)))


def what_matters(history: History) -> tuple[object, ...]:
    """What the rules can still see: two points for the second, four for the third, the run for the fourth."""
    two = tuple(np.sign(z) if abs(z) > 2 else 0 for z in ((0.5,) * 4 + history)[-2:])
    four = tuple(np.sign(z) if abs(z) > 1 else 0 for z in ((0.5,) * 4 + history)[-4:])
    run = 0
    for z in reversed(history):
        if z * history[-1] < 0:
            break
        run += 1
    return two, four, run, np.sign(history[-1]) if history else 0


def mean_run_length(numbers: Sequence[int]) -> float:
    """Mean number of points to the first false alarm of these rules."""
    known: dict[tuple[object, ...], int] = {what_matters(()): 0}
    waiting: list[History] = [()]
    moves: list[tuple[int, int, float]] = []
    for history in waiting:
        here = known[what_matters(history)]
        for zone in ZONES:
            grown = (*history, zone)[-8:]
            if broken_rules(np.array(grown), mean=0.0, sigma=1.0, numbers=numbers)[-1]:
                continue
            seen = what_matters(grown)
            if seen not in known:
                known[seen] = len(known)
                waiting.append(grown)
            moves.append((here, known[seen], chance(zone)))
    matrix = np.eye(len(known))
    for here, there, probability in moves:
        matrix[here, there] -= probability
    return float(np.linalg.solve(matrix, np.ones(len(known)))[0])
