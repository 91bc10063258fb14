"""A wish worked out into a plan: the one place where rolls, tanks, times and hands meet."""

from __future__ import annotations

from datetime import datetime
from uuid import UUID

from tankside.core.development.rate import uneven_if_short
from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.fixer_doubts import fixer_doubts, still_assumed
from tankside.core.planning.liquids import BATH_KEYS, liquids_for, most_at_once_ml
from tankside.core.planning.one_tankful import other_agitation, planned_tankful, timed
from tankside.core.planning.order import SAME_MIX_WITHIN_K, Coming, in_order
from tankside.core.planning.plan import (
    Doubtful,
    Plan,
    PlannedTankful,
)
from tankside.core.planning.stock_bottles import kept_from_precious, with_stock_bottles
from tankside.core.planning.tankfuls import Load, held_back, in_tankfuls
from tankside.core.planning.wish import Wish

NO_CORRECTION = {"table only": "table-only", "completion": "completion"}
"""Why a time is not corrected for temperature, by its rule."""

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def work_out(wish: Wish, *, key: UUID, number: int, made: datetime) -> Plan:
    """The plan that a wish comes to; the same wish gives the same plan.

    Arguments: `made` and `wish.starts` aware; `number` from 1. Refused, with ways on, where a roll has no
    time, a tank no room, the stock is too little, or the developer too warm or cold to be timed.
    Own model: docs/science/planning. Doubt: stands on each number.
    """
    taken, held = held_back(wish.rolls, wish.first_uses, kept_from_precious(wish))
    loads = in_tankfuls(taken, wish.tanks)
    first = planned_tankful("A", loads[0], wish, jug_c=wish.reads_c)
    coming = [
        _coming(letter, load, loads, first, wish)
        for letter, load in zip(LETTERS[1:], loads[1:], strict=False)
    ]
    ordered = in_order(first, coming, wish.hands)
    mixes = {"develop-A": None if wish.reads_c is not None else _jug(first, wish)}
    mixes |= {
        f"develop-{one.letter}": _jug(one, wish) for one in ordered.tankfuls if one.letter in ordered.mixes
    }
    liquids, doubts = with_stock_bottles(
        liquids_for(ordered.tankfuls, wish, mix_to=mixes), ordered.tankfuls, wish
    )
    return Plan(
        key=key,
        number=number,
        made=made,
        place=wish.place,
        thermometer=wish.thermometer,
        tankfuls=ordered.tankfuls,
        liquids=liquids,
        hands=wish.hands,
        assumed=still_assumed(wish, ordered.tankfuls),
        starts=wish.starts,
        held=held,
        released=tuple(one.roll.key for one in taken if one.released and one.roll.precious),
        doubtful=(*_doubtful(ordered.tankfuls, wish), *_too_small(ordered.tankfuls, wish)),
        bottles=doubts,
        wish=wish,
    )


def _coming(letter: str, load: Load, loads: tuple[Load, ...], first: PlannedTankful, wish: Wish) -> Coming:
    """A later tankful with a mix of its own, and with the first one's where tanks and developer agree."""
    own = planned_tankful(letter, load, wish, jug_c=None)
    before = [LETTERS[at] for at, one in enumerate(loads) if one.tank == load.tank and LETTERS[at] < letter]
    same = load.combination.key == loads[0].combination.key
    alike = abs((own.development.tank_c or 0.0) - (first.development.tank_c or 0.0)) <= SAME_MIX_WITHIN_K
    shared = None
    if same and alike and not load.again:
        shared = planned_tankful(letter, load, wish, jug_c=first.development.jug_c, liquid="develop-A")
    return Coming(own, shared, before[-1] if before else None)


def _jug(tankful: PlannedTankful, wish: Wish) -> Estimate | None:
    """What its developer is to be mixed to, with its doubt."""
    found = timed(tankful, wish)
    return found.jug.estimate if found.jug else None


def _doubtful(tankfuls: tuple[PlannedTankful, ...], wish: Wish) -> list[Doubtful]:
    """What to look at first."""
    found: list[Doubtful] = []
    if any(other_agitation(one.combination, wish) for one in wish.rolls):
        found.append(Doubtful("other-agitation"))
    found.extend(
        Doubtful(NO_CORRECTION[one.development.time_rule], one.letter)
        for one in tankfuls
        if one.development.time_rule in NO_CORRECTION
    )
    for one in tankfuls:
        aim_s = one.baths[0].times.aim_s
        if uneven_if_short(aim_s):
            found.append(Doubtful("short-time", one.letter, aim_s, 300.0))
        if one.index is not None and wish.rolls[0].combination.least_stock_ml is None:
            found.append(Doubtful("least-stock-unknown", one.letter))
    return [*found, *fixer_doubts(wish), *_past_their_date(wish)]


def _past_their_date(wish: Wish) -> list[Doubtful]:
    """Reused baths of bottles past their keeping time: their test goes before any date, so they are taken."""
    return [
        Doubtful("past-its-date", value=float(supply.until.toordinal()), about=supply.bottle)
        for supply in wish.supplies
        if supply.bottle is not None and supply.until is not None and supply.until < wish.starts.date()
    ]


def _too_small(tankfuls: tuple[PlannedTankful, ...], wish: Wish) -> list[Doubtful]:
    """Bottles that hold less than the tanks need at once, with the first tank that alone needs more."""
    return [
        Doubtful(
            "bottle-too-small",
            next((one.letter for one in tankfuls if one.tank.volume_ml > holds_ml), None),
            holds_ml,
            needed_ml,
            supply.bottle or "",
        )
        for supply in wish.supplies
        if (holds_ml := supply.volume_ml) is not None
        and holds_ml < (needed_ml := most_at_once_ml(tankfuls, BATH_KEYS[supply.kind], wish.hands))
    ]
