"""How many rolls a bottle is still good for, by what its kind is counted by, and what binds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor
from zoneinfo import ZoneInfo

from tankside.core.permanence.capacity import ROLLS_PER_L_NAMED, ROLLS_PER_L_PLANNED
from tankside.core.permanence.fixer_standing import FixerKnown, FixerStanding, judge_fixer
from tankside.core.planning.first_evening import SUPPLIES
from tankside.core.planning.fixer_known import fixer_known, fixer_tests
from tankside.core.planning.tankfuls import ML_FOR_135
from tankside.core.quantities.preferences import Preferences
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bath_tests import Tested, indicator_turned
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.core.shelf.stop_count import stop_count
from tankside.wording.fixer import cleared_sentence, past_sentence
from tankside.wording.shelf import capacity_sentence, rolls_left, stop_sentence, whole_rolls_left

TURNED = "Its indicator has turned"


@dataclass(frozen=True, slots=True)
class Counted:
    """The answer, what it rests on, what to do first, and the stripe: `left` (low, high) of `at_most` rolls.

    `at_most` is None where rolls are not drawn beside millilitres. `doubtful` where it is not simply good.
    """

    answer: str
    more: str
    first: str = ""
    at_most: float | None = None
    left: tuple[float, float] = (0.0, 0.0)
    doubtful: bool = False


def counted(
    bottle: Bottle,
    batch: Batch,
    booked: Sequence[Booking],
    preferences: Preferences,
    *,
    zone: str,
    tonight: bool,
) -> Counted | None:
    """What one bottle is good for; None where nobody counts rolls in it."""
    match batch.kind:
        case "fixer":
            known = fixer_known(batch, booked)
            used_as_it_is = batch.strength == "working" or account(booked).counted_units > 0
            if known is None or not used_as_it_is:
                return None
            return _fixer(known, fixer_tests(booked), preferences, zone=zone, tonight=tonight)
        case "stop bath":
            return _stop(bottle, batch, booked)
        case "wetting agent":
            return _wetting(bottle, batch, booked)
        case _:
            return None


def _fixer(
    known: FixerKnown, tests: Sequence[Tested], preferences: Preferences, *, zone: str, tonight: bool
) -> Counted:
    """By count, two sources; by its test piece where there is one; both bind."""
    stands = judge_fixer(known)
    left, whole = stands.left, stands.left.left_planned + stands.left.used_units
    named = whole * ROLLS_PER_L_NAMED / ROLLS_PER_L_PLANNED
    low, high = (min(max(0.0, one), named) for one in (left.left_planned, left.left_named))
    more = capacity_sentence(left, planned=whole, named=named, tested=stands.clearing is not None)
    last = _last(tests)
    if last is not None:
        more += " " + cleared_sentence(
            last.test, known.fresh, stands.clearing, on=last.at.astimezone(ZoneInfo(zone)), own=preferences
        )
    return Counted(
        "Discard it" if stands.done else rolls_left(left),
        more,
        past_sentence(stands) or _due(stands, tonight=tonight),
        named,
        (0.0, 0.0) if stands.done else (low, high),
        bool(stands.past) or stands.test_due,
    )


def _due(stands: FixerStanding, *, tonight: bool) -> str:
    """When a test piece goes before film."""
    if not stands.test_due:
        return ""
    return "Test before tonight." if tonight else "Test before the next film."


def _last(tests: Sequence[Tested]) -> Tested | None:
    """The latest test piece that stands, the fresh one where there is no later."""
    standing = [one for one in tests if one.void is None and one.test.kind == "clearing"]
    return standing[-1] if standing else None


def _stop(bottle: Bottle, batch: Batch, booked: Sequence[Booking]) -> Counted | None:
    """By the count on its label; the one published count stands in for it."""
    stands = account(booked)
    if batch.strength != "working" or stands.put_in_ml <= 0:
        return None
    count = stop_count(
        used_units=max(stands.area_units, 0.0), put_in_ml=stands.put_in_ml, label_per_l=bottle.rolls_per_l
    )
    turned = indicator_turned(booked)
    left = 0.0 if turned else min(count.left, count.whole)
    return Counted(
        TURNED if turned else whole_rolls_left(left),
        stop_sentence(count),
        "Discard it." if turned else "",
        max(count.whole, 1.0),
        (left, left),
        turned or count.left < 1,
    )


def _wetting(bottle: Bottle, batch: Batch, booked: Sequence[Booking]) -> Counted | None:
    """By its volume alone, at the dilution a plan takes for granted and 300 mL a roll."""
    ml = account(booked).ml or 0.0
    if batch.strength == "working" or ml <= 0:
        return None
    parts = next(one.dilution for one in SUPPLIES if one.kind == "wetting agent")
    dose_ml = ML_FOR_135 * parts.stock_fraction
    rolls = ml / dose_ml
    step = 10 ** max(0, len(str(int(rolls))) - 1) if rolls >= 10 else 1
    shown = step * floor(rolls / step)
    return Counted(
        f"about {shown:.0f} rolls left",
        f"Volume binds: {parts} in 300 mL a roll, thrown away after. Its label's own parts go before that.",
        at_most=max(bottle.holds_ml, ml) / dose_ml,
        left=(rolls, rolls),
    )
