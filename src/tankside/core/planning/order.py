"""When each later tankful is poured: the earliest step at which two hands are enough."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice, product

from tankside.core.methods.baths import HandWork
from tankside.core.planning.acts import Act, acts_of, hung_s, reload_s
from tankside.core.planning.check import faults
from tankside.core.planning.placing import placed
from tankside.core.planning.plan import PlannedBath, PlannedTankful
from tankside.core.planning.stretching import STEP_S, aims, stretched, with_aim

SAME_MIX_WITHIN_S = 600.0
SAME_MIX_WITHIN_K = 0.5
VARIANTS_A_STEP = 24
FEW = 5


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
    found = _Found((first,), frozenset(), frozenset())
    for one in coming:
        found = _joined(found, one, hands)
    return InOrder(found.tankfuls, _acts(found, hands) or (), found.mixes)


def acts_in_order(
    tankfuls: Sequence[PlannedTankful], hands: HandWork, *, mixes: frozenset[str], reloads: frozenset[str]
) -> tuple[Act, ...] | None:
    """All acts of tankfuls whose starts are known, placed for one pair of hands; None where they clash."""
    return _acts(_Found(tuple(tankfuls), mixes, reloads), hands)


@dataclass(frozen=True, slots=True)
class _Found:
    """What is in order so far."""

    tankfuls: tuple[PlannedTankful, ...]
    mixes: frozenset[str]
    reloads: frozenset[str]


def _own_acts(found: _Found, hands: HandWork) -> Iterator[Act]:
    """The acts of every tankful at its own best moments."""
    for one in found.tankfuls:
        yield from acts_of(
            one,
            hands,
            at_s=one.starts_s,
            mixes=one.letter in found.mixes,
            reloads=one.letter in found.reloads,
        )


def _acts(found: _Found, hands: HandWork) -> tuple[Act, ...] | None:
    """The acts placed, if the judge finds nothing wrong with them."""
    acts = placed(_own_acts(found, hands), between_s=hands.between_tankfuls_s)
    if acts is None or faults(acts, between_s=hands.between_tankfuls_s):
        return None
    return acts


def _joined(found: _Found, one: Coming, hands: HandWork) -> _Found:
    """The tankfuls so far with one more, at the earliest step that passes."""
    last = found.tankfuls[-1]
    ends_s = max(each.starts_s + hung_s(each, hands) for each in found.tankfuls)
    from_s = last.starts_s + STEP_S
    if one.after is not None:
        before = next(each for each in found.tankfuls if each.letter == one.after)
        from_s = max(from_s, _up(before.starts_s + hung_s(before, hands) + reload_s(one.own)))
    at_s = from_s
    while True:
        tankful, mixes = _with_mix(found, one, at_s)
        reloads = found.reloads | ({one.own.letter} if one.after is not None else frozenset())
        for earlier in _earlier(found.tankfuls, at_s):
            firm = [act for act in _own_acts(replace(found, tankfuls=earlier), hands) if not act.soft]
            for variant in islice(stretched(tankful, hands, at_s=at_s, firm=firm), VARIANTS_A_STEP):
                started = replace(variant, starts_after="A.develop:poured", starts_s=at_s)
                tried = _Found((*earlier, started), mixes, reloads)
                if _acts(tried, hands) is not None:
                    return tried
        if at_s > ends_s + reload_s(one.own) + MIX_ROOM_S:
            raise AssertionError("a tankful after the end of all others must fit")
        at_s += STEP_S


MIX_ROOM_S = 1200.0


def _with_mix(found: _Found, one: Coming, at_s: float) -> tuple[PlannedTankful, frozenset[str]]:
    """The tankful with the mix of the first if that is still fresh enough, else with its own."""
    if one.shared is not None and at_s <= SAME_MIX_WITHIN_S:
        return one.shared, found.mixes
    return one.own, found.mixes | {one.own.letter}


def _earlier(tankfuls: tuple[PlannedTankful, ...], at_s: float) -> Iterator[tuple[PlannedTankful, ...]]:
    """The tankfuls so far, then with stop and fix of the last one stretched, least first."""
    last = tankfuls[-1]
    yield tankfuls
    if at_s > last.starts_s + sum(bath.times.aim_s for bath in last.baths if bath.kind != "wash"):
        return
    choices = [_stretches(bath) for bath in last.baths]
    for chosen in sorted(product(*choices), key=sum)[1:]:
        baths = tuple(with_aim(bath, aim_s) for bath, aim_s in zip(last.baths, chosen, strict=True))
        yield (*tankfuls[:-1], replace(last, baths=baths))


def _stretches(bath: PlannedBath) -> list[float]:
    """What an earlier tankful's bath may be changed to: stop and fix by a minute at most."""
    return list(islice(aims(bath), FEW)) if bath.kind in ("stop", "fix") else [bath.times.aim_s]


def _up(seconds: float) -> float:
    """Up to the next whole step."""
    return -(-seconds // STEP_S) * STEP_S
