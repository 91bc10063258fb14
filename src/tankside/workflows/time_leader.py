"""A leader timed in a bottle of developer: while the batch is fresh, and before it is used again."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import tzinfo

from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.core.shelf.ledger import BathTest, LedgerLine
from tankside.core.solutions.leader_test import FRESH_DAYS, LeaderAnswer, LeaderTest, judge_leader
from tankside.workflows.look_at_shelf import BottleNow, bottle_now
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.shelf_acts import book_act


@dataclass(frozen=True, slots=True)
class Timed:
    """A leader that was black after so long, of which film; `fresh` while the batch is new."""

    test: LeaderTest
    fresh: bool = False
    film: str = ""


def time_leader(
    desk: Desk, dice: Dice, code: str, timed: Timed, now: Instant, *, zone: tzinfo
) -> LeaderAnswer | None:
    """Note a leader of one bottle; what it says against the fresh one, None for the fresh one itself."""
    today = moment_of(now).astimezone(zone).date()
    with desk.together():
        found = bottle_now(desk, code, zone, today)
        if found is None:
            raise refuse("no-such-bottle", bottle=code, ways_on=("look-at-the-shelf",))
        if found.batch.kind != "developer":
            raise refuse("leader-in-no-developer", bottle_code=code)
        answer = None if timed.fresh else _judged(found, timed.test)
        if timed.fresh and not may_be_fresh(found, now, zone):
            raise refuse("fresh-no-longer", at="fresh", days=FRESH_DAYS)
        test = BathTest("leader", timed.film, timed.test.seconds, timed.test.temp_c, fresh=timed.fresh)
        book_act(desk, dice, [LedgerLine(code, "tested", test=test)], now)
    return answer


def may_be_fresh(found: BottleNow, now: Instant, zone: tzinfo) -> bool:
    """Whether a batch is so new that a leader timed in it is the measure for later ones."""
    return (moment_of(now).astimezone(zone).date() - found.contents.made).days <= FRESH_DAYS


def _judged(found: BottleNow, tonight: LeaderTest) -> LeaderAnswer:
    """Tonight's leader against the fresh one."""
    if found.fresh is None:
        raise refuse("leader-without-a-fresh-one", at="seconds", ways_on=("mix-fresh",))
    return judge_leader(found.fresh, tonight)
