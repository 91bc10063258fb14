"""What the plan, its liquids, its cautions and its whys say."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime
from typing import get_args

import pytest
from planned import ANSWERS, evening, planned, with_rolls, with_tanks

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.explain import explain
from tankside.core.planning.get_ready import to_make
from tankside.core.planning.plan import Doubtful
from tankside.core.planning.timetable import timetable
from tankside.core.planning.why import AboutPlan, PartOfDoubt, Why
from tankside.core.quantities.preferences import Preferences
from tankside.core.safety import MIXING, CautionCode, cautions
from tankside.wording import assumed, liquids, why
from tankside.wording.cautions import SENTENCES, caution_origin
from tankside.wording.plan import doubtful_sentence, heading, start_found, summary, time_sentence, when

METRIC = Preferences()
PLAN = planned(evening().wish)
COLD = evening(replace(ANSWERS, reads_c=None)).wish
MIXED = planned(with_rolls(replace(COLD, place=replace(COLD.place, room_c=17.0, hot_c=52.0, cold_c=14.0)), 2))


def test_the_time_and_what_settles_it() -> None:
    """The first evening's sentence."""
    assert "9:00 (8:45 to 9:15); read the tank at one minute and I settle it." == time_sentence(
        PLAN.tankful("A")
    )


@pytest.mark.parametrize(
    ("starts", "said"),
    [
        (datetime(2026, 10, 3, 20, 30, tzinfo=UTC), "tonight"),
        (datetime(2026, 10, 3, 9, 0, tzinfo=UTC), "this morning"),
        (datetime(2026, 10, 4, 14, 0, tzinfo=UTC), "tomorrow afternoon"),
        (datetime(2026, 10, 10, 9, 0, tzinfo=UTC), "2026-10-10, morning"),
    ],
)
def test_the_heading_says_when(starts: datetime, said: str) -> None:
    """Tonight, tomorrow, a day of the week, else a date."""
    assert said == when(starts, date(2026, 10, 3))


def test_the_heading_is_told_at_the_place() -> None:
    """19:10 UTC is 21:10 in Berlin in October: tonight."""
    assert "Plan: tonight" == heading(PLAN, date(2026, 10, 3))


def test_rolls_tankfuls_begin_and_end() -> None:
    """Ten minutes before the first pour to 39:30 after it, up to the minute, on the clock of the place."""
    assert "One roll in one tankful. Begin 21:00, the roll hung 21:50." == summary(PLAN, timetable(PLAN))


def test_nothing_is_said_of_proof() -> None:
    """The start of a second tankful is the earliest found, no more."""
    two = planned(with_tanks(with_rolls(evening().wish, 2), 500.0, 500.0))

    assert "B is poured 10:00 after A, the earliest we found for one pair of hands." == start_found(two)


def test_what_is_assumed_is_one_sentence() -> None:
    """One sentence that ends once, with the baths and the room in it."""
    said = assumed.assumed_sentence(PLAN.assumed, METRIC)

    assert 1 == said.count(".") - said.count("20.0")
    assert all(part in said for part in ("used once", "fix 5:00", "4 fills of 5:00", "room is at 20.0 °C"))


def test_hot_and_cold_in_words() -> None:
    """Amounts, then hold back and read."""
    item = next(one for one in to_make(MIXED, MIXED.place) if one.liquid.key == "develop-A")
    said = liquids.make_sentences(item, METRIC)

    assert "250 mL of Umber, 75 mL of hot water, 175 mL of cold: 20.8 °C." == said[1]
    assert said[2].startswith("Hold back the last 50 mL")


def test_every_caution_has_its_sentence_and_its_origin() -> None:
    """No code without words; rows from memory say so; the maker's sheet has the last word."""
    assert set(get_args(CautionCode)) == set(SENTENCES)
    for handled in MIXING:
        said = cautions(handled, moment="mix", hot_c=52.0)
        assert ("label-first", "makers-sheet") == (said[0].code, said[-1].code)
        assert all(("from memory" in caution_origin(one)) == (one.how == "from memory") for one in said)


@pytest.mark.parametrize("about", get_args(AboutPlan))
def test_every_why_can_be_said(about: AboutPlan) -> None:
    """Answer, lengths, parts, inputs and what would narrow it have words, whichever number is asked."""
    for plan in (PLAN, MIXED):
        if plan is PLAN and about in ("mix-to", "hot", "cold", "second-start"):
            continue
        found = explain(plan, about)
        assert why.title(found, METRIC).endswith("?")
        assert why.answer_sentence(found, METRIC).endswith(".")
        assert all(text.endswith(".") for one in found.lengths for text in why.length_words(one, METRIC)[1:])
        assert len(found.parts) == len([why.part_words(one, found, METRIC) for one in found.parts])
        assert [one.half_width for one in found.parts] == sorted(
            (p.half_width for p in found.parts), reverse=True
        )
        assert all(why.figure_words(one, METRIC) for one in found.inputs)
        assert len(found.narrows) == len(why.narrows_sentences(found, METRIC))


def test_a_part_is_told_to_the_step_of_the_whole() -> None:
    """5.6 s of an answer shown to 5 s is 0:05, not 0:06 of 0:05; one below the step says so."""
    answer = Estimate(420.0, 414.5, 425.5, "s")
    found = Why("time", "A", answer, (), (), (), (), "")

    assert "0:05 thermometer" == why.part_words(PartOfDoubt("thermometer", 5.6), found, METRIC)
    assert "under 0:05 thermometer" == why.part_words(PartOfDoubt("thermometer", 1.0), found, METRIC)


def test_a_bottle_too_small_names_what_is_missing_and_the_ways_on() -> None:
    """1250 mL at once from a bottle of 1000 mL: 250 mL are missing, or the tankfuls take turns."""
    one = Doubtful("bottle-too-small", None, 1000.0, 1250.0, "F9QD-2")

    assert (
        "F9QD-2 holds 1000 mL and the tanks need 1250 mL at once. "
        "Mix 250 mL more, or develop one tankful after the other."
    ) == doubtful_sentence(one, METRIC)


def test_where_one_tank_is_larger_than_the_bottle_only_mixing_helps() -> None:
    """Tankful A takes 600 mL of a bottle of 500 mL: to take turns would not help."""
    said = doubtful_sentence(Doubtful("bottle-too-small", "A", 500.0, 600.0, "F9QD-2"), METRIC)

    assert said.endswith("at once, tankful A alone more than it holds. Mix 100 mL more.")


def test_a_bottle_too_small_is_said_in_the_unit_of_the_person() -> None:
    """946.4 mL are 32 US fluid ounces, 1182.9 mL are 40 (29.5735 mL each, NIST Handbook 44)."""
    one = Doubtful("bottle-too-small", None, 946.353, 1182.941, "F9QD-2")
    said = doubtful_sentence(one, Preferences(volume="us_fl_oz"))

    assert said.startswith(
        "F9QD-2 holds 32.00 fl oz and the tanks need 40.00 fl oz at once. Mix 8.00 fl oz more"
    )
