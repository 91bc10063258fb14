"""The next morning on a desk that remembers: answers, not asking again, taking twice, one photograph."""

from __future__ import annotations

from uuid import UUID

import pytest
from evening_clock import at
from fakes import memory_desk
from season import DAY_S, Season

from tankside.core.refusals import Refused
from tankside.core.review.differed import Drained, Timed
from tankside.core.review.evidence import NextMorning, NotAsked
from tankside.workflows.accept_correction import accept_correction, leave_as_it_is
from tankside.workflows.answer_next_morning import answer_next_morning, do_not_ask, keep_photograph
from tankside.workflows.read_journal import Which, find_run, list_runs, read_tankful

MORNING, LATER = at(20 * DAY_S), at(21 * DAY_S)
PICTURE = b"\xff\xd8\xff\xe0\x00\x04ab\xff\xda\x00\x04xy\x12\x34\xff\xd9"


def code_of(refused: pytest.ExceptionInfo[Refused]) -> str:
    """What was refused."""
    return refused.value.refusal.code


def test_the_list_asks_until_it_is_answered() -> None:
    """A closed run asks about its tankful until there is an answer."""
    season = Season()
    which, house = season.evening(), season.house
    assert [(True, True)] == [(one.closed, one.tankfuls[0].asked) for one in list_runs(house.desk)]
    answer_next_morning(house.desk, house.dice, which, NextMorning("right", "right"), MORNING)

    assert [False] == [one.tankfuls[0].asked for one in list_runs(house.desk)]
    assert NextMorning("right", "right") == read_tankful(house.desk, which).said


def test_it_is_never_asked_again_where_that_is_wished() -> None:
    """Skipped for ever: nothing is proposed and nothing asked."""
    season = Season()
    which, house = season.evening(), season.house
    do_not_ask(house.desk, house.dice, which, MORNING)
    read = read_tankful(house.desk, which)

    assert NotAsked() == read.said
    assert not read.may_be_asked
    assert () == read.proposals


def test_the_same_answer_twice_is_one_proposal() -> None:
    """A page sent twice proposes once; another answer takes the place of the first."""
    season = Season()
    which, house = season.evening(), season.house
    first = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "harsh"), MORNING)
    again = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "harsh"), MORNING)
    other = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "flat"), LATER)

    assert first == again
    assert ["offered", "declined"] == [one.standing for one in read_tankful(house.desk, which).proposals]
    assert other[0].proposal.new > 570


def test_taken_twice_is_taken_once() -> None:
    """A second press adds no second row; what was left cannot be taken."""
    season = Season()
    which, house = season.evening(), season.house
    (one,) = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "harsh"), MORNING)
    accept_correction(house.desk, house.dice, one.key, MORNING)
    accept_correction(house.desk, house.dice, one.key, LATER)
    assert 2 == len(house.desk.combinations.all()[0].rows)
    leave_as_it_is(house.desk, one.key, LATER)
    assert "accepted" == house.desk.proposals.all()[0].standing

    other = Season()
    (left,) = answer_next_morning(
        other.house.desk, other.house.dice, other.evening(), NextMorning("right", "flat"), MORNING
    )
    leave_as_it_is(other.house.desk, left.key, MORNING)
    with pytest.raises(Refused) as no:
        accept_correction(other.house.desk, other.house.dice, left.key, LATER)
    assert "proposal-left" == code_of(no)


def test_one_run_corrects_the_time_once() -> None:
    """After a correction was taken the same run proposes no second one on top of it."""
    season = Season()
    which, house = season.evening(), season.house
    (one,) = answer_next_morning(house.desk, house.dice, which, NextMorning("right", "harsh"), MORNING)
    accept_correction(house.desk, house.dice, one.key, MORNING)

    assert () == answer_next_morning(house.desk, house.dice, which, NextMorning("right", "flat"), LATER)


def test_a_tankful_is_read_back_with_what_differed() -> None:
    """Nine seconds late and a fix 47 s longer are what differed; heat and verdict stand beside."""
    season = Season()
    read = read_tankful(season.house.desk, season.evening(developed_s=579.0, fix_s=347.0))

    assert [Drained, Timed] == [type(one.what) for one in read.deviations]
    assert read.beside is not None
    assert read.heat is not None
    assert [20.0] == [one.temp_c for one in read.heat.readings]
    assert read.counted is not None
    assert 579 == pytest.approx(read.counted.counted_s, abs=1)
    assert read.wash is not None


def test_what_is_not_there_is_refused() -> None:
    """No such run, no such tankful, a beginning of a key that fits nothing."""
    season = Season()
    which, desk = season.evening(), season.house.desk
    assert which.run == find_run(desk, str(which.run)[:12] + str(which.run)[12:])
    for refused, code in (
        (Which(UUID(int=1), "A"), "no-such-run"),
        (Which(which.run, "Q"), "no-such-tankful"),
    ):
        with pytest.raises(Refused) as no:
            read_tankful(desk, refused)
        assert code == code_of(no)
    with pytest.raises(Refused):
        find_run(desk, "ffff")


def test_a_photograph_is_kept_with_its_tankful() -> None:
    """The picture without its tags, shown with the tankful; of another letter there is none."""
    season = Season()
    which, desk = season.evening(), season.house.desk
    kept = keep_photograph(desk, which, PICTURE, MORNING)

    assert (kept,) == read_tankful(desk, which).photographs
    assert "image/jpeg" == kept.media
    assert desk.photographs.picture(kept.sha256) is not None
    with pytest.raises(Refused):
        keep_photograph(desk, Which(which.run, "B"), PICTURE, MORNING)


def test_what_was_said_is_kept_where_nothing_can_be_corrected() -> None:
    """A film whose combination is not on this desk is judged all the same; only no proposal follows."""
    season = Season()
    which, house = season.evening(), season.house
    elsewhere = memory_desk()
    elsewhere.run_log.append(house.desk.run_log.after(which.run))

    assert () == answer_next_morning(elsewhere, house.dice, which, NextMorning("thin", "flat"), MORNING)
    assert NextMorning("thin", "flat") == read_tankful(elsewhere, which).said
