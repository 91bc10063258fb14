"""What is believed of contrast and time, before and after evidence."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.development.belief import (
    INPUTS,
    Belief,
    Evidence,
    believed,
    contrast_after,
    of_answer,
    of_strip,
    time_for,
)
from tankside.core.development.narrowing import next_strips
from tankside.core.doubt.groups import uniform_draws
from tankside.core.refusals import Refused

DRAWS = uniform_draws(7, count=4000, columns=INPUTS)


def belief(*evidence: Evidence) -> Belief:
    """9:30 for 0.56, and what was seen since."""
    return believed(0.56, time_s=570, uniforms=DRAWS, evidence=evidence)


def test_the_leaflet_alone_is_good_to_a_tenth() -> None:
    """The printed time and its +-10 % come back."""
    told = time_for(belief(), 0.56)

    assert pytest.approx(570, rel=0.01) == told.value
    assert (0.9, 1.1) == pytest.approx((told.low / 570, told.high / 570), abs=0.01)


def test_a_step_strip_moves_and_narrows_the_time() -> None:
    """Too much contrast at the printed time asks for less of it, and the interval shrinks."""
    before, after = time_for(belief(), 0.56), time_for(belief(of_strip(0.60, sd=0.01, time_s=570)), 0.56)

    assert after.value < before.value
    assert after.high - after.low < 0.8 * (before.high - before.low)


def test_an_answer_says_less_than_a_step_strip() -> None:
    """'Harsh' moves the time the same way, but leaves more doubt than 0.616 read off a strip."""
    answer = time_for(belief(of_answer("harsh", aim=0.56, time_s=570)), 0.56)
    strip = time_for(belief(of_strip(0.616, sd=0.01, time_s=570)), 0.56)

    assert strip.value < answer.value < 570
    assert strip.high - strip.low < answer.high - answer.low


def test_sharp_evidence_keeps_enough_draws() -> None:
    """Ten strips far from what was believed still leave thousands of draws that count."""
    strips = [of_strip(0.70, sd=0.005, time_s=570) for _ in range(10)]
    found = belief(*strips)

    assert found.effective > 1000
    assert pytest.approx(0.70, rel=0.03) == contrast_after(found, 570).value


def test_what_the_film_may_never_reach_is_refused() -> None:
    """One draw in twenty ends below 0.75: 0.80 is not promised."""
    with pytest.raises(Refused) as no:
        time_for(belief(), 0.80)

    assert "contrast-out-of-reach" == no.value.refusal.code


@given(wanted=st.floats(0.35, 0.60), more=st.floats(0.01, 0.08))
def test_more_contrast_takes_more_time(wanted: float, more: float) -> None:
    """In the middle and at both ends of the interval."""
    less, longer = time_for(belief(), wanted), time_for(belief(), wanted + more)

    assert less.low < longer.low
    assert less.value < longer.value
    assert less.high < longer.high


def test_the_same_question_has_the_same_digits() -> None:
    """No dice are thrown inside."""
    strip = of_strip(0.6, sd=0.01, time_s=570)

    assert time_for(belief(strip), 0.56) == time_for(belief(strip), 0.56)


def test_a_next_strip_narrows_as_foretold() -> None:
    """What a strip at 9:30 was said to leave is what it leaves, within a tenth, when it reads as expected."""
    foretold = next_strips(belief(), 0.56, times_s=[570])[0]
    after = time_for(belief(of_strip(0.56, sd=0.015, time_s=570)), 0.56)

    assert foretold.half_left_s == pytest.approx((after.high - after.low) / 2, rel=0.1)
