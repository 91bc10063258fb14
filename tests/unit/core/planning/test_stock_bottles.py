"""Which bottle of developer a plan mixes from."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from planned import ANSWERS, STARTS, evening, planned, with_rolls

from tankside.core.planning.stock_bottles import choose_bottle
from tankside.core.planning.wish import DeveloperBottle
from tankside.core.shelf.contents import Contents
from tankside.core.solutions.leader_test import LeaderAnswer

TODAY = STARTS.date()
GOOD = LeaderAnswer(1.2, "good")
DEAD = LeaderAnswer(3.4, "not for this batch")
WISH = evening(replace(ANSWERS, reads_c=None)).wish
COMBINATION = WISH.rolls[0].combination.key


def bottle(
    code: str, ml: float, until: date | None, *, leader: LeaderAnswer | None = GOOD, anyway: bool = False
) -> DeveloperBottle:
    """A full bottle made a week ago."""
    made = date(2026, 9, 26)
    return DeveloperBottle(COMBINATION, code, "Umber", Contents(ml, ml, 0, made), until, leader, anyway)


SOON, LATE = date(2026, 11, 1), date(2027, 2, 1)


@pytest.mark.parametrize(
    ("bottles", "expected"),
    [
        ([bottle("LATE", 500, LATE), bottle("SOON", 500, SOON)], "SOON"),
        ([bottle("LATE", 500, LATE), bottle("SOON", 100, SOON)], "LATE"),
        ([bottle("NONE", 500, None), bottle("LATE", 500, LATE)], "LATE"),
        ([bottle("DEAD", 500, SOON, leader=DEAD), bottle("LATE", 500, LATE)], "LATE"),
        ([bottle("OVER", 500, date(2026, 10, 2)), bottle("NONE", 500, None)], "NONE"),
        ([bottle("DEAD", 500, LATE, leader=DEAD, anyway=True), bottle("SOON", 500, SOON)], "DEAD"),
        ([bottle("DEAD", 500, LATE, leader=DEAD)], None),
        ([], None),
    ],
)
def test_the_one_that_ends_first_of_those_that_may_go(
    bottles: list[DeveloperBottle], expected: str | None
) -> None:
    """It holds enough, is neither dead nor past its date, and its owner's word goes before all."""
    taken = choose_bottle(bottles, ml=250, today=TODAY).bottle

    assert expected == (taken.code if taken else None)


def test_a_bottle_is_spoken_of_where_it_is_used_or_missed() -> None:
    """A dead one beside a good one is passed over without a word; alone it is named."""
    dead, good = bottle("DEAD", 500, LATE, leader=DEAD), bottle("LATE", 500, LATE)

    assert () == choose_bottle([dead, good], ml=250, today=TODAY).doubts
    assert ["DEAD"] == [one.bottle for one in choose_bottle([dead], ml=250, today=TODAY).doubts]


def drawn(*stocks: DeveloperBottle) -> list[str | None]:
    """Two rolls one after the other in a tank of half a litre: 250 mL of stock for each of two mixes."""
    plan = planned(with_rolls(replace(WISH, stocks=stocks), 2))
    return [one.stock_from for one in plan.liquids if one.kind == "developer"]


def test_what_one_liquid_takes_is_gone_for_the_next() -> None:
    """Of 300 mL the second mix has too little and comes from the next bottle, or from none."""
    assert ["SOON", "LATE"] == drawn(bottle("SOON", 300, SOON), bottle("LATE", 300, LATE))
    assert ["SOON", None] == drawn(bottle("SOON", 300, SOON))
    assert ["SOON", "SOON"] == drawn(bottle("SOON", 500, SOON), bottle("LATE", 300, LATE))


def test_a_mixed_developer_is_drawn_from_no_bottle_again() -> None:
    """Once it stands ready nothing is offered for it."""
    wish = replace(WISH, stocks=(bottle("SOON", 500, SOON),), developer_bottles=((COMBINATION, "R5TN-6"),))
    liquid = planned(wish).liquid("develop-A")

    assert ("R5TN-6", None) == (liquid.bottle, liquid.stock_from)
