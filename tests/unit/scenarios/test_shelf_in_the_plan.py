"""Scenario S8 from the shelf to the plan: a stock that died in its bottle, and a litre in four of them."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest
from evening_clock import CountingDice
from fakes import memory_desk, memory_house
from planned import ANSWERS

from tankside.core.planning.first_evening import SixAnswers
from tankside.core.planning.plan import Plan
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refused
from tankside.core.run.instants import Instant
from tankside.core.shelf.bottles import Bottle
from tankside.core.solutions.keeping import by_leaflet
from tankside.core.solutions.leader_test import LeaderTest
from tankside.core.solutions.notation import Dilution
from tankside.web.shown.journal import shown_tankful
from tankside.wording.plan import doubtful_sentence
from tankside.workflows.begin_first_evening import begin_first_evening
from tankside.workflows.change_plan import AsKeptNow, TakeAnyway, TakeBottle, change_plan
from tankside.workflows.cost_of_plan import cost_a_roll
from tankside.workflows.get_ready import Marks, liquid_made
from tankside.workflows.keep_bottles import keep_typed, stands
from tankside.workflows.keep_rolls import NewRoll, add_roll
from tankside.workflows.look_at_shelf import bottles_now
from tankside.workflows.make_plan import Chosen, make_plan
from tankside.workflows.mix_bottle import Mixed, mix_bottle
from tankside.workflows.moments import EPOCH
from tankside.workflows.open_run import open_run, run_for
from tankside.workflows.ports import Desk
from tankside.workflows.pour_over import Empties, decant
from tankside.workflows.read_journal import Which, read_tankful
from tankside.workflows.time_leader import Timed, time_leader

ZONE = ZoneInfo("UTC")
MADE = date(2026, 3, 1)


def on(day: date, hour: int = 18) -> Instant:
    """An hour of a day, as an instant."""
    wall = datetime(day.year, day.month, day.day, hour, tzinfo=UTC)
    us = round((wall - EPOCH).total_seconds() * 1e6)
    return Instant(us, us, f"boot of {day}")


class Season:
    """A desk with one evening behind it and a litre of stock mixed on 1 March."""

    def __init__(self, answers: SixAnswers = ANSWERS) -> None:
        self.desk: Desk = memory_desk()
        self.dice = CountingDice()
        begin_first_evening(self.desk, self.dice, answers, on(date(2026, 2, 1)), zone="UTC")
        done = self.desk.rolls.all()[0]
        self.desk.rolls.keep(replace(done, standing="done"))
        mixed = Mixed("developer", "Umber", Dilution(1, 0), 1000.0, keeping=by_leaflet(6, 2))
        self.litre: Bottle = mix_bottle(self.desk, self.dice, mixed, Marks(), on(MADE))
        fixer = Mixed("fixer", "Fixer", Dilution(1, 4), 1000.0, rolls_used=1.0, keeping=by_leaflet(24, None))
        mix_bottle(self.desk, self.dice, fixer, Marks(), on(MADE))

    def plan(self, day: date, *, precious: int = 0, ordinary: int = 1) -> Plan:
        """A plan of so many fresh rolls for an evening."""
        like = self.desk.rolls.all()[-1]
        rolls = [
            add_roll(
                self.desk,
                self.dice,
                NewRoll(like.film, like.format, like.index, precious=one < precious),
                on(day),
            ).key
            for one in range(precious + ordinary)
        ]
        return make_plan(self.desk, self.dice, Chosen(rolls), on(day))

    def leader(self, seconds: float, day: date, *, fresh: bool = False) -> None:
        """A leader timed in the litre."""
        timed = Timed(LeaderTest(seconds), fresh)
        time_leader(self.desk, self.dice, self.litre.code, timed, on(day), zone=ZONE)


DAY_40 = date(2026, 4, 10)


@pytest.mark.parametrize(
    ("seconds", "drawn_from", "standing"),
    [(120.0, False, ["passed over"]), (60.0, True, []), (None, True, ["to test"])],
)
def test_the_leader_goes_before_the_date(
    seconds: float | None, drawn_from: bool, standing: list[str]
) -> None:
    """Black in 35 s fresh; on day 40 120 s is a no, 60 s a yes, and no test at all asks for one."""
    season = Season()
    season.leader(35.0, MADE, fresh=True)
    if seconds is not None:
        season.leader(seconds, DAY_40)
    plan = season.plan(DAY_40)

    assert drawn_from == (plan.liquid("develop-A").stock_from == season.litre.code)
    assert standing == [one.standing for one in plan.bottles]
    now = {one.bottle.code: one.until for one in bottles_now(season.desk, ZONE, DAY_40)}
    assert date(2026, 9, 1) == now[season.litre.code]


def test_a_dead_stock_taken_anyway_is_noted_in_the_plan() -> None:
    """The second number takes the bottle, says so with what spoke against it, and is kept."""
    season = Season()
    season.leader(35.0, MADE, fresh=True)
    season.leader(120.0, DAY_40)
    plan = season.plan(DAY_40)
    change_plan(season.desk, season.dice, plan.key, TakeBottle(season.litre.code), on(DAY_40, 19))
    kept = season.desk.plans.by_key(plan.key)

    assert kept is not None
    assert season.litre.code == kept.liquid("develop-A").stock_from
    noted = kept.bottles[0]
    assert (("leader-slow",), "taken anyway") == (noted.reasons, noted.standing)
    assert noted.leader_ratio == pytest.approx(120 / 35)


def test_a_precious_roll_is_held_and_released_by_its_owner_alone() -> None:
    """Beside an ordinary one; taking the bottle does not release it, its owner does."""
    season = Season()
    season.leader(35.0, MADE, fresh=True)
    plan = season.plan(DAY_40, precious=1)
    assert [("test-due",)] == [one.because for one in plan.held]
    after = change_plan(season.desk, season.dice, plan.key, TakeBottle(season.litre.code), on(DAY_40, 19))
    assert 1 == len(after.held)
    taken = change_plan(season.desk, season.dice, plan.key, TakeAnyway(plan.held[0].roll), on(DAY_40, 20))

    assert () == taken.held
    assert (plan.held[0].roll,) == taken.released


def test_a_precious_roll_alone_is_refused_until_the_leader_was_timed() -> None:
    """No plan of it; after tonight's test there is one."""
    season = Season()
    season.leader(35.0, MADE, fresh=True)
    with pytest.raises(Refused) as no:
        season.plan(DAY_40, precious=1, ordinary=0)
    season.leader(40.0, DAY_40)

    assert "batch-held-for-precious" == no.value.refusal.code
    assert season.litre.code == season.plan(DAY_40, precious=1, ordinary=0).liquid("develop-A").stock_from


