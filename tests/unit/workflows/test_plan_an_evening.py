"""From six answers to a plan, a change of it, and its liquids in bottles, on a desk that remembers."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evening_clock import CountingDice, at
from fakes import memory_desk
from planned import ANSWERS

from tankside.core.planning.plan import Plan
from tankside.core.refusals import Refused
from tankside.core.solutions.notation import Dilution
from tankside.workflows.add_leaflet_row import add_leaflet_row
from tankside.workflows.begin_first_evening import begin_first_evening
from tankside.workflows.change_plan import AnotherRoll, AsKeptNow, DeveloperReads, SecondTank, change_plan
from tankside.workflows.get_ready import HaveAlready, Marks, get_ready, liquid_made
from tankside.workflows.keep_place import keep_thermometer, read_taps, tank_tested
from tankside.workflows.make_plan import Chosen, make_plan
from tankside.workflows.mix_bottle import Mixed, mix_bottle
from tankside.workflows.ports import Desk


def begun() -> tuple[Desk, CountingDice, Plan]:
    """A desk after a first evening's six answers."""
    desk, dice = memory_desk(), CountingDice()
    return desk, dice, begin_first_evening(desk, dice, ANSWERS, at(0.0))


def test_six_answers_are_kept() -> None:
    """Film, roll, leaflet row, tank, thermometer, place and plan stand on the desk."""
    desk, _, plan = begun()

    assert [1, 1, 1, 1, 1] == [
        len(one.all()) for one in (desk.films, desk.rolls, desk.tanks, desk.thermometers, desk.places)
    ]
    assert [570.0] == [row.time_s for one in desk.combinations.all() for row in one.rows]
    assert plan == desk.plans.latest()


def test_what_was_tested_is_not_assumed() -> None:
    """A thermometer read in ice and a tank tested for two minutes are no longer taken for granted."""
    desk, dice, plan = begun()
    keep_thermometer(desk, replace(plan.thermometer, offset_c=-0.3))
    tank_tested(desk, desk.tanks.all()[0].key, liquid_c=40.0, tank_c=17.0, read_c=36.8)
    again = make_plan(desk, dice, Chosen(tuple(one.key for one in desk.rolls.all())), at(60.0))

    before, after = ({one.code for one in each.assumed} for each in (plan, again))
    assert {"thermometer-true", "tank-worth"} == before - after


def test_a_refused_evening_keeps_nothing() -> None:
    """A developer at 30 C cannot be timed, and no half of the answers stays."""
    desk = memory_desk()
    with pytest.raises(Refused):
        begin_first_evening(desk, CountingDice(), replace(ANSWERS, reads_c=30.0), at(0.0))

    assert () == desk.rolls.all() == desk.tanks.all() == desk.combinations.all()


def test_one_tap_for_another_roll_and_one_for_a_tank() -> None:
    """The second roll follows; with a second tank it follows sooner, under the next number."""
    desk, dice, plan = begun()
    two = change_plan(desk, dice, plan.key, AnotherRoll(), at(10.0))
    tanks = change_plan(desk, dice, plan.key, SecondTank(), at(20.0))

    assert [1, 2, 3] == [plan.number, two.number, tanks.number]
    assert tanks.tankful("B").starts_s < two.tankful("B").starts_s
    assert 2 == len(desk.rolls.all())


def test_the_reading_moves_the_time() -> None:
    """20.0 in place of 21.0 gives the printed time."""
    desk, dice, plan = begun()
    after = change_plan(desk, dice, plan.key, DeveloperReads(20.0), at(10.0))

    assert 570.0 == after.tankful("A").baths[0].times.aim_s


def test_a_liquid_made_is_a_batch_in_a_bottle() -> None:
    """The fixer gets a code, the ledger says mixed, and the plan's next number names the bottle."""
    desk, dice, plan = begun()
    made = liquid_made(desk, dice, plan.key, "fix", at(30.0))
    again = liquid_made(desk, dice, plan.key, "fix", at(40.0))

    assert made.code == made.plan.liquid("fix").bottle == again.code
    assert [("mixed", 500.0)] == [(one.line.kind, one.line.ml) for one in desk.ledger.of_bottle(made.code)]
    assert made.plan.number == plan.number + 1


def test_a_bottle_that_stood_there() -> None:
    """'I have one already' keeps its volume and the rolls behind it; too little is refused."""
    desk, dice, plan = begun()
    with pytest.raises(Refused) as no:
        liquid_made(desk, dice, plan.key, "fix", at(30.0), already=HaveAlready(400.0))
    made = liquid_made(desk, dice, plan.key, "fix", at(30.0), already=HaveAlready(1000.0, 4.0))
    booked = [one.line for one in desk.ledger.of_bottle(made.code)]

    assert no.value.refusal.code == "bottle-holds-too-little"
    assert (1000.0, 4.0) == (sum(one.ml for one in booked), sum(one.area_units for one in booked))


