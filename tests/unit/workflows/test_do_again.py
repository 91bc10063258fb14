"""Last time once more: in one go where everything is as it was, and nothing kept where it is not."""

from __future__ import annotations

from dataclasses import replace
from uuid import UUID, uuid4

import pytest
from evening_before import DAY_S, lived_before, waiting
from evening_clock import at
from fakes import memory_house
from planned import ANSWERS

from tankside.core.refusals import Refused
from tankside.core.review.evidence import NextMorning
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film
from tankside.core.solutions.notation import Dilution
from tankside.workflows.accept_correction import accept_correction
from tankside.workflows.add_leaflet_row import add_leaflet_row
from tankside.workflows.answer_next_morning import answer_next_morning
from tankside.workflows.as_last_time import LastTime, last_time
from tankside.workflows.begin_first_evening import begin_first_evening
from tankside.workflows.change_plan import OtherSupply, OwnBaths, OwnTime, change_plan
from tankside.workflows.do_again import Again, do_again, plan_again
from tankside.workflows.get_ready import HaveAlready, liquid_made
from tankside.workflows.house import House
from tankside.workflows.keep_bottles import discard
from tankside.workflows.keep_rolls import NewRoll, add_roll
from tankside.workflows.moments import moment_of
from tankside.workflows.open_run import run_for
from tankside.workflows.open_runs import open_runs
from tankside.workflows.read_journal import Which
from tankside.workflows.since_last_time import (
    Corrected,
    FixerNearItsLimit,
    FixerTestDue,
    OtherBottle,
    OtherFilm,
    OtherTime,
    OwnTimeLeft,
    since_last_time,
)

TONIGHT = at(DAY_S)
NEXT = UUID(int=77)


def lived(*, rolls_through: float = 0.0, rolls: int = 2) -> tuple[House, LastTime]:
    """A house the day after its first evening, with rolls that wait."""
    house = memory_house()
    lived_before(house, at(0.0), rolls_through=rolls_through)
    waiting(house, TONIGHT, rolls)
    return house, last_of(house)


def last_of(house: House) -> LastTime:
    """Last time as the house now has it."""
    last = last_time(house.desk, house.live_runs)
    assert last is not None
    return last


def again(house: House, reads_c: float = 20.0, plan: UUID = NEXT) -> UUID:
    """Everything that waits, once more."""
    asked = Again(plan, [one.key for one in last_of(house).rolls], reads_c)
    return do_again(house.desk, house.dice, house.live_runs, asked, TONIGHT)


def kept(house: House) -> tuple[int, ...]:
    """How much stands on the desk that an evening adds to."""
    desk = house.desk
    plan = desk.plans.latest()
    return (
        len(desk.batches.all()), len(desk.bottles.all()), len(desk.ledger.all()),
        len(desk.run_log.headings()), plan.key.int if plan else 0,
    )  # fmt: skip


def refused(house: House, reads_c: float = 20.0) -> str:
    """The code of the refusal, which must keep nothing."""
    before = kept(house)
    with pytest.raises(Refused) as told:
        again(house, reads_c)
    assert before == kept(house)
    return told.value.refusal.code


def test_the_same_liquids_and_one_open_run() -> None:
    """Stop bath and fixer from the same bottles, developer and wetting agent booked fresh, the run open."""
    house, last = lived()
    run = again(house)
    plan = house.desk.plans.by_key(NEXT)
    assert plan is not None
    reused = [(one.key, one.bottle) for one in last.plan.liquids if one.reusable]
    fresh = [one.bottle for one in plan.liquids if not one.reusable]

    assert reused == [(one.key, one.bottle) for one in plan.liquids if one.reusable]
    assert {"mixed"} == {one.line.kind for code in fresh if code for one in house.desk.ledger.of_bottle(code)}
    assert None not in fresh
    assert [(run, False)] == [(one.run, one.hung) for one in open_runs(house.desk, house.live_runs)]


def test_the_reading_counts() -> None:
    """Read at 20.0 the leaflet's 9:30 stands; a warmer developer is poured out sooner."""
    times = {}
    for reads_c in (20.0, 21.0):
        house, _ = lived()
        again(house, reads_c)
        plan = house.desk.plans.by_key(NEXT)
        assert plan is not None
        times[reads_c] = plan.tankful("A").baths[0].times.aim_s

    assert 570.0 == times[20.0] > times[21.0]


