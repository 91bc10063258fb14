"""The shelf in words: what is left in a bottle, and every line of its ledger."""

from __future__ import annotations

from math import floor

from tankside.core.permanence.capacity import CapacityLeft
from tankside.core.planning.developer_left import Tankfuls
from tankside.core.quantities.display import ROLLS_STEP, to_step, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.shelf.accounts import Account
from tankside.core.shelf.bottles import Batch
from tankside.core.shelf.ledger import LedgerLine, LineKind
from tankside.core.shelf.stop_count import StopCount
from tankside.core.solutions.notation import Dilution  # noqa: F401 - for the doctest
from tankside.wording.fixer import test_words

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


def rolls_left(left: CapacityLeft) -> str:
    """How many rolls a fixer may still take, by both sources.

    >>> rolls_left(CapacityLeft(15.0, 5.0, 10.0)), rolls_left(CapacityLeft(26.0, -6.0, -1.0))
    ('5 to 10 rolls left', 'no roll left')
    """
    low, high = (max(0, floor(one + 1e-9)) for one in (left.left_planned, left.left_named))
    if high == 0:
        return "no roll left"
    return f"{low} to {high} rolls left" if low != high else f"{_rolls(low)} left"


def developer_left(rolls: int, use: Tankfuls) -> str:
    """How many rolls a bottle of stock is enough for.

    >>> developer_left(5, Tankfuls(Dilution(1, 1), 300.0, 1))
    '5 rolls left at 1+1'
    """
    at = f" at {use.dilution}" if use.dilution.water else ""
    return f"{_rolls(rolls)} left{at}" if rolls else f"no tankful left{at}"


def volume_binds(use: Tankfuls, preferences: Preferences) -> str:
    """What one tankful takes of a bottle of stock."""
    return f"Volume binds: {volume_text(use.stock_ml, preferences)} for a tankful."


def whole_rolls_left(left: float) -> str:
    """How many whole rolls are left.

    >>> whole_rolls_left(3.4), whole_rolls_left(0.5)
    ('3 rolls left', 'no roll left')
    """
    whole = floor(left + 1e-9)
    return f"{_rolls(whole)} left" if whole else "no roll left"


def capacity_sentence(left: CapacityLeft, *, planned: float, named: float, tested: bool = False) -> str:
    """What was used, as the fixer counts it, and that two sources differ."""
    between = f"{floor(planned + 1e-9)} to {floor(named + 1e-9)}"
    return f"{_rolls(left.used_units)} used of {between}." + ("" if tested else " Two sources differ.")


def stop_sentence(count: StopCount) -> str:
    """What a stop bath has taken of what it may, and whose count that is.

    >>> stop_sentence(StopCount(9.0, 12.0, by_label=False))
    '9 rolls used of 12, the one count published; the count on its label goes before it. Acid binds.'
    """
    used = f"{_rolls(count.used)} used of {_figure(count.whole)}"
    if count.by_label:
        return f"{used} by its label. Acid binds; the indicator or a strip is the test."
    return f"{used}, the one count published; the count on its label goes before it. Acid binds."


def bottle_name(batch: Batch) -> str:
    """The person's name for what is in a bottle, with its parts where it is diluted."""
    return f"{batch.name}, {batch.parts}" if batch.strength == "working" else batch.name


def standing(batch: Batch, stands: Account, preferences: Preferences) -> str:
    """What is said of a bottle whose rolls nobody counts, or that is not to be used; of stock nothing."""
    if stands.discarded:
        return "Poured away."
    if stands.contaminated:
        return "Something else got in: no plan offers it again. Pour it away."
    if batch.reusable:
        return f"{_rolls(stands.area_units)} used."
    if batch.strength != "working":
        return ""
    return f"{volume_text(batch.made_ml, preferences)} made. Used once, then down the drain."


def line_words(line: LedgerLine, preferences: Preferences) -> str:
    """One line of the ledger.

    >>> line_words(LedgerLine("K7M4-T", "drawn", -500.0), Preferences())
    '500 mL poured out'
    """
    if line.kind == "tested":
        said = test_words(line.test, preferences) if line.test else "test taken back"
        return said + (f": {line.words}" if line.words else "")
    told = ACTS[line.kind].format(
        ml=volume_text(abs(line.ml), preferences),
        rolls=_rolls(abs(line.area_units)),
    )
    area = f", after {_rolls(line.area_units)}" if line.kind == "returned" and line.area_units else ""
    if area and line.counted_units != line.area_units:
        area += f", counted as {_figure(line.counted_units)}"
    back = ", taken back" if line.reverses else ""
    return f"{told}{area}{back}" + (f": {line.words}" if line.words else "")


def _rolls(units: float) -> str:
    """Rolls of 135-36 or 120, to a quarter."""
    text = _figure(units)
    return f"{text} roll{'' if text == '1' else 's'}"


def _figure(units: float) -> str:
    """A count of rolls as it is told."""
    return f"{to_step(units, ROLLS_STEP):g}"
