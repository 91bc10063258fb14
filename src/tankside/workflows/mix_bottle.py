"""A bottle put on the shelf outside any plan: mixed now, or written down because it stood there."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.core.solutions.keeping import KeepingTime
from tankside.core.solutions.kinds import SolutionKind
from tankside.core.solutions.notation import Dilution
from tankside.workflows.get_ready import HaveAlready, Marks, first_lines, fresh_bottle
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice

GOES_BACK: frozenset[SolutionKind] = frozenset({"stop bath", "fixer", "washing aid"})
"""Kinds that are poured back and used again."""


@dataclass(frozen=True, slots=True)
class Mixed:
    """What is in the bottle: kind, the person's name, how it is diluted, how much (mL), rolls it had.

    `keeping` as its leaflet says, `price_minor` (whole minor units for all of it) and `rolls_per_l` by its
    label where they were typed.
    """

    kind: SolutionKind
    name: str
    dilution: Dilution
    volume_ml: float
    rolls_used: float = 0.0
    keeping: KeepingTime | None = None
    price_minor: int | None = None
    rolls_per_l: float | None = None


def mix_bottle(desk: Desk, dice: Dice, mixed: Mixed, marks: Marks, now: Instant) -> Bottle:
    """Book a batch in one bottle under a fresh code."""
    if mixed.rolls_used < 0:
        raise refuse("number-out-of-range", at="used", least=0, most="any")
    working = mixed.dilution.water > 0
    batch = Batch(
        dice.key(), mixed.kind, mixed.name, "working" if working else "stock", str(mixed.dilution),
        moment_of(now), mixed.volume_ml, mixed.kind in GOES_BACK, mixed.keeping, mixed.price_minor,
    )  # fmt: skip
    with desk.together():
        desk.batches.add(batch)
        bottle = replace(fresh_bottle(desk, dice, batch, marks, now), rolls_per_l=mixed.rolls_per_l)
        desk.bottles.keep(bottle)
        stood = HaveAlready(mixed.volume_ml, mixed.rolls_used)
        desk.ledger.append(first_lines(dice, batch, bottle, now, stood))
    return bottle
