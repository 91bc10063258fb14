"""Times that follow no rate: a stand, the second bath of a two-bath, a monobath."""

from __future__ import annotations

from dataclasses import replace

import pytest
from planned import evening, planned, row
from unit.core.run.evening import at, opened

from tankside.core.agitation.patterns import ROTARY, STAND, Agitation
from tankside.core.development.rate import TimeRule
from tankside.core.planning.explain import explain
from tankside.core.planning.plan import Plan
from tankside.core.planning.wish import Wish
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refused
from tankside.core.run.advise import advise_end
from tankside.core.run.commands import PourBath, TakeReading
from tankside.core.run.sink_view import sink_view
from tankside.wording.plan import doubtful_sentence, time_sentence
from tankside.wording.refusals import say


def wish_by(rule: TimeRule, *, reads_c: float | None = 21.0, pattern: Agitation | None = None) -> Wish:
    """The invented first evening, its time by another rule."""
    wish = evening().wish
    first = wish.rolls[0]
    other = replace(first.combination, time_rule=rule)
    if pattern is not None:
        other = replace(other, agitation=pattern)
    return replace(wish, reads_c=reads_c, rolls=(replace(first, combination=other),))


def poured(made: Plan) -> Plan:
    """The plan with a bottle for its developer, so that a run may open with it."""
    return replace(made, wish=None)


@pytest.mark.parametrize("rule", ["table only", "completion"])
def test_warmth_corrects_nothing(rule: TimeRule) -> None:
    """At 21 C the printed 9:30 stays, without an interval, and the plan says why no correction is offered."""
    made = planned(wish_by(rule))
    end = made.tankfuls[0].development.end_s
    said = " ".join(doubtful_sentence(one, Preferences()) for one in made.doubtful)

    assert end is not None
    assert (570.0, 570.0, 570.0) == (end.value, end.low, end.high)
    assert "No correction is offered" in said
    assert "I settle it" not in time_sentence(made.tankfuls[0])


def test_completion_has_a_least_and_no_most() -> None:
    """It may not be drained early, and longer is never over time."""
    bath = planned(wish_by("completion")).tankfuls[0].baths[0]

    assert (570.0, 570.0, None, 0.0) == (
        bath.times.least_s, bath.times.aim_s, bath.times.most_s, bath.drain_early_s,
    )  # fmt: skip


@pytest.mark.parametrize(("rule", "over"), [("rate", True), ("table only", True), ("completion", False)])
def test_only_a_completion_is_never_over_time(rule: TimeRule, over: bool) -> None:
    """Two minutes late is late, unless the bath works to completion."""
    sink = opened(poured(planned(wish_by(rule))))
    sink.do(PourBath("A.develop"), 0)
    codes = {one.code for one in sink_view(sink.state, at(900)).consequences}

    assert over == ("over-time" in codes)


@pytest.mark.parametrize("rule", ["table only", "completion"])
def test_no_integral_at_the_sink(rule: TimeRule) -> None:
    """A reading is noted and moves no end, nor is it said to lie outside any range."""
    sink = opened(poured(planned(wish_by(rule))))
    sink.do(PourBath("A.develop"), 0)
    sink.do(TakeReading("tank", "A", 17.0), 60)

    assert advise_end(sink.state, "A") is None
    assert not {one.code for one in sink_view(sink.state, at(61)).consequences}


@pytest.mark.parametrize(("rule", "word"), [("table only", "no rate"), ("completion", "completion")])
def test_why_tells_the_rule(rule: TimeRule, word: str) -> None:
    """Its formula is the rule; no part of doubt, and no reading would narrow it."""
    why = explain(planned(wish_by(rule)), "time")

    assert word in why.formula
    assert () == why.parts
    assert "read-tank" not in {one.code for one in why.narrows}


def test_a_table_is_read_between_its_rows() -> None:
    """An hour at 20 and fifty minutes at 22: at 21 the middle; the tank comes to 21 from a jug of 21.2."""
    wish = wish_by("table only", reads_c=21.2239, pattern=STAND)
    first = wish.rolls[0]
    rows = (row(301, 3600.0, 20.0), row(302, 3000.0, 22.0))
    wish = replace(wish, rolls=(replace(first, combination=replace(first.combination, rows=rows)),))
    end = planned(wish).tankfuls[0].development.end_s

    assert end is not None
    assert (3600 * 3000) ** 0.5 == pytest.approx(end.value, abs=15)


@pytest.mark.parametrize(("reads_c", "way"), [(14.0, "warm"), (27.0, "cool")])
def test_no_further_than_its_rows(reads_c: float, way: str) -> None:
    """More than 2 K from its one row a table says nothing: refused, with the range and a way on."""
    with pytest.raises(Refused) as no:
        planned(wish_by("table only", reads_c=reads_c))

    assert (way,) == no.value.refusal.ways_on
    assert "18.0 °C to 22.0 °C" in say(no.value.refusal)


def test_unread_it_is_mixed_to_its_row() -> None:
    """Without a reading the tank is to start at the 20 C that its row is printed for."""
    development = planned(wish_by("table only", reads_c=None)).tankfuls[0].development

    assert 20.0 == pytest.approx(development.start_c)


def test_another_agitation_is_a_first_guess() -> None:
    """A time printed for inversion and rolled instead is not converted: 10 % either way are added."""
    wish = wish_by("rate")
    told, guessed = (
        planned(one).tankfuls[0].development.end_s for one in (wish, replace(wish, agitation=ROTARY))
    )
    made = planned(replace(wish, agitation=ROTARY))

    assert told is not None
    assert guessed is not None
    assert told.value == guessed.value
    assert (guessed.high - guessed.low) / 2 == pytest.approx(0.1 * told.value, rel=0.15)
    assert "first guess, 10 %" in " ".join(doubtful_sentence(one, Preferences()) for one in made.doubtful)
    assert "agitation" in {part.code for part in explain(made, "time").parts}


def test_a_time_printed_for_rotary_is_taken_so() -> None:
    """A combination rolled without a stop is planned rolled, and nothing is a guess."""
    made = planned(wish_by("rate", pattern=ROTARY))

    assert ROTARY == made.tankfuls[0].baths[0].agitation
    assert "other-agitation" not in {one.code for one in made.doubtful}
