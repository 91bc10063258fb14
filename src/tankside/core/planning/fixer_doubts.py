"""What a plan says of its fixer before it is used: too little left, a test that is due, a short fix."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tankside.core.permanence.fixer_standing import FixerKnown, judge_fixer
from tankside.core.planning.assumptions import Assumption
from tankside.core.planning.fixer import fix_needed_s, fixer_takes, fixer_wanted
from tankside.core.planning.plan import Doubtful, PlannedTankful
from tankside.core.planning.wish import Wish


def fixer_doubts(wish: Wish) -> Iterator[Doubtful]:
    """What to look at first about the fixer of a wish; nothing where none was there before.

    Source: `judge_fixer`, `fix_needed_s`. Doubt: as there.
    """
    supply = wish.supply("fixer")
    bottle = supply.bottle or ""
    takes, wanted = fixer_takes(supply), fixer_wanted(one.roll for one in wish.rolls)
    if takes is not None and takes.left_planned + 1e-9 < wanted:
        yield Doubtful("fixer-spent", None, max(takes.left_planned, 0.0), wanted, bottle)
    elif supply.bottle is None:
        for code in supply.passed_over:
            yield Doubtful("fixer-passed-over", about=code)
    if supply.fixer is None:
        return
    if judge_fixer(supply.fixer).test_due:
        yield Doubtful("fixer-test-due", about=bottle)
    yield from _times(wish, supply.fixer, bottle)


def _times(wish: Wish, known: FixerKnown, bottle: str) -> Iterator[Doubtful]:
    """A fix of one's own that is shorter than the test piece asks, for the film that asks most."""
    needed_s = fix_needed_s(known, [one.roll.film.grain for one in wish.rolls])
    if needed_s is not None and wish.times.fix_s is not None and wish.times.fix_s < needed_s:
        yield Doubtful("fix-short", None, wish.times.fix_s, needed_s, bottle)


def still_assumed(wish: Wish, tankfuls: Sequence[PlannedTankful]) -> tuple[Assumption, ...]:
    """What a plan still takes for granted: not the time of the fix where the test piece has set it.

    Source: `fix_times`. Doubt: none.
    """
    fixes = [bath.times.aim_s for one in tankfuls for bath in one.baths if bath.kind == "fix"]
    longest_s = max(fixes, default=0.0)
    return tuple(one for one in wish.assumed if one.code != "fix" or longest_s <= (one.value or 0.0))
