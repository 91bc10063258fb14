"""Scenario S8: a stock that died before its date, and a litre decanted to four bottles."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from tankside.core.refusals import Refused
from tankside.core.shelf.contents import Contents, bottle_good_until, decanted, drawn, which_to_use
from tankside.core.shelf.fitness import Standing, fitness_of, may_develop
from tankside.core.solutions.keeping import KeepingTime
from tankside.core.solutions.leader_test import LeaderTest, judge_leader
from tankside.core.sources import Provenance

MADE = date(2026, 3, 1)
DAY_40 = MADE + timedelta(days=40)
RULE = KeepingTime(6, 2, Provenance("from memory"))
FRESH = LeaderTest(35)
STOCK = Standing(MADE, date(2026, 9, 1), leader=judge_leader(FRESH, LeaderTest(120)))


def test_the_leader_says_no_though_the_date_says_good() -> None:
    """35 s fresh, 120 s tonight: 3.4 times."""
    assert 3.4 == round(judge_leader(FRESH, LeaderTest(120)).ratio, 1)
    assert ("leader-slow",) == fitness_of(STOCK, today=DAY_40, precious=False).reasons
    with pytest.raises(Refused) as no:
        may_develop(fitness_of(STOCK, today=DAY_40, precious=False), precious=False)

    assert "batch-not-tonight" == no.value.refusal.code


def test_a_precious_roll_is_held() -> None:
    """It waits for a fresh batch."""
    with pytest.raises(Refused) as no:
        may_develop(fitness_of(STOCK, today=DAY_40, precious=True), precious=True)

    assert "batch-held-for-precious" == no.value.refusal.code
    assert "take-it-anyway" in no.value.refusal.ways_on


def test_an_override_is_noted() -> None:
    """Taken all the same, with what spoke against it."""
    taken = may_develop(fitness_of(STOCK, today=DAY_40, precious=True), precious=True, override=True)

    assert (("leader-slow",), True) == (taken.reasons, taken.overridden)


@pytest.mark.parametrize(("seconds", "good"), [(60, True), (69, True), (70, False)])
def test_twice_the_fresh_time_is_the_line(seconds: float, good: bool) -> None:
    """69 s passes, 70 s does not."""
    standing = replace(STOCK, leader=judge_leader(FRESH, LeaderTest(seconds)))

    assert good == fitness_of(standing, today=DAY_40, precious=False).good


def test_untested_on_day_40_a_test_is_due() -> None:
    """It is asked for; an ordinary roll may go all the same, a precious one is held."""
    found = fitness_of(replace(STOCK, leader=None), today=DAY_40, precious=False)

    assert ("test-due",) == found.reasons
    assert found == may_develop(found, precious=False)
    with pytest.raises(Refused):
        may_develop(found, precious=True)


def test_no_test_is_due_in_the_first_weeks() -> None:
    """Day 20, full bottle, ordinary roll."""
    untested = replace(STOCK, leader=None)

    assert fitness_of(untested, today=MADE + timedelta(days=20), precious=False).good
    assert not fitness_of(untested, today=MADE + timedelta(days=20), precious=True).good


def test_tests_at_two_temperatures_are_not_compared() -> None:
    """Fresh at 20, tonight at 24."""
    with pytest.raises(Refused) as no:
        judge_leader(FRESH, LeaderTest(30, 24.0))

    assert "leader-tests-not-alike" == no.value.refusal.code


def four_bottles(used_on: date = date(2026, 4, 20)) -> list[Contents]:
    """A litre of 1 March in four full quarters, one of them half used later."""
    first, *others = decanted(Contents(1000, 1000, 0, MADE), [(250, 250)] * 4, on=MADE)
    return [drawn(first, 125, on=used_on), *others]


def dated(bottles: list[Contents]) -> list[tuple[Contents, date | None]]:
    """Each with its own last day."""
    return [(one, bottle_good_until(one, RULE)) for one in bottles]


def test_each_bottle_has_its_own_date() -> None:
    """Half used on 20 April: to 20 June; the full ones to 1 September."""
    until = [bottle_good_until(one, RULE) for one in four_bottles()]

    assert [date(2026, 6, 20), *[date(2026, 9, 1)] * 3] == until


def test_the_plan_uses_a_full_one() -> None:
    """On 1 July the half bottle is past its two months."""
    assert 1 == which_to_use(dated(four_bottles()), ml=100, today=date(2026, 7, 1))


def test_before_it_ends_the_half_bottle_goes_first() -> None:
    """On 1 June it is still good, and ends soonest."""
    assert 0 == which_to_use(dated(four_bottles()), ml=100, today=date(2026, 6, 1))


def test_used_later_it_is_good_for_longer() -> None:
    """Half used on 20 May it would be good on 1 July."""
    assert 0 == which_to_use(dated(four_bottles(date(2026, 5, 20))), ml=100, today=date(2026, 7, 1))


def test_after_the_last_date_there_is_none() -> None:
    """On 2 September nothing is offered."""
    assert which_to_use(dated(four_bottles()), ml=100, today=date(2026, 9, 2)) is None
