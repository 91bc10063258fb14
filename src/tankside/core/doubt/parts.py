"""Where a doubt comes from, and what would narrow it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.doubt.groups import Group
from tankside.core.doubt.monte_carlo import Model, Outcome, propagate


@dataclass(frozen=True, slots=True)
class Part:
    """A group's own standard deviation of the answer, and its share of the whole variance."""

    group: str
    sd: float
    share: float


@dataclass(frozen=True, slots=True)
class Parts:
    """The parts, largest first; `remainder` (a share, of either sign) closes the sum to one."""

    parts: tuple[Part, ...]
    remainder: float
    sd: float

    def sd_without(self, group: str) -> float:
        """Standard deviation left if `group` were known exactly."""
        share = next(part.share for part in self.parts if part.group == group)
        return float(self.sd * np.sqrt(max(0.0, 1.0 - share)))


def parts_of(model: Model, groups: Sequence[Group], draws: FloatArray, whole: Outcome | None = None) -> Parts:
    """Let one group at a time be free and hold the others at their median.

    Arguments as in `propagate`. Result: standard deviations in the unit of the model, shares of variance.
    Own model: docs/science/doubt. Doubt: joint effects of groups stay in the remainder.

    >>> from tankside.core.doubt.distributions import Normal
    >>> from tankside.core.doubt.groups import alone, draws_for
    >>> groups = (alone("x", Normal(0.0, 3.0)), alone("y", Normal(0.0, 4.0)))
    >>> found = parts_of(lambda v: v["x"] + v["y"], groups, draws_for(groups, seed=1))
    >>> [(part.group, round(part.share, 2)) for part in found.parts]
    [('y', 0.64), ('x', 0.36)]
    """
    whole = whole or propagate(model, groups, draws)
    sds = _one_free_at_a_time(model, groups, draws)
    shares = {name: (sd / whole.sd) ** 2 if whole.sd > 0 else 0.0 for name, sd in sds.items()}
    parts = sorted((Part(name, sd, shares[name]) for name, sd in sds.items()), key=lambda part: -part.sd)
    return Parts(tuple(parts), 1.0 - sum(shares.values()), whole.sd)


def what_would_narrow(parts: Parts, measurable: Sequence[str]) -> tuple[tuple[str, float], ...]:
    """The groups that a person could measure, with the standard deviation left if they did, best first.

    Only those that would take at least a tenth off the standard deviation are named.
    Own model: docs/science/doubt. Doubt: none added.

    >>> from tankside.core.doubt.distributions import Normal
    >>> from tankside.core.doubt.groups import alone, draws_for
    >>> inputs = [alone("coarse", Normal(0.0, 4.0)), alone("fine", Normal(0.0, 0.1))]
    >>> parts = parts_of(lambda v: v["coarse"] + v["fine"], inputs, draws_for(inputs, seed=1))
    >>> [group for group, _ in what_would_narrow(parts, ["coarse", "fine"])]
    ['coarse']
    """
    left = [(part.group, parts.sd_without(part.group)) for part in parts.parts if part.group in measurable]
    return tuple(sorted((one for one in left if one[1] <= 0.9 * parts.sd), key=lambda one: one[1]))


def _one_free_at_a_time(model: Model, groups: Sequence[Group], draws: FloatArray) -> dict[str, float]:
    """Standard deviation of the answer by group, the other groups at their median."""
    found: dict[str, float] = {}
    first = 0
    for group in groups:
        last = first + len(group.inputs)
        only = np.full_like(draws, 0.5)
        only[:, first:last] = draws[:, first:last]
        found[group.name] = propagate(model, groups, only).sd
        first = last
    return found
