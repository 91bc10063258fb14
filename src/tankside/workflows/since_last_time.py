"""What is otherwise than last time, and nothing else: for the page that offers last time again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from tankside.core.methods.combinations import Combination
from tankside.core.methods.known_time import rows_in_use
from tankside.core.permanence.fixer_standing import judge_fixer
from tankside.core.planning.fixer import fixer_takes, fixer_wanted
from tankside.core.planning.plan import Plan
from tankside.core.planning.wish import WantedRoll, Wish
from tankside.core.planning.work_out import work_out
from tankside.core.refusals import Refused
from tankside.core.solutions.kinds import SolutionKind
from tankside.workflows.as_last_time import LastTime, wish_as_last
from tankside.workflows.ports import Desk
from tankside.workflows.records import KeptProposal
from tankside.workflows.what_changed import what_changed


@dataclass(frozen=True, slots=True)
class OtherBottle:
    """A reused bath comes from another bottle than last time; `was` is None where it was none."""

    kind: SolutionKind
    code: str
    cap: str
    was: str | None


@dataclass(frozen=True, slots=True)
class FixerNearItsLimit:
    """After tonight's film the fixer takes fewer ordinary rolls than tonight has: `left` of them."""

    code: str
    left: int


@dataclass(frozen=True, slots=True)
class FixerTestDue:
    """Half of what the fixer may take is used: a test piece goes before this film."""

    code: str


@dataclass(frozen=True, slots=True)
class OtherTime:
    """A row of the combination stands where another stood: its time (s) at its temperature (C)."""

    film: str
    time_s: float
    temp_c: float
    was_s: float
    was_c: float


@dataclass(frozen=True, slots=True)
class OtherFilm:
    """Nothing of this film went last time."""

    film: str


@dataclass(frozen=True, slots=True)
class OwnTimeLeft:
    """Last time was developed for a time of one's own (s), which is not taken over."""

    time_s: float


@dataclass(frozen=True, slots=True)
class Corrected:
    """A correction was accepted since."""

    because: KeptProposal


SinceThen = OtherBottle | FixerNearItsLimit | FixerTestDue | OtherTime | OtherFilm | OwnTimeLeft | Corrected


def since_last_time(desk: Desk, last: LastTime, moment: datetime) -> tuple[SinceThen, ...]:
    """Everything that changed, each once; what cannot be planned is left to the refusal that says so."""
    if not last.rolls:
        return ()
    try:
        every = wish_as_last(desk, last, [one.key for one in last.rolls], moment)
    except Refused:
        return ()
    return (*_bottles(desk, last, every), *_fixer(last, every), *_films(desk, last, moment))


def _bottles(desk: Desk, last: LastTime, wish: Wish) -> Iterator[OtherBottle]:
    """Baths that come from another bottle."""
    for now in wish.supplies:
        was = last.wish.supply(now.kind).bottle
        bottle = desk.bottles.by_code(now.bottle) if now.bottle and now.bottle != was else None
        if bottle is not None:
            yield OtherBottle(now.kind, bottle.code, bottle.cap, was)


def _fixer(last: LastTime, wish: Wish) -> Iterator[FixerNearItsLimit | FixerTestDue]:
    """The fixer, if one more evening like this one would be too much for it, or a test piece goes first."""
    left, code = fixer_takes(wish.supply("fixer")), wish.supply("fixer").bottle
    known = wish.supply("fixer").fixer
    if known is not None and code is not None and judge_fixer(known).test_due:
        yield FixerTestDue(code)
    tonight = fixer_wanted(last.offered)
    if left is not None and code is not None and tonight <= left.left_planned < 2 * tonight:
        yield FixerNearItsLimit(code, int(left.left_planned - tonight + 1e-9))


def _films(desk: Desk, last: LastTime, moment: datetime) -> Iterator[SinceThen]:
    """What is otherwise for each film that waits."""
    if last.wish.own_time_s is not None:
        yield OwnTimeLeft(last.wish.own_time_s)
    before = {one.combination.key: one.combination for one in last.wish.rolls}
    alike = {(one.film.name, one.index): one for one in reversed(last.rolls)}
    for roll in alike.values():
        wish = wish_as_last(desk, last, [roll.key], moment)
        wanted = wish.rolls[0]
        known = before.get(wanted.combination.key)
        if known is None:
            yield OtherFilm(roll.film.name)
            continue
        corrected = [one for one in _corrected(desk, wish, moment) if _later(one.because, last.plan)]
        yield from corrected or _other_time(wanted, known)


def _corrected(desk: Desk, wish: Wish, moment: datetime) -> Iterator[Corrected]:
    """Corrections that a plan of this wish follows."""
    try:
        plan = work_out(wish, key=wish.rolls[0].roll.key, number=1, made=moment)
    except Refused:
        return
    yield from (Corrected(one.because) for one in what_changed(desk, plan))


def _later(one: KeptProposal, plan: Plan) -> bool:
    """Whether it was accepted after that plan was made."""
    return one.decided is not None and one.decided > plan.made


def _other_time(wanted: WantedRoll, known: Combination) -> Iterator[OtherTime]:
    """The row in use, where last time another was."""
    index = wanted.roll.index
    now = next(iter(rows_in_use(wanted.combination, index)), None)
    was = next(iter(rows_in_use(known, index)), None)
    if now is not None and was is not None and (now.time_s, now.temp_c) != (was.time_s, was.temp_c):
        yield OtherTime(wanted.combination.film, now.time_s, now.temp_c, was.time_s, was.temp_c)