def test_a_test_made_after_the_plan_is_taken_in() -> None:
    """The doubt goes once the leader was timed and the plan takes in what the shelf says."""
    season = Season()
    season.leader(35.0, MADE, fresh=True)
    plan = season.plan(DAY_40)
    season.leader(45.0, DAY_40)
    after = change_plan(season.desk, season.dice, plan.key, AsKeptNow(), on(DAY_40, 19))

    assert (["to test"], []) == (
        [one.standing for one in plan.bottles],
        [one.standing for one in after.bottles],
    )


@pytest.mark.parametrize(("used_on", "half_ends", "takes_half"), [
    (date(2026, 4, 20), date(2026, 6, 20), False),
    (date(2026, 5, 20), date(2026, 7, 20), True),
])  # fmt: skip
def test_the_plan_takes_the_bottle_that_ends_first_and_is_good(
    used_on: date, half_ends: date, takes_half: bool
) -> None:
    """Half used on 20 April it ends on 20 June, so on 1 July a full one goes; of 20 May it goes first."""
    season = Season(replace(ANSWERS, tank_ml=375.0, dilution=Dilution(1, 2)))
    bottles = decant(season.desk, season.dice, season.litre.code, Empties(4, 250.0), on(MADE, 19), zone=ZONE)
    plan = season.plan(used_on)
    half = plan.liquid("develop-A").stock_from
    liquid_made(season.desk, season.dice, plan.key, "develop-A", on(used_on, 19))
    until = {one.bottle.code: one.until for one in bottles_now(season.desk, ZONE, used_on)}
    july = season.plan(date(2026, 7, 1)).liquid("develop-A")

    assert half in {one.code for one in bottles}
    assert 125.0 == stands(season.desk, half or "").ml == july.stock_ml
    assert {half: half_ends} | dict.fromkeys({one.code for one in bottles} - {half}, date(2026, 9, 1)) == {
        code: until[code] for code in until if code in {one.code for one in bottles}
    }
    assert takes_half == (july.stock_from == half)
    assert july.stock_from in {one.code for one in bottles}


