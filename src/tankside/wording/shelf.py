"""The shelf in words: what is left in a bottle, and every line of its ledger."""

from __future__ import annotations

from math import floor

from tankside.core.permanence.capacity import CapacityLeft
from tankside.core.quantities.display import ROLLS_STEP, to_step, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.shelf.accounts import Account
from tankside.core.shelf.bottles import Batch
from tankside.core.shelf.ledger import LedgerLine, LineKind

ACTS: dict[LineKind, str] = {
    "mixed": "{ml} mixed",
    "decanted": "{ml} decanted",
    "drawn": "{ml} poured out",
    "returned": "{ml} poured back",
    "charged": "{rolls} went through it",
    "topped up": "{ml} topped up",
    "filtered": "filtered",
    "tested": "tested",
    "contaminated": "something else got in",
    "discarded": "poured away",
}

LEADER = "a leader was black in {seconds} s{fresh}"


def rolls_left(left: CapacityLeft) -> str:
    """How many rolls a fixer may still take, by both sources.

    >>> rolls_left(CapacityLeft(15.0, 5.0, 10.0)), rolls_left(CapacityLeft(26.0, -6.0, -1.0))
    ('5 to 10 rolls left', 'no roll left')
    """
    low, high = (max(0, floor(one + 1e-9)) for one in (left.left_planned, left.left_named))
    if high == 0:
        return "no roll left"
    return f"{low} to {high} rolls left" if low != high else f"{_rolls(low)} left"


def capacity_sentence(left: CapacityLeft, *, planned: float, named: float) -> str:
    """What was used, and that two sources differ."""
    between = f"{floor(planned + 1e-9)} to {floor(named + 1e-9)}"
    return f"{_rolls(left.used_units)} used of {between}. Two sources differ."


def bottle_name(batch: Batch) -> str:
    """The person's name for what is in a bottle, with its parts where it is diluted."""
    return f"{batch.name}, {batch.parts}" if batch.strength == "working" else batch.name


def standing(batch: Batch, stands: Account, preferences: Preferences) -> str:
    """What is said of a bottle whose rolls nobody counts, or that is not to be used."""
    if stands.discarded:
        return "Poured away."
    if stands.contaminated:
        return "Something else got in: no plan offers it again. Pour it away."
    if batch.kind == "stop bath":
        used = _rolls(stands.area_units)
        return f"{used} used. The count on its label is the rule; indicator or strip the test."
    if batch.reusable:
        return f"{_rolls(stands.area_units)} used."
    made = volume_text(batch.made_ml, preferences)
    return (
        f"{made} made. Used once, then down the drain."
        if batch.strength == "working"
        else f"Stock, {made} made."
    )


def line_words(line: LedgerLine, preferences: Preferences) -> str:
    """One line of the ledger.

    >>> line_words(LedgerLine("K7M4-T", "drawn", -500.0), Preferences())
    '500 mL poured out'
    """
    told = (LEADER if line.test and line.test.kind == "leader" else ACTS[line.kind]).format(
        seconds=f"{line.test.seconds or 0:.0f}" if line.test else "",
        fresh=", while it was fresh" if line.test and line.test.fresh else "",
        ml=volume_text(abs(line.ml), preferences),
        rolls=_rolls(abs(line.area_units)),
    )
    area = f", after {_rolls(line.area_units)}" if line.kind == "returned" and line.area_units else ""
    back = ", taken back" if line.reverses else ""
    return f"{told}{area}{back}" + (f": {line.words}" if line.words else "")


def _rolls(units: float) -> str:
    """Rolls of 135-36 or 120, to a quarter."""
    text = f"{to_step(units, ROLLS_STEP):g}"
    return f"{text} roll{'' if text == '1' else 's'}"
