"""What a wash came to by plan, and whether it differed: permanence is said, never passed or failed."""

from __future__ import annotations

from collections.abc import Iterator

from tankside.core.permanence.washing import COLDEST_C, Held, enough_if_half_life_s
from tankside.core.refusals import Refused
from tankside.core.review.differed import ColdWash, Deviation, PastFixer, VoidWash, Washed
from tankside.core.run.advise_wash import WashAdvice, advise_wash
from tankside.core.run.fixer_used import fixer_used
from tankside.core.run.state import Pass, Run, RunState, TankfulState

SOAK_S = 15.0
"""How much shorter than planned a soak may be before that is worth a word."""

SHORT_FIX_S = 5.0


def wash_deviations(state: RunState, one: TankfulState) -> Iterator[Deviation]:
    """A fixer past its limit, fewer or more fills than planned, shorter soaks, or water too cold.

    Own model: docs/science/washing.md. Doubt: half-lives of 15 and 60 s; a plan, not a test.
    """
    used = fixer_used(state, one.letter)
    if used is not None and used.stands.past:
        yield Deviation(used.at_us, one.letter, used.bath, PastFixer(used))
    there = washing(one)
    if there is None or there.ended_us is None:
        return
    for fill in there.fills:
        if fill.temp_c is not None and fill.temp_c < COLDEST_C:
            yield Deviation(fill.mark.at_us, one.letter, there.bath, ColdWash(fill.temp_c))
    bath, soaks = one.bath(there.bath), soaks_s(there)
    if len(soaks) == bath.fills and min(soaks) >= bath.times.least_s - SOAK_S:
        return
    came_to = advise_wash(one, there, there.ended_us)
    washed = Washed(
        fills=len(soaks),
        planned=bath.fills,
        shortest_s=min(soaks),
        left=came_to.now,
        limit_g_m2=came_to.limit_g_m2,
        enough_if_s=_enough_if_s(one, soaks),
        void=void_wash(state, one),
    )
    yield Deviation(there.ended_us, one.letter, there.bath, washed)


def washing(one: TankfulState) -> Pass | None:
    """The latest time that wash water was in the tank."""
    kinds = {bath.id: bath.kind for bath in (*one.plan.baths, *one.former)}
    return next((was for was in reversed(one.passes) if kinds.get(was.bath) == "wash"), None)


def washed_to(run: Run, letter: str) -> WashAdvice | None:
    """What a tankful's wash came to by plan; None without one, while it lasts, or where the fix is doubtful.

    Own model and doubt as in `wash_deviations`.
    """
    one = run.state.tankful(letter)
    there = washing(one)
    if there is None or there.ended_us is None or void_wash(run.state, one):
        return None
    return advise_wash(one, there, there.ended_us)


def soaks_s(there: Pass) -> tuple[float, ...]:
    """How long each fill of a wash that is over soaked, in s, from its pour to the next."""
    assert there.ended_us is not None
    starts = sorted({there.poured.at_us, *(fill.mark.at_us for fill in there.fills if fill.n > 1)})
    ends = [*starts[1:], there.ended_us]
    return tuple(max(0.0, (end - start) / 1e6) for start, end in zip(starts, ends, strict=True))


def void_wash(state: RunState, one: TankfulState) -> VoidWash | None:
    """Why what the wash says does not hold: no fix at all or one too short, or a fixer past its limit.

    Own model: docs/science/washing. Doubt: that of the fixer's count, 20 to 25 rolls a litre.
    """
    if _fix_is_short(one):
        return "fix"
    used = fixer_used(state, one.letter)
    return "fixer" if used is not None and used.stands.past else None


def _fix_is_short(one: TankfulState) -> bool:
    """No fix at all, or one too short."""
    kinds = {bath.id: bath.kind for bath in (*one.plan.baths, *one.former)}
    fixes = [was for was in one.passes if kinds.get(was.bath) == "fix" and was.ended_us is not None]
    if not fixes:
        return True
    last = fixes[-1]
    for_s = ((last.ended_us or 0) - last.poured.at_us) / 1e6
    return for_s < one.bath(last.bath).times.least_s - SHORT_FIX_S


def _enough_if_s(one: TankfulState, soaks: tuple[float, ...]) -> float | None:
    """The half-life at which these soaks would suffice, None where none would."""
    both_sides = any(roll.both_sides for roll in one.plan.rolls)
    held = Held().for_units(one.plan.area_units or 1.0, both_sides=both_sides)
    try:
        return enough_if_half_life_s(soaks_s=soaks[:40], fill_ml=one.plan.tank.volume_ml, held=held)
    except Refused:
        return None
