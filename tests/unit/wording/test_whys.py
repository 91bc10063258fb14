"""The words of every why: complete, one sentence each, and exact where they carry numbers."""

from __future__ import annotations

from dataclasses import replace
from typing import get_args

from planned import ANSWERS, evening, planned

from tankside.core.permanence.capacity import Fixed, capacity_left
from tankside.core.planning.explain import explain
from tankside.core.planning.explain_fixer import why_fixer_left
from tankside.core.planning.why import LengthCode
from tankside.core.planning.wish import BathTimes
from tankside.core.quantities.preferences import Preferences
from tankside.wording import why
from tankside.wording.whys.amounts import value_text

METRIC = Preferences()
WISH = evening().wish
PLAN = planned(WISH)


def test_every_source_has_its_words() -> None:
    """No length without a heading and a sentence."""
    assert set(get_args(LengthCode)) == set(why.LENGTHS)


def test_no_code_is_worded_twice() -> None:
    """A code means the same in every family."""
    for of in ("means", "headlines", "sentences", "lengths", "parts", "narrows", "leaves_out", "plots"):
        codes = [code for family in why.FAMILIES for code in getattr(family, of)]
        assert len(set(codes)) == len(codes), of


def test_a_wash_in_words() -> None:
    """Never 'you fail': enough if, sources beside it, and one more soak where the slower does not confirm."""
    short = replace(WISH, times=BathTimes(wash_fill_s=60.0, wash_fills=3))
    said = why.answer_sentence(explain(planned(short), "wash"), METRIC)

    assert "4 fills of 5:00" == why.headline(explain(PLAN, "wash"), METRIC)
    assert said.startswith("Enough if half of the fixer in the film leaves in ")
    assert "sources say 15 s and 60 s, and the slower does not confirm it. One more soak of " in said
    assert "fail" not in said
    assert any("too good" in one for one in why.leaves_out_sentences(explain(PLAN, "wash")))


def test_a_fix_in_words() -> None:
    """The rule and the clearing time that it covers."""
    found = explain(PLAN, "fix")

    assert "A rule: enough while a test piece clears in 2:30 or less." == why.answer_sentence(found, METRIC)
    assert (
        "Ordinary grain",
        "Twice the time in which a test piece clears, up to 2:30 of it.",
    ) == why.length_words(found.lengths[0], METRIC)


def test_stock_in_words() -> None:
    """Enough for what the film needs, or unknown and said once."""
    known = explain(planned(evening(replace(ANSWERS, least_stock_ml=80.0)).wish), "least-stock")

    assert "Stock in the tank, enough for the 80 mL that its film needs." == why.answer_sentence(
        known, METRIC
    )
    assert "no leaflet noted here" in why.answer_sentence(explain(PLAN, "least-stock"), METRIC)


def test_two_counts_of_a_fixer_in_words() -> None:
    """'5 to 10 rolls' and 'two sources differ'."""
    found = why_fixer_left(capacity_left([Fixed(15)], working_ml=1000), working_ml=1000)

    assert "Why 5 to 10 rolls?" == why.title(found, METRIC)
    assert "Two sources differ" in why.answer_sentence(found, METRIC)
    assert "" == why.doubt_text(found, METRIC)


def test_the_next_strip_in_words() -> None:
    """What is known now and what a strip would leave, to 5 s."""
    said = why.narrows_sentences(explain(PLAN, "time"), METRIC)[-1]

    assert said.startswith("A step strip developed for ")
    assert " in place of ± " in said


def test_residuals_are_told_to_two_figures() -> None:
    """Never finer than a thousandth of a gram."""
    assert ["4.6 g/m²", "0.12 g/m²", "0.009 g/m²"] == [
        value_text(one, "g/m2", METRIC) for one in (4.642, 0.1234, 0.00876)
    ]
