"""Cautions as a page shows them: the sentence, and where it comes from for those who ask."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tankside.core.safety import STANDING, Caution, Moment, cautions
from tankside.core.solutions.kinds import SolutionKind
from tankside.wording.cautions import caution_origin, caution_sentence


@dataclass(frozen=True, slots=True)
class Said:
    """A caution, and where it comes from."""

    sentence: str
    origin: str


def minded(told: Iterable[Caution]) -> tuple[Said, ...]:
    """Each caution once, in order."""
    every = {one.code: one for one in told}
    return tuple(Said(caution_sentence(one), caution_origin(one)) for one in every.values())


def at_the_shelf(kind: SolutionKind, moment: Moment) -> tuple[Said, ...]:
    """What to mind with one bottle at one moment of handling it."""
    return minded(cautions(kind, moment=moment))


def at_all_times() -> tuple[Said, ...]:
    """What holds wherever chemicals stand."""
    return minded(STANDING)


def mixing_by_kind(kinds: Iterable[SolutionKind]) -> tuple[tuple[str, tuple[Said, ...]], ...]:
    """What to mind with a bottle of any kind: what holds for all under no name, then each kind's own."""
    told = {kind: cautions(kind, moment="mix") for kind in kinds}
    for_all = {one.code for one in next(iter(told.values()))}.intersection(
        *({one.code for one in each} for each in told.values())
    )
    poison_centre = next(one for one in STANDING if one.code == "poison-centre")
    shared = [one for one in next(iter(told.values())) if one.code in for_all and one.code != "makers-sheet"]
    own = ((kind, [one for one in each if one.code not in for_all]) for kind, each in told.items())
    return (
        ("", minded((*shared, poison_centre))),
        *((kind.capitalize(), minded(each)) for kind, each in own if each),
    )
