"""Scenario: step strips are read and judged with the log, a proposal is taken, the next plan differs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from uuid import UUID

import pytest
from evening_clock import at
from season import DAY_S, Season
from strips import law, typed

from tankside.core.development.belief import time_for
from tankside.core.refusals import Refused
from tankside.core.review.evidence import NextMorning
from tankside.workflows.accept_correction import accept_correction
from tankside.workflows.answer_next_morning import answer_next_morning
from tankside.workflows.read_densities import list_combinations, read_combination
from tankside.workflows.read_step_strip import Alone, read_step_strip
from tankside.workflows.records import KeptProposal
from tankside.workflows.what_changed import what_changed

MORNING = at(20 * DAY_S)
MEASURED = (0.590, 0.585, 0.595)


def combination(season: Season) -> UUID:
    """The only one there is."""
    return season.house.desk.combinations.all()[0].key


def read_on(season: Season, logged_c: Sequence[float]) -> tuple[KeptProposal, ...]:
    """Three evenings at 9:30 that the log says were so warm, a strip read on each; the last proposal."""
    house, proposed = season.house, ()
    for contrast, temp_c in zip(MEASURED, logged_c, strict=True):
        which = season.evening(reads_c=temp_c)
        _, proposed = read_step_strip(house.desk, house.dice, typed(contrast), which, MORNING)
    return proposed


def test_warm_logs_are_blamed_not_the_time() -> None:
    """0.590, 0.585, 0.595 read at 21.0, 20.8 and 21.1: temper, or 8:45 at 21; taken, the time stays."""
    season = Season()
    before = season.next_plan().tankfuls[0].development.time_s.value
    (one,) = read_on(season, (21.0, 20.8, 21.1))

    assert ("temper", 21.0, 525.0) == (one.proposal.what, one.proposal.at_c, one.proposal.new)
    accept_correction(season.house.desk, season.house.dice, one.key, MORNING)
    after = season.next_plan()
    assert before == after.tankfuls[0].development.time_s.value
    assert ["temper"] == [each.because.proposal.what for each in what_changed(season.house.desk, after)]


def test_the_same_strips_at_20_change_the_time_by_half() -> None:
    """Varied: at 20.0 the full correction is -8 % (-10.5 to -6.5), -4 % is taken, and 9:30 is kept."""
    season = Season()
    (one,) = read_on(season, (20.0, 20.0, 20.0))
    full = one.proposal.full_percent

    assert "time" == one.proposal.what
    assert full is not None
    assert (-8, -10.5, -6.5) == (round(full.value), round(full.low, 1), round(full.high, 1))
    desk = season.house.desk
    accept_correction(desk, season.house.dice, one.key, MORNING)
    rows = desk.combinations.all()[0].rows
    assert ["leaflet", "accepted"] == [row.source for row in rows]
    assert (-4, rows[0].key) == (round(100 * (rows[1].time_s / rows[0].time_s - 1)), rows[1].replaces)
    assert rows[1].time_s == season.next_plan().tankfuls[0].development.time_s.value


@pytest.mark.parametrize(("logged_c", "what"), [(20.4, "time"), (20.9, "temper"), (19.4, "time")])
def test_only_the_log_is_varied(logged_c: float, what: str) -> None:
    """Under 3 % left over from what the log explains nothing is left for the time to answer for."""
    (one,) = read_on(Season(), (logged_c, logged_c, logged_c))

    assert what == one.proposal.what


def test_after_a_correction_the_same_strips_are_seen_against_the_new_time() -> None:
    """Taken, and one strip more of the same kind: what is left is too small to see, so no second step."""
    season = Season()
    (one,) = read_on(season, (20.0, 20.0, 20.0))
    house = season.house
    accept_correction(house.desk, house.dice, one.key, MORNING)
    alone = Alone(combination(season), 570.0, 20.0)
    (other,) = read_step_strip(house.desk, house.dice, typed(0.59), alone, at(21 * DAY_S))[1]

    assert ("time", "keep", one.proposal.new) == (one.proposal.what, other.proposal.what, other.proposal.old)
    assert 0 < other.proposal.seen_percent.value < 3 < one.proposal.seen_percent.value


def test_a_strip_takes_the_place_of_an_answer() -> None:
    """Harsh was offered on; the strip's proposal replaces it, and a later answer speaks of shadows alone."""
    season = Season()
    which, house = season.evening(), season.house
    (answer,) = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "harsh"), MORNING)
    _, (by_strip,) = read_step_strip(house.desk, house.dice, typed(0.56), which, at(20.1 * DAY_S))
    later = answer_next_morning(house.desk, house.dice, which, NextMorning("thin", "harsh"), at(20.2 * DAY_S))
    standing = {one.key: one.standing for one in house.desk.proposals.all()}

    assert "keep" == by_strip.proposal.what
    assert ["index"] == [one.proposal.what for one in later]
    assert ("declined", "offered") == (standing[answer.key], standing[by_strip.key])


