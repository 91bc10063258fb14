"""The plain search for the start of one more tankful: every step, every way, every variant placed in full.

It is the baseline that the search of the program is held to, by its answers in the tests and by its speed in
benchmarks/order_speed.py; it shares the stretching, the placing and the judge, but nothing that shuts a step.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice, product

from tankside.core.methods.baths import HandWork
from tankside.core.planning.acts import acts_of
from tankside.core.planning.check import faults
from tankside.core.planning.order import SAME_MIX_WITHIN_S, Coming
from tankside.core.planning.placing import placed
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.stretching import STEP_S, aims, stretched, with_aim

VARIANTS, AIMS = 24, 5


def plainly_joined(
    first: PlannedTankful, one: Coming, hands: HandWork, *, until_s: float
) -> tuple[PlannedTankful, PlannedTankful] | None:
    """The first tankful and one more in a tank of its own, None where no start before `until_s` passes."""
    at_s = first.starts_s + STEP_S
    while at_s < until_s:
        fresh = one.shared is not None and at_s <= SAME_MIX_WITHIN_S
        tankful = one.shared if fresh and one.shared is not None else one.own
        mixes = not fresh
        for earlier in _earlier(first, at_s):
            acts = acts_of(earlier, hands, at_s=earlier.starts_s)
            firm = [act for act in acts if not act.soft]
            for variant in islice(stretched(tankful, hands, at_s=at_s, firm=firm), VARIANTS):
                both = placed(
                    (*acts, *acts_of(variant, hands, at_s=at_s, mixes=mixes)),
                    between_s=hands.between_tankfuls_s,
                )
                if both is not None and not faults(both, between_s=hands.between_tankfuls_s):
                    return earlier, replace(variant, starts_after="A.develop:poured", starts_s=at_s)
        at_s += STEP_S
    return None


def _earlier(first: PlannedTankful, at_s: float) -> Iterator[PlannedTankful]:
    """The first tankful as it is, then with stop and fix stretched, least first."""
    yield first
    if at_s > sum(bath.times.aim_s for bath in first.baths if bath.kind != "wash"):
        return
    choices = [
        list(islice(aims(bath), AIMS)) if bath.kind in ("stop", "fix") else [bath.times.aim_s]
        for bath in first.baths
    ]
    for chosen in sorted(product(*choices), key=sum)[1:]:
        baths = tuple(with_aim(bath, aim_s) for bath, aim_s in zip(first.baths, chosen, strict=True))
        yield replace(first, baths=baths)
