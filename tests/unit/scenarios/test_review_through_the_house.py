"""Scenario: what came out is judged, a proposal is taken, and the next plan differs."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from evening_clock import at
from season import DAY_S, Season

from tankside.core.review.evidence import NextMorning, Strips, TwoDensities
from tankside.workflows.accept_correction import accept_correction, leave_as_it_is
from tankside.workflows.answer_next_morning import answer_next_morning
from tankside.workflows.propose_correction import propose_correction
from tankside.workflows.read_two_densities import read_two_densities
from tankside.workflows.records import KeptProposal
from tankside.workflows.what_changed import what_changed

STRIPS = Strips((0.590, 0.585, 0.595), aim=0.56)
MORNING = at(20 * DAY_S)


def judged(season: Season, logged_c: Sequence[float]) -> tuple[KeptProposal, ...]:
    """Three evenings at 9:30 that the log says were so warm, and the three step strips of them."""
    which = [season.evening(reads_c=temp_c) for temp_c in logged_c]
    house = season.house
    return propose_correction(house.desk, house.dice, STRIPS, which, MORNING)


def test_warm_logs_are_blamed_not_the_time() -> None:
    """Read 21.0, 20.8 and 21.1: temper, or 8:45 at 21; taken, the time stays and the plan says why."""
    season = Season()
    before = season.next_plan().tankfuls[0].development.time_s.value
    (one,) = judged(season, (21.0, 20.8, 21.1))

    assert ("temper", 21.0) == (one.proposal.what, one.proposal.at_c)
    assert 525 == one.proposal.new
    accept_correction(season.house.desk, season.house.dice, one.key, MORNING)
    after = season.next_plan()
    assert before == after.tankfuls[0].development.time_s.value
    assert ["temper"] == [each.because.proposal.what for each in what_changed(season.house.desk, after)]


def test_the_same_strips_at_20_change_the_time_by_half() -> None:
    """Varied: the same read at 20.0. Full correction -8 % (-10.5 to -6.5), -4 % is taken, 9:30 is kept."""
    season = Season()
    (one,) = judged(season, (20.0, 20.0, 20.0))
    full = one.proposal.full_percent

    assert "time" == one.proposal.what
    assert full is not None
    assert (-8, -10.5, -6.5) == (round(full.value), round(full.low, 1), round(full.high, 1))
    desk = season.house.desk
    accept_correction(desk, season.house.dice, one.key, MORNING)
    rows = desk.combinations.all()[0].rows
    assert ["leaflet", "accepted"] == [row.source for row in rows]
    assert -4 == round(100 * (rows[1].time_s / rows[0].time_s - 1))
    assert rows[0].key == rows[1].replaces
    plan = season.next_plan()
    assert rows[1].time_s == plan.tankfuls[0].development.time_s.value
    assert [("A", one.key)] == [(each.letter, each.because.key) for each in what_changed(desk, plan)]


@pytest.mark.parametrize(("logged_c", "what"), [(20.4, "time"), (20.9, "temper"), (19.4, "time")])
def test_only_the_log_is_varied(logged_c: float, what: str) -> None:
    """Under 3 % left over from what the log explains nothing is left for the time to answer for."""
    (one,) = judged(Season(), (logged_c, logged_c, logged_c))

    assert what == one.proposal.what


def test_two_densities_blame_the_exposure() -> None:
    """Shadow 0.18 (aim 0.35), highlight 1.03 (1.20): 1.1 stops under; the index goes, the time stays."""
    season = Season()
    which, house = season.evening(), season.house
    read = TwoDensities(0.18, 1.03, 0.35, 1.20, 0.5)
    keep, index = read_two_densities(house.desk, house.dice, which, read, MORNING)

    assert ["keep", "index"] == [keep.proposal.what, index.proposal.what]
    assert (125.0, 80.0) == (index.proposal.old, index.proposal.new)
    accept_correction(house.desk, house.dice, index.key, MORNING)
    rows = {row.index: (row.time_s, row.source) for row in house.desk.combinations.all()[0].rows}
    assert {125.0: (570.0, "leaflet"), 80.0: (570.0, "accepted")} == rows


@pytest.mark.parametrize(("shadow_d", "what"), [(0.35, ["time"]), (0.18, ["keep", "index"])])
def test_only_the_shadow_is_varied(shadow_d: float, what: list[str]) -> None:
    """A right shadow under the same highlight is flat, and then the time is to blame."""
    season = Season()
    read = TwoDensities(shadow_d, 1.03, 0.35, 1.20, 0.5)
    made = read_two_densities(season.house.desk, season.house.dice, season.evening(), read, MORNING)

    assert what == [one.proposal.what for one in made]


def test_next_morning_to_next_plan() -> None:
    """'Harsh' at the right temperature: half of it is taken, and the plan of the next roll is shorter."""
    season = Season()
    which, house = season.evening(), season.house
    (one,) = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "harsh"), MORNING)
    accept_correction(house.desk, house.dice, one.key, MORNING)
    plan = season.next_plan()

    assert one.proposal.new == plan.tankfuls[0].development.time_s.value
    assert 0.9 * 570 <= one.proposal.new < 570


def test_left_as_it_is_nothing_changes() -> None:
    """A proposal that was left is not taken later, and the next plan is as the last."""
    season = Season()
    which, house = season.evening(), season.house
    (one,) = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "flat"), MORNING)
    leave_as_it_is(house.desk, one.key, MORNING)
    plan = season.next_plan()

    assert 570.0 == plan.tankfuls[0].development.time_s.value
    assert () == what_changed(house.desk, plan)
    assert "declined" == house.desk.proposals.all()[0].standing


def test_a_contrast_far_off_is_still_taken_in_one_small_step() -> None:
    """A range of 1.60 for 0.85 is beyond the usual belief in `c_inf`: a tenth less, and no refusal."""
    season = Season()
    read = TwoDensities(0.35, 1.95, 0.35, 1.20, 0.5)
    (one,) = read_two_densities(season.house.desk, season.house.dice, season.evening(), read, MORNING)

    assert "time" == one.proposal.what
    assert 570 * 0.9 == pytest.approx(one.proposal.new, abs=2.5)