@pytest.mark.parametrize("warm_c", [20.0, 22.0])
def test_strips_at_three_times_find_the_time(warm_c: float) -> None:
    """Strips off an invented law at 6:40, 9:30 and 15:00, cold or warm: the interval holds its true time."""
    season = Season()
    house, key, q10 = season.house, combination(season), 2.2
    truth = {"c_inf": 0.95, "k_per_s": 0.0017}
    for time_s in (400.0, 570.0, 900.0):
        at_20 = time_s * q10 ** ((warm_c - 20.0) / 10)
        read_step_strip(
            house.desk, house.dice, typed(law(at_20, **truth)), Alone(key, time_s, warm_c), MORNING
        )  # fmt: skip
    read = read_combination(house.desk, key)

    assert read.belief is not None
    told = time_for(read.belief, 0.56)
    true_s = next(t for t in range(400, 900) if law(float(t), **truth) >= 0.56)
    assert told.low <= true_s <= told.high
    assert (told.high - told.low) / 2 < 60
    assert [1] == [one.strips // 3 for one in list_combinations(house.desk)]


def test_a_strip_is_put_right_by_a_newer_reading() -> None:
    """The newer one counts, the older one stays, and neither is put right twice from the old."""
    season = Season()
    house, key = season.house, combination(season)
    wrong, _ = read_step_strip(house.desk, house.dice, typed(0.80), Alone(key, 570.0, 20.0), MORNING)
    read_step_strip(
        house.desk, house.dice, typed(0.56), Alone(key, 570.0, 20.0), at(20.1 * DAY_S), replaces=wrong.key
    )  # fmt: skip
    with pytest.raises(Refused) as caught:
        read_step_strip(
            house.desk, house.dice, typed(0.60), Alone(key, 570.0, 20.0), MORNING, replaces=wrong.key
        )  # fmt: skip

    assert "strip-read-again" == caught.value.refusal.code
    assert 2 == len(house.desk.step_strips.all())
    (one,) = read_combination(house.desk, key).judged
    assert 0.56 == pytest.approx(one.contrast.value, abs=0.01)


@pytest.mark.parametrize(
    ("readings", "code"),
    [
        ("0.3 0.5 0.9", "wrong-count-of-steps"),
        (" ".join(["0.3"] * 20), "wrong-count-of-steps"),
        (" ".join(["7.0"] * 21), "step-density-out-of-range"),
        (" ".join(["0.3"] * 10 + ["0.9", "0.5"] + ["1.2"] * 9), "density-falls"),
        ("log_h,density\n-3,0.3\n-2,0.5", "too-few-readings"),
        ("0.3 oops", "no-readings-in-file"),
        ("0.3 0..4", "density-unreadable"),
    ],
)
def test_what_cannot_be_a_strip_is_refused_at_its_field(readings: str, code: str) -> None:
    """With the numbers, and nothing kept."""
    season = Season()
    house = season.house
    with pytest.raises(Refused) as caught:
        read_step_strip(
            house.desk, house.dice, replace(typed(0.56), readings=readings),
            Alone(combination(season), 570.0, 20.0), MORNING,
        )  # fmt: skip

    assert code == caught.value.refusal.code
    assert () == house.desk.step_strips.all()
    assert caught.value.refusal.at in {"readings", None}


def test_control_strips_ask_for_nothing() -> None:
    """They stand on their chart and move no time."""
    season = Season()
    house, key = season.house, combination(season)
    control = replace(typed(0.80), control=True)
    _, proposed = read_step_strip(house.desk, house.dice, control, Alone(key, 570.0, 20.0), MORNING)
    read = read_combination(house.desk, key)

    assert (0, 0, 1) == (len(proposed), len(read.strips), len(read.control))
