"""What is said after an outage, and how it changes with its length."""

from __future__ import annotations

import pytest
from unit.core.run.evening import at, opened, plan

from tankside.core.run.commands import DrainBath, PourBath
from tankside.web.screen.compose import screen
from tankside.web.screen.values import Notice


def told(since_s: float, now_s: float, *, pace: float = 1.0, letters: str = "A") -> Notice | None:
    """The plate for a page that looked last at `since_s`, developer poured at 0 s, due at 9:30."""
    sink = opened(plan(letters))
    sink.do(PourBath("A.develop"), 0)
    return screen(sink.run, at(now_s), pace=pace, since_us=at(since_s).wall_us).away


def test_what_was_missed_and_what_is_best_in_one_plate() -> None:
    """S5 (reference practice): from 6:10 to 11:40; the urgent is said first and has its button."""
    plate = told(370, 700)
    assert plate is not None
    assert "A: 2:10 over. Pour out now." == plate.heading
    assert (
        "Contrast +13 % (10 to 17). Print it on paper up to one grade softer. Every tap was kept. "
        "Out of touch from 21:06:10 to 21:11:40. Due meanwhile: 3 inversions, measure stop bath, drain."
    ) == plate.sentence
    assert ["Draining now"] == [way.words for way in plate.ways]


@pytest.mark.parametrize(
    ("now_s", "words"),
    [
        (395, "Nothing fell due meanwhile. Nothing is late. Next: Draining, in 2:55."),
        (450, "Due meanwhile: one inversion. Nothing is late. Next: Draining, in 2:00."),
        (576, "Best now: K7M4-T, measured."),
    ],
)
def test_the_length_of_the_outage_decides_what_is_said(now_s: float, words: str) -> None:
    """Only the moment of coming back is varied."""
    plate = told(370, now_s)
    assert plate is not None
    assert plate.sentence.endswith(words), plate.sentence


def test_no_outage_no_plate() -> None:
    """Under 20 s on the wall nothing is said, however fast the demo runs; nor before the first pour."""
    assert told(370, 389) is None
    assert told(370, 700, pace=60.0) is None
    sink = opened(plan("A"))
    assert screen(sink.run, at(0), since_us=at(-50).wall_us).away is None


def test_what_hands_noted_meanwhile_is_counted() -> None:
    """A phone that led alone hands in its note: it is kept, and nothing is over."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    sink.do(DrainBath("A.develop"), 590, age_s=19, how="queued")
    plate = screen(sink.run, at(591), since_us=at(370).wall_us).away
    assert plate is not None
    assert "One note from then is kept." in plate.sentence
    assert "over" not in plate.heading


def test_several_tankfuls_are_named_by_their_letters() -> None:
    """With two tanks each cue stands behind its letter."""
    plate = told(370, 450, letters="AB")
    assert plate is not None
    assert "Due meanwhile: A one inversion." in plate.sentence