def test_after_the_last_date_the_plan_does_without() -> None:
    """On 2 September every bottle is past its date: fresh stock, and each is told why."""
    season = Season()
    plan = season.plan(date(2026, 9, 2))

    assert plan.liquid("develop-A").stock_from is None
    assert [("past-its-date", "test-due")] == [one.reasons for one in plan.bottles]


def test_what_a_roll_costs_is_told_where_the_price_is_known() -> None:
    """A litre of stock at 12.50: 250 mL are 3.13, before and after it is mixed; the others have no price."""
    season = Season()
    assert {} == cost_a_roll(season.desk, season.plan(MADE))
    keep_typed(season.desk, season.litre.code, keeping=None, price_minor=1250)
    plan = season.plan(MADE)
    before = cost_a_roll(season.desk, plan)
    made = liquid_made(season.desk, season.dice, plan.key, "develop-A", on(MADE, 19))

    assert {"develop-A": 313} == before == cost_a_roll(season.desk, made.plan)
    assert 750.0 == stands(season.desk, season.litre.code).ml


def test_a_fixer_costs_the_share_of_its_life_that_a_roll_takes() -> None:
    """A litre at 4.00 is planned for 20 rolls: 20 cents a roll of ordinary film."""
    season = Season()
    fixer = next(one for one in bottles_now(season.desk, ZONE, MADE) if one.batch.kind == "fixer")
    keep_typed(season.desk, fixer.bottle.code, keeping=None, price_minor=400)

    assert {"fix": 20} == cost_a_roll(season.desk, season.plan(MADE))


def test_what_was_taken_against_the_advice_stands_in_the_journal() -> None:
    """The dead stock and the precious roll, each by its owner's word; an evening as advised says nothing."""
    season = Season()
    season.leader(35.0, MADE, fresh=True)
    advised = season.plan(MADE)
    season.leader(120.0, DAY_40)
    plan = season.plan(DAY_40, precious=1)
    change_plan(season.desk, season.dice, plan.key, TakeBottle(season.litre.code), on(DAY_40, 19))
    change_plan(season.desk, season.dice, plan.key, TakeAnyway(plan.held[0].roll), on(DAY_40, 19))
    house = memory_house(season.desk)
    told = {}
    for one in (advised, plan):
        run = open_run(house.desk, house.live_runs, run_for(one.key), one.key, on(DAY_40, 20))
        told[one.key] = shown_tankful(read_tankful(house.desk, Which(run, "A")), Preferences()).anyway

    assert () == told[advised.key]
    assert (
        f"{season.litre.code} is taken though its leader took 3.4 times its fresh time.",
        f"{plan.held[0].code} is precious and was released by its owner.",
    ) == told[plan.key]


def test_a_fixer_past_its_date_comes_last_and_is_told() -> None:
    """Two months are printed: on 10 May a fixer of 1 March goes only where there is no other."""
    season = Season()
    old = next(one for one in bottles_now(season.desk, ZONE, MADE) if one.batch.kind == "fixer").bottle.code
    keep_typed(season.desk, old, keeping=None, price_minor=None)
    alone = season.plan(date(2026, 5, 10))
    fixer = Mixed("fixer", "Fixer", Dilution(1, 4), 1000.0, rolls_used=1.0)
    new = mix_bottle(season.desk, season.dice, fixer, Marks(), on(date(2026, 5, 1))).code
    both = season.plan(date(2026, 5, 10))

    assert (old, new) == (alone.liquid("fix").bottle, both.liquid("fix").bottle)
    told = [doubtful_sentence(one, Preferences()) for one in alone.doubtful if one.code == "past-its-date"]
    assert [f"{old} was good until 1 May 2026. Test it, or mix fresh."] == told
    assert "past-its-date" not in {one.code for one in both.doubtful}
