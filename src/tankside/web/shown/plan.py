"""The Plan page in words and figures: what stands beside the picture of the evening."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from tankside.core.planning.fixer import fix_by_test_s
from tankside.core.planning.plan import Doubtful, DoubtStanding, Liquid, Plan, PlannedTankful
from tankside.core.planning.timetable import Timetable, timetable
from tankside.core.planning.ways_to_temper import ways_of
from tankside.core.planning.wish import Wish
from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.web.drawing.kinds import Sign, sign_of_bath
from tankside.web.shown.evening import Pictures, pictures
from tankside.wording.assumed import assumed_sentence
from tankside.wording.fixer import fix_sentence
from tankside.wording.keeping import doubt_heading, doubt_sentence
from tankside.wording.liquids import amount_sentence, cost_sentence
from tankside.wording.plan import (
    doubtful_sentence,
    heading,
    held_sentence,
    start_found,
    summary,
    tank_sentence,
    time_sentence,
)
from tankside.wording.proposals import changed_words
from tankside.wording.tempering import ways_sentences
from tankside.workflows.what_changed import Learnt

CLASH = (
    "Two acts fall together somewhere in this evening and no order was found that two hands can follow. "
    "Start the second tankful later, or leave it out."
)


@dataclass(frozen=True, slots=True)
class TankfulRow:
    """One tankful: its letter, the person's name for the tank, its film."""

    letter: str
    tank: str
    film: str


DOORS = (("contrast", "contrast"), ("stock", "least-stock"), ("fix", "fix"), ("wash", "wash"))
"""Numbers of a tankful that have a working of their own beside its time: the word and what it is about."""


@dataclass(frozen=True, slots=True)
class TimeTold:
    """How long one tankful develops, and how warm: with the doors to the working of each of its numbers."""

    heading: str
    time: str
    more: str
    temperatures: str
    why: str
    doors: tuple[tuple[str, str], ...]
    changed: tuple[str, ...] = ()
    ways: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LiquidTold:
    """One liquid to have ready; `mix_to` where it is tempered."""

    amounts: str
    bottle: str | None
    mix_to: str
    why: str
    cost: str = ""


@dataclass(frozen=True, slots=True)
class BottlePlate:
    """A bottle that something speaks against; `standing` says which ways on there are."""

    code: str
    name: str
    heading: str
    sentence: str
    standing: DoubtStanding


@dataclass(frozen=True, slots=True)
class Look:
    """Something to look at first; `test` is the bottle to test, `change` what is offered instead."""

    sentence: str
    test: str = ""
    change: str = ""


@dataclass(frozen=True, slots=True)
class FixTold:
    """How long film is fixed beside a test piece; `shorter` is the time that may be accepted, if any."""

    sentence: str
    shorter: str


@dataclass(frozen=True, slots=True)
class ShownPlan:
    """Everything the page shows of a plan."""

    heading: str
    summary: str
    second: str
    pictures: Pictures
    signs: tuple[Sign, ...]
    tankfuls: tuple[TankfulRow, ...]
    times: tuple[TimeTold, ...]
    liquids: tuple[LiquidTold, ...]
    doubtful: tuple[Look, ...]
    bottles: tuple[BottlePlate, ...]
    fix: FixTold | None
    held: tuple[str, ...]
    assumed: str


def shown_plan(
    plan: Plan,
    preferences: Preferences,
    *,
    today: date,
    learnt: Sequence[Learnt] = (),
    costs: Mapping[str, int] | None = None,
) -> ShownPlan:
    """A plan as its page shows it on the day `today` at its place; `learnt` is what it does otherwise."""
    timed = timetable(plan)
    return ShownPlan(
        heading(plan, today),
        summary(plan, timed),
        start_found(plan),
        pictures(plan, timed, preferences),
        _signs(plan),
        tuple(TankfulRow(one.letter, one.tank.name, _film(one)) for one in plan.tankfuls),
        tuple(
            _time(one, preferences, learnt, wish=plan.wish, several=len(plan.tankfuls) > 1)
            for one in plan.tankfuls
        ),
        tuple(_liquid(one, preferences, (costs or {}).get(one.key)) for one in plan.liquids),
        _doubtful(plan, timed, preferences),
        tuple(
            BottlePlate(one.bottle, one.name, doubt_heading(one), doubt_sentence(one, today), one.standing)
            for one in plan.bottles
        ),
        _fix(plan, preferences),
        tuple(held_sentence(one) for one in plan.held),
        assumed_sentence(plan.assumed, preferences),
    )