def test_pressed_twice_it_is_one_run() -> None:
    """The key drawn with the page makes the second press lead to the first run."""
    house, _ = lived()
    asked = Again(NEXT, [one.key for one in last_of(house).rolls], 20.0)
    runs = {do_again(house.desk, house.dice, house.live_runs, asked, TONIGHT) for _ in range(2)}

    assert (1, 2) == (len(runs), len(house.desk.run_log.headings()))


def test_as_many_as_last_time_are_offered() -> None:
    """Of three that wait two are ticked, for two went and two fit; of one, one; a precious one never."""
    three, _ = lived(rolls=3)
    one, _ = lived(rolls=1)
    precious, _ = lived(rolls=0)
    waiting(precious, TONIGHT, 1, precious=True)

    assert [2, 1, 0] == [len(last_of(house).offered) for house in (three, one, precious)]
    assert [3, 1, 1] == [len(last_of(house).rolls) for house in (three, one, precious)]


def test_rolls_in_a_run_are_not_offered_again() -> None:
    """Once the run is open they are taken, though nothing is poured yet; so they are refused too."""
    house, last = lived()
    again(house)
    asked = Again(uuid4(), [one.key for one in last.rolls], 20.0)

    assert () == last_of(house).rolls
    with pytest.raises(Refused, match="again-roll-taken"):
        do_again(house.desk, house.dice, house.live_runs, asked, TONIGHT)


def test_a_film_without_a_time_is_not_offered() -> None:
    """It is counted apart."""
    house, _ = lived()
    unknown = NewRoll(Film("Weir 50", "cubic"), Format("135-36"), 50.0)
    add_roll(house.desk, house.dice, unknown, TONIGHT)

    assert (2, 1) == (len(last_of(house).rolls), len(last_of(house).timeless))


@pytest.mark.parametrize(("rolls_through", "code"), [(16.0, None), (17.0, "again-fixer-spent")])
def test_the_fixer_must_take_them(rolls_through: float, code: str | None) -> None:
    """A litre is planned for 20 rolls: after 16 and last time's two it takes these two, after 17 it does not.

    Source: Anchell, The Darkroom Cookbook, 3rd ed. (2008), p. 108: 20 a litre (published).
    """
    house, _ = lived(rolls_through=rolls_through)

    assert code == (refused(house) if code else again(house) and None)


def test_a_fixer_bottle_too_empty_leads_to_the_ordinary_way() -> None:
    """Poured away, no bottle holds enough; the plan alone may then be kept, with the fixer to be made."""
    house, last = lived()
    (bottle,) = [one.bottle for one in last.plan.liquids if one.key == "fix" and one.bottle]
    discard(house.desk, house.dice, bottle, TONIGHT)

    assert "again-no-bottle" == refused(house)
    asked = Again(NEXT, [one.key for one in last.rolls], 20.0)
    plan = plan_again(house.desk, house.live_runs, asked, TONIGHT)
    assert (None, 20.0) == (plan.liquid("fix").bottle, plan.wish.reads_c if plan.wish else None)


def test_a_developer_that_cannot_be_timed_keeps_nothing() -> None:
    """At 30 C nothing is planned, booked or opened."""
    house, _ = lived()

    assert "too-warm-to-time" == refused(house, 30.0)


def test_a_precious_roll_among_them_is_not_left_out_unsaid() -> None:
    """A new thermometer, batch or film would hold it back: then the ordinary way asks."""
    house, _ = lived(rolls=1)
    waiting(house, TONIGHT, 1, precious=True)
    fixer = next(one for one in last_of(house).plan.liquids if one.key == "fix")
    assert fixer.bottle is not None
    discard(house.desk, house.dice, fixer.bottle, TONIGHT)

    assert "again-roll-held" == refused(house)


def test_a_house_that_planned_nothing_has_no_last_time() -> None:
    """It is refused with the first evening as the way on."""
    house = memory_house()

    assert last_time(house.desk, house.live_runs) is None
    with pytest.raises(Refused, match="again-nothing-before"):
        do_again(house.desk, house.dice, house.live_runs, Again(NEXT, [], 20.0), TONIGHT)


