"""One more tankful among those that are in order: the search for the earliest step at which it fits.

Most steps die at once: what the developer of the new tankful needs of the hands is the same however its later
baths are stretched, so one look at it shuts a step, with one way to keep the others, for every variant.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import islice, product

from tankside.core.methods.baths import HandWork
from tankside.core.planning.acts import Act, acts_of
from tankside.core.planning.check import faults
from tankside.core.planning.openings import Openings, may_be_placed
from tankside.core.planning.placing import placed
from tankside.core.planning.plan import PlannedBath, PlannedTankful
from tankside.core.planning.stretching import aims, stretched, with_aim

VARIANTS_A_STEP = 24
FEW = 5


@dataclass(frozen=True, slots=True)
class Found:
    """What is in order so far: `mixes` and `reloads` are the letters that mix and load anew."""

    tankfuls: tuple[PlannedTankful, ...]
    mixes: frozenset[str]
    reloads: frozenset[str]

    def own_acts(self, hands: HandWork) -> Iterator[Act]:
        """The acts of every tankful at its own best moments."""
        for one in self.tankfuls:
            yield from _acts_of(one, self, hands)

    def acts(self, hands: HandWork) -> tuple[Act, ...] | None:
        """The acts placed, if the judge finds nothing wrong with them."""
        acts = placed(self.own_acts(hands), between_s=hands.between_tankfuls_s)
        if acts is None or faults(acts, between_s=hands.between_tankfuls_s):
            return None
        return acts


@dataclass(frozen=True)
class Way:
    """One way to keep what is in order: with stop and fix of its last tankful as they are, or stretched."""

    tankfuls: tuple[PlannedTankful, ...]
    acts: tuple[Act, ...]

    @cached_property
    def firm(self) -> tuple[Act, ...]:
        """The acts that may not slip."""
        return tuple(act for act in self.acts if not act.soft)

    @cached_property
    def openings(self) -> Openings:
        """What the acts leave to others."""
        return Openings.of(self.acts)


def ways(found: Found, hands: HandWork) -> Iterator[Way]:
    """The tankfuls so far, then with stop and fix of the last one stretched, least first."""
    *others, last = found.tankfuls
    before = tuple(act for one in others for act in _acts_of(one, found, hands))
    choices = [_stretches(bath) for bath in last.baths]
    for chosen in sorted(product(*choices), key=sum):
        baths = tuple(with_aim(bath, aim_s) for bath, aim_s in zip(last.baths, chosen, strict=True))
        held = replace(last, baths=baths)
        yield Way((*others, held), (*before, *_acts_of(held, found, hands)))


def stretchable_until_s(last: PlannedTankful) -> float:
    """Once so far into its washes nothing of the last tankful is stretched for the sake of the next."""
    return last.starts_s + sum(bath.times.aim_s for bath in last.baths if bath.kind != "wash")


@dataclass(frozen=True)
class Joining:
    """One more tankful, poured at `at_s`."""

    tankful: PlannedTankful
    mixes: frozenset[str]
    reloads: frozenset[str]
    hands: HandWork
    at_s: float

    @cached_property
    def core(self) -> Openings:
        """What it needs of the hands however its later baths are stretched."""
        return Openings.of([act for act in self._own(self.tankful) if self._stands(act)])

    def _stands(self, act: Act) -> bool:
        """Whether an act stays where it is while stop, fix, soaks and wetting bath are stretched."""
        if act.bath == "develop":
            times = next(one.times for one in self.tankful.baths if one.kind == "develop")
            return times.most_s == times.aim_s or act.kind in ("mix", "pour")
        return act.kind in ("load", "dry reels")

    def to(self, way: Way) -> Found | None:
        """All of it in order with the tankful after that way, or None where nothing passes."""
        between_s = self.hands.between_tankfuls_s
        near = way.openings.near(self.core, within_s=between_s)
        if not may_be_placed(self.core.beside(near), between_s=between_s):
            return None
        variants = stretched(self.tankful, self.hands, at_s=self.at_s, firm=way.firm)
        for variant in islice(variants, VARIANTS_A_STEP):
            started = replace(variant, starts_after="A.develop:poured", starts_s=self.at_s)
            own = Openings.of(self._own(started))
            if not may_be_placed(own.beside(way.openings), between_s=between_s):
                continue
            tried = Found((*way.tankfuls, started), self.mixes, self.reloads)
            if tried.acts(self.hands) is not None:
                return tried
        return None

    def _own(self, tankful: PlannedTankful) -> tuple[Act, ...]:
        letter = tankful.letter
        return acts_of(
            tankful, self.hands, at_s=self.at_s, mixes=letter in self.mixes, reloads=letter in self.reloads
        )


def _acts_of(one: PlannedTankful, found: Found, hands: HandWork) -> tuple[Act, ...]:
    """The acts of one tankful of those found."""
    return acts_of(
        one,
        hands,
        at_s=one.starts_s,
        mixes=one.letter in found.mixes,
        reloads=one.letter in found.reloads,
    )


def _stretches(bath: PlannedBath) -> list[float]:
    """What an earlier tankful's bath may be changed to: stop and fix by a minute at most."""
    return list(islice(aims(bath), FEW)) if bath.kind in ("stop", "fix") else [bath.times.aim_s]