def _signs(plan: Plan) -> tuple[Sign, ...]:
    """The kinds of bath in the plan, in the order they come."""
    return tuple(dict.fromkeys(sign_of_bath(bath.kind) for one in plan.tankfuls for bath in one.baths))


def _film(tankful: PlannedTankful) -> str:
    """How many rolls of which film."""
    films = dict.fromkeys(roll.film for roll in tankful.rolls)
    count = len(tankful.rolls)
    return f"{count} roll{'' if count == 1 else 's'}, {' and '.join(films)}"


def _time(
    tankful: PlannedTankful,
    preferences: Preferences,
    learnt: Sequence[Learnt],
    *,
    wish: Wish | None,
    several: bool,
) -> TimeTold:
    """The answer first, then what settles it."""
    time, _, more = time_sentence(tankful).partition("; ")
    ways = ways_of(tankful, wish) if wish is not None else None
    return TimeTold(
        f"Develop {tankful.letter}" if several else "Develop",
        time,
        f"{more[:1].upper()}{more[1:]}",
        tank_sentence(tankful, preferences),
        f"/plan/why/time?tankful={tankful.letter}",
        tuple((words, f"/plan/why/{about}?tankful={tankful.letter}") for words, about in DOORS),
        tuple(
            changed_words(one.because.proposal, preferences) for one in learnt if one.letter == tankful.letter
        ),
        ways_sentences(ways, preferences) if ways is not None else (),
    )


def _liquid(liquid: Liquid, preferences: Preferences, cost: int | None) -> LiquidTold:
    """One liquid with its amounts and the temperature it is mixed to."""
    mix_to = temperature_text(liquid.mix_to_c.value, preferences) if liquid.mix_to_c else ""
    return LiquidTold(
        amount_sentence(liquid, preferences),
        liquid.bottle,
        mix_to,
        f"/plan/why/mix-to?tankful={liquid.key.removeprefix('develop-')}",
        "" if cost is None else cost_sentence(cost),
    )


def _doubtful(plan: Plan, timed: Timetable, preferences: Preferences) -> tuple[Look, ...]:
    """What to look at first, each said once."""
    said = dict.fromkeys(Look(doubtful_sentence(one, preferences), *_ways(one)) for one in plan.doubtful)
    return (*said, Look(CLASH)) if timed.clashes else tuple(said)


def _ways(one: Doubtful) -> tuple[str, str]:
    """The bottle to test, and the change that is offered."""
    tested = one.about if one.code in ("fixer-spent", "fixer-test-due") else ""
    return tested, "fresh-fixer" if one.code in ("fixer-spent", "fixer-test-due") else ""


def _fix(plan: Plan, preferences: Preferences) -> FixTold | None:
    """How long the fix takes beside the fixer's test piece, where it has one."""
    supply = plan.wish.supply("fixer") if plan.wish else None
    known = supply.fixer if supply else None
    if plan.wish is None or supply is None or known is None or known.latest is None:
        return None
    grains = [one.roll.film.grain for one in plan.wish.rolls]
    by_test_s = fix_by_test_s(known, grains)
    planned_s = max(bath.times.aim_s for one in plan.tankfuls for bath in one.baths if bath.kind == "fix")
    if by_test_s is None:
        return None
    said = fix_sentence(
        known.latest, supply.bottle or "", planned_s=planned_s, by_test_s=by_test_s, own=preferences
    )
    return FixTold(said, time_text(by_test_s) if by_test_s < planned_s else "")