def test_own_baths_and_dilutions_are_taken_over() -> None:
    """Six minutes of fixer and a wetting bath of 1+99 stay; a time of one's own does not, and is told."""
    house = memory_house()
    plan = begin_first_evening(house.desk, house.dice, replace(ANSWERS, tank_ml=600.0, reads_c=20.0), at(0.0))
    assert plan.wish is not None
    wetting = replace(plan.wish.supply("wetting agent"), dilution=Dilution(1, 99))
    own = (OtherSupply(wetting), OwnBaths(replace(plan.wish.times, fix_s=360.0)), OwnTime(600.0))
    for one in own:
        change_plan(house.desk, house.dice, plan.key, one, at(1.0))
    for liquid in ("fix", "stop", "wetting", "develop-A"):
        liquid_made(house.desk, house.dice, plan.key, liquid, at(2.0), already=holding(liquid))
    again(house)
    after = house.desk.plans.by_key(NEXT)
    assert after is not None
    fix = next(one for one in after.tankful("A").baths if one.kind == "fix")

    assert ("1+99", 360.0, None) == (
        after.liquid("wetting").parts, fix.times.aim_s, after.wish.own_time_s if after.wish else 0.0
    )  # fmt: skip


def holding(liquid: str) -> HaveAlready | None:
    """A litre of what is reused."""
    return HaveAlready(1000.0) if liquid in ("fix", "stop") else None


def test_nothing_changed_is_nothing_told() -> None:
    """The same bottles, the same leaflet: no line."""
    house, last = lived()

    assert () == since_last_time(house.desk, last, moment_of(TONIGHT))


def test_each_change_is_told_once() -> None:
    """A fixer that takes one roll more and is to be tested, and a row of one's own for the leaflet's."""
    house, last = lived(rolls_through=15.0)
    fixer = next(one.bottle for one in last.plan.liquids if one.key == "fix")
    told = since_last_time(house.desk, last, moment_of(TONIGHT))
    assert {FixerNearItsLimit(fixer or "", 1), FixerTestDue(fixer or "")} == set(told)
    assert 2 == len(told)

    (known,) = house.desk.combinations.all()
    add_leaflet_row(
        house.desk,
        house.dice,
        known.key,
        TONIGHT,
        time_s=540.0,
        temp_c=20.0,
        index=125.0,
        source="own",
        words="own",
    )
    told = since_last_time(house.desk, last_of(house), moment_of(TONIGHT))
    assert OtherTime("Ferry 125", 540.0, 20.0, 570.0, 20.0) in told


def test_another_bottle_another_film_and_an_own_time_are_told() -> None:
    """What stood on the shelf last time, what went last time, and the time that is not taken over."""
    house, last = lived()
    bottles = tuple(replace(one, bottle="7MPA-4") for one in last.wish.supplies)
    films = tuple(
        replace(one, combination=replace(one.combination, key=UUID(int=5))) for one in last.wish.rolls
    )
    wish = replace(last.wish, own_time_s=600.0, supplies=bottles, rolls=films)
    other = replace(last, wish=wish)
    told = since_last_time(house.desk, other, moment_of(TONIGHT))

    assert {"fixer", "stop bath"} == {one.kind for one in told if isinstance(one, OtherBottle)}
    assert [OwnTimeLeft(600.0), OtherFilm("Ferry 125")] == [
        one for one in told if not isinstance(one, OtherBottle)
    ]


def test_an_accepted_correction_is_told_until_it_was_planned_by() -> None:
    """Called harsh and half of the correction taken: told once, and no more after the next evening."""
    house, last = lived()
    which = Which(run_for(last.plan.key), "A")
    morning = at(DAY_S - 3600.0)
    (one,) = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "harsh"), morning)
    accept_correction(house.desk, house.dice, one.key, morning)
    told = since_last_time(house.desk, last_of(house), moment_of(TONIGHT))
    assert [one.key] == [each.because.key for each in told if isinstance(each, Corrected)]
    assert 1 == len(told)

    again(house)
    waiting(house, TONIGHT, 1)
    assert () == since_last_time(house.desk, last_of(house), moment_of(TONIGHT))