def test_a_bottle_keeps_the_parts_it_was_mixed_by() -> None:
    """A fixer of 1+9 on the shelf is planned as 1+9, and no dilution of it is taken for granted."""
    desk, dice, _ = begun()
    bottle = mix_bottle(desk, dice, Mixed("fixer", "Fixer", Dilution(1, 9), 1000.0), Marks(), at(20.0))
    plan = make_plan(desk, dice, Chosen([desk.rolls.all()[0].key]), at(50.0))

    assert ("1+9", bottle.code) == (plan.liquid("fix").parts, plan.liquid("fix").bottle)
    assert {"stop-parts", "wetting-parts"} == {one.code for one in plan.assumed if "parts" in one.code}


def test_a_change_keeps_the_bottles() -> None:
    """A bottle named once is named in every later number."""
    desk, dice, plan = begun()
    made = liquid_made(desk, dice, plan.key, "stop", at(30.0))
    after = change_plan(desk, dice, plan.key, DeveloperReads(20.5), at(40.0))

    assert made.code == after.liquid("stop").bottle


def test_amounts_come_once_the_taps_are_read() -> None:
    """Before that a target, after that hot and cold."""
    desk, dice, plan = begun()
    cold = change_plan(desk, dice, plan.key, DeveloperReads(None), at(10.0))
    before = get_ready(desk, plan.key)[-1]
    read_taps(desk, cold.place.key, hot_c=52.0, cold_c=14.0)
    after = get_ready(desk, plan.key)[-1]

    assert before.target_c is not None
    assert (None, True) == (before.tempered, after.tempered is not None)


def test_rolls_from_the_list_by_a_row_added_later() -> None:
    """A time at another index is added, and a plan made of the roll chosen."""
    desk, dice, _ = begun()
    roll = desk.rolls.all()[0]
    desk.rolls.keep(replace(roll, index=250.0))
    combination = desk.combinations.all()[0]
    with pytest.raises(Refused):
        make_plan(desk, dice, Chosen([roll.key]), at(50.0))
    add_leaflet_row(desk, dice, combination.key, at(60.0), time_s=720.0, temp_c=20.0, index=250.0)
    plan = make_plan(desk, dice, Chosen([roll.key]), at(70.0))

    assert 720.0 == plan.tankful("A").baths[0].times.aim_s
    assert 2 == len(desk.combinations.all()[0].rows)


@pytest.mark.parametrize(("rolls_used", "spent"), [(4.0, False), (18.5, False), (19.5, True)])
def test_a_spent_fixer_is_said(rolls_used: float, *, spent: bool) -> None:
    """A litre takes 20 rolls by the pessimistic source; with half a roll left the plan says so."""
    desk, dice, plan = begun()
    already = HaveAlready(1000.0, rolls_used)
    made = liquid_made(desk, dice, plan.key, "fix", at(30.0), already=already)
    after = make_plan(desk, dice, Chosen([desk.rolls.all()[0].key]), at(60.0))

    assert made.code == after.liquid("fix").bottle
    assert spent == ("fixer-spent" in [one.code for one in after.doubtful])


def test_a_fixer_that_may_take_more_goes_first() -> None:
    """Of two bottles the spent one is passed over."""
    desk, dice, plan = begun()
    liquid_made(desk, dice, plan.key, "fix", at(30.0), already=HaveAlready(1000.0, 20.0))
    other = begin_first_evening(desk, dice, ANSWERS, at(40.0))
    fresh = liquid_made(desk, dice, other.key, "fix", at(50.0), already=HaveAlready(1000.0, 2.0))
    after = make_plan(desk, dice, Chosen([desk.rolls.all()[0].key]), at(60.0))

    assert fresh.code == after.liquid("fix").bottle


def test_what_was_made_for_tonight_stays_when_the_shelf_is_looked_at_again() -> None:
    """Every bottle made at 'Get ready', wetting bath too, is still the plan's."""
    desk, dice, plan = begun()
    for key in ("fix", "stop", "wetting"):
        plan = liquid_made(desk, dice, plan.key, key, at(30.0)).plan
    after = change_plan(desk, dice, plan.key, AsKeptNow(), at(40.0))

    assert [one.bottle for one in plan.liquids] == [one.bottle for one in after.liquids]
