"""The demo is laid out through the workflows, is invented throughout, and knows when it is stale."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from evening_clock import at
from fakes import memory_house

from tankside.core.development.belief import contrast_after
from tankside.core.planning.plan import Plan
from tankside.core.run.instants import Instant
from tankside.core.sensitometry.contrast import contrast_index
from tankside.core.sensitometry.shape import Shape
from tankside.demo.invented import BOTTLE_ML
from tankside.demo.lay_out import is_of_today, last_noted, lay_out, untouched
from tankside.demo.strips import density
from tankside.workflows.change_plan import StartLater, change_plan
from tankside.workflows.house import House
from tankside.workflows.read_control import read_control
from tankside.workflows.read_densities import list_combinations, read_combination

DAY_S = 86_400.0
LOG_H = np.linspace(-4.5, 0.5, 2001)


@pytest.fixture(scope="module")
def season() -> tuple[House, Plan]:
    """A house in memory with the demo laid out on 25 November 2026, 20:30 in Berlin."""
    house = replace(memory_house(), zone="Europe/Berlin")
    return house, lay_out(house, at(0.0))


def test_it_is_a_whole_evening_and_its_season(season: tuple[House, Plan]) -> None:
    """Four rolls wait, planned in two tankfuls that overlap; four are done in three closed runs."""
    house, plan = season
    standings = [one.standing for one in house.desk.rolls.all()]
    assert (4, 4) == (standings.count("waiting"), standings.count("done"))
    waiting = {one.code for one in house.desk.rolls.all() if one.standing == "waiting"}
    assert waiting == {roll.code for one in plan.tankfuls for roll in one.rolls}
    assert [True, True, True] == [one.closed for one in house.desk.run_log.headings()]
    first, second = plan.tankfuls
    assert 0.0 == first.starts_s < second.starts_s < first.baths[0].times.aim_s


def test_reused_baths_count_the_films_of_the_season(season: tuple[House, Plan]) -> None:
    """Stop bath and fixer are full, charged with the four rolls that went through them."""
    house, plan = season
    for key in ("stop", "fix"):
        code = plan.liquid(key).bottle
        assert code is not None
        lines = [one.line for one in house.desk.ledger.of_bottle(code)]
        assert (BOTTLE_ML, 4.0) == (sum(one.ml for one in lines), sum(one.area_units for one in lines))
        counted = {"stop": 4.0, "fix": 4.5}
        assert counted[key] == sum(one.counted_units for one in lines)


def test_two_mornings_were_answered(season: tuple[House, Plan]) -> None:
    """One was right, one offers something for the next roll; the last is still to be said."""
    house, _ = season
    assert 2 == len(house.desk.evidence.all())
    offered = [one.proposal.what for one in house.desk.proposals.all() if one.standing == "offered"]
    assert ["time", "index", "time"] == offered


def test_step_strips_tell_their_invented_truth(season: tuple[House, Plan]) -> None:
    """What is believed holds the contrast of the invented law, and one control strip is odd."""
    house, _ = season
    (listed,) = list_combinations(house.desk)
    read = read_combination(house.desk, listed.combination.key)
    assert (3, 14) == (listed.strips, listed.control)
    assert read.belief is not None
    densities = [density(log_h, 570.0) - density(-9.0, 570.0) for log_h in LOG_H]
    true = contrast_index(Shape(LOG_H, np.array(densities)))
    told = contrast_after(read.belief, 570.0)
    assert told.low < true < told.high
    control = read_control(house.desk, listed.combination.key)
    assert (12,) == control.chart.outside
    assert "the other thermometer, it read low" == control.differed[12].words


def test_everything_in_the_past_is_in_the_past(season: tuple[House, Plan]) -> None:
    """The last thing noted lies before the day it was laid out, and each session goes forward."""
    house, _ = season
    last = last_noted(house.desk)
    assert last is not None
    assert last.wall_us < at(0.0).wall_us
    for one in house.desk.run_log.headings():
        recorded = [event.recorded.wall_us for event in house.desk.run_log.after(one.run)]
        assert sorted(recorded) == recorded


def test_it_says_that_it_is_invented(season: tuple[House, Plan]) -> None:
    """The place says so, and so does the source of each time."""
    house, plan = season
    assert "invented" in plan.place.name
    assert {"invented leaflet"} == {row.words for one in house.desk.combinations.all() for row in one.rows}


@pytest.mark.parametrize(("later_s", "of_today"), [(0.0, True), (11 * 3600.0, True), (DAY_S, False)])
def test_an_untouched_evening_is_stale_the_next_day(
    season: tuple[House, Plan], later_s: float, *, of_today: bool
) -> None:
    """Its plan is for a night that has passed, and nobody has done anything in it."""
    house, _ = season
    assert of_today == is_of_today(house.desk, at(later_s))


def test_what_somebody_did_in_it_is_kept() -> None:
    """A changed plan makes it somebody's own to play with, however old."""
    house = replace(memory_house(), zone="UTC")
    plan = lay_out(house, at(0.0))
    assert untouched(house.desk)
    change_plan(house.desk, house.dice, plan.key, StartLater(600.0), at(60.0))
    assert not untouched(house.desk)
    assert is_of_today(house.desk, at(3 * DAY_S))


@pytest.mark.parametrize("hour", [3, 23])
def test_it_can_be_laid_out_at_any_hour(hour: int) -> None:
    """The first pour of tonight is never in the past."""
    house = replace(memory_house(), zone="Asia/Kolkata")
    now = Instant(at(0.0).wall_us + hour * 3_600_000_000, 0, "boot")
    plan = lay_out(house, now)
    assert plan.starts is not None
    assert plan.starts.timestamp() * 1e6 > now.wall_us
