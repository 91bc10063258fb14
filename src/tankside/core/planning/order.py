"""When each later tankful is poured: the earliest step at which two hands are enough."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tankside.core.methods.baths import HandWork
from tankside.core.planning.acts import Act, hung_s, reload_s
from tankside.core.planning.joining import Found, Joining, stretchable_until_s, ways
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.stretching import STEP_S

SAME_MIX_WITHIN_S = 600.0
SAME_MIX_WITHIN_K = 0.5
MIX_ROOM_S = 1200.0
"""How long after the end of all others one more must fit: drying, loading and mixing, with room (ours)."""


@dataclass(frozen=True, slots=True)
class Coming:
    """A tankful still to be put in order, as it is with a developer of its own and with the one before's.

    `shared` is None where it cannot use the same mix. `after` is the letter whose tank it waits for.
    """

    own: PlannedTankful
    shared: PlannedTankful | None = None
    after: str | None = None


@dataclass(frozen=True, slots=True)
class InOrder:
    """Tankfuls with their starts, and every act on one clock that is 0 at the first pour."""

    tankfuls: tuple[PlannedTankful, ...]
    acts: tuple[Act, ...]
    mixes: frozenset[str]
    """Letters that mix a developer of their own after the first."""


def in_order(first: PlannedTankful, coming: Sequence[Coming], hands: HandWork) -> InOrder:
    """Put the tankfuls in order: each at the earliest 15 s step after the pour before, checked apart.

    A stop, fix or soak may be stretched within its most; only what `check.faults` passes is taken.
    Own model: docs/science/two-tanks. Doubt: the earliest found, not shown to be the earliest there is.
    """
    found = Found((first,), frozenset(), frozenset())
    for one in coming:
        found = _joined(found, one, hands)
    return InOrder(found.tankfuls, found.acts(hands) or (), found.mixes)


def acts_in_order(
    tankfuls: Sequence[PlannedTankful], hands: HandWork, *, mixes: frozenset[str], reloads: frozenset[str]
) -> tuple[Act, ...] | None:
    """All acts of tankfuls whose starts are known, placed for one pair of hands; None where they clash."""
    return Found(tuple(tankfuls), mixes, reloads).acts(hands)


def _joined(found: Found, one: Coming, hands: HandWork) -> Found:
    """The tankfuls so far with one more, at the earliest step that passes."""
    ends_s = max(each.starts_s + hung_s(each, hands) for each in found.tankfuls)
    reloads = found.reloads | ({one.own.letter} if one.after is not None else frozenset())
    held = list(ways(found, hands))
    stretchable_s = stretchable_until_s(found.tankfuls[-1])
    at_s = _from_s(found, one, hands)
    while at_s <= ends_s + reload_s(one.own) + MIX_ROOM_S:
        tankful, mixes = _with_mix(found, one, at_s)
        joining = Joining(tankful, mixes, reloads, hands, at_s)
        for way in held if at_s <= stretchable_s else held[:1]:
            tried = joining.to(way)
            if tried is not None:
                return tried
        at_s += STEP_S
    raise AssertionError("a tankful after the end of all others must fit")


def _from_s(found: Found, one: Coming, hands: HandWork) -> float:
    """The first step at which one more may be poured: after the pour before, and once its tank is free."""
    from_s = found.tankfuls[-1].starts_s + STEP_S
    if one.after is None:
        return from_s
    before = next(each for each in found.tankfuls if each.letter == one.after)
    return max(from_s, _up(before.starts_s + hung_s(before, hands) + reload_s(one.own)))


def _with_mix(found: Found, one: Coming, at_s: float) -> tuple[PlannedTankful, frozenset[str]]:
    """The tankful with the mix of the first if that is still fresh enough, else with its own."""
    if one.shared is not None and at_s <= SAME_MIX_WITHIN_S:
        return one.shared, found.mixes
    return one.own, found.mixes | {one.own.letter}


def _up(seconds: float) -> float:
    """Up to the next whole step."""
    return -(-seconds // STEP_S) * STEP_S
