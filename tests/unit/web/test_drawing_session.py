"""The picture of a session: columns where their baths are, words that keep out of each other's way."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evening import PLAN

from tankside.core.planning.timetable import timetable
from tankside.core.quantities.preferences import Preferences
from tankside.web.drawing.session import LAPTOP, NARROW, PHONE, Layout, Session, session
from tankside.web.shown.evening import pictures

LAYOUTS = [pytest.param(one, id=f"{one.width_px:.0f}") for one in (NARROW, PHONE, LAPTOP)]


def drawn(layout: Layout) -> Session:
    """The invented evening in a layout."""
    return session(
        timetable(PLAN), zone=PLAN.place.zone, layout=layout, details=lambda *_: ("9:30",), said=()
    )


@pytest.mark.parametrize("layout", LAYOUTS)
def test_a_minute_is_as_long_as_the_layout_says(layout: Layout) -> None:
    """The developer's layer is its minutes long."""
    develop = drawn(layout).tankfuls[0].glass.layers[0]
    minutes = timetable(PLAN).columns[0].layers[0]

    length_px = develop.stripe.height
    assert (minutes.end_s - minutes.start_s) / 60 * layout.minute_px == pytest.approx(length_px, abs=0.01)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_each_fill_of_a_wash_is_a_layer(layout: Layout) -> None:
    """Four fills are four surfaces."""
    signs = [layer.sign for layer in drawn(layout).tankfuls[0].glass.layers]

    assert 4 == signs.count("wash")


@pytest.mark.parametrize("layout", LAYOUTS)
def test_words_keep_clear_of_the_hands(layout: Layout) -> None:
    """No name of a bath runs into the lane."""
    for words in drawn(layout).tankfuls[0].words:
        assert words.x + layout.letter_px * len(words.strong) <= layout.lane_px


def test_two_columns_are_a_column_apart() -> None:
    """A second tankful stands to the right of the first, clear of it."""
    second = replace(PLAN.tankfuls[0], letter="B", starts_s=900.0, starts_after="A.develop:poured")
    plan = replace(PLAN, tankfuls=(PLAN.tankfuls[0], second))
    first, other = pictures(plan, timetable(plan), Preferences()).narrow.tankfuls

    assert first.glass.right + 8 < other.glass.left


def test_every_act_but_inversions_stands_in_the_table() -> None:
    """Pictures are the second reading: the table has each pour, drain and measure in words."""
    rows = pictures(PLAN, timetable(PLAN), Preferences()).rows

    said = " / ".join(row.words for row in rows)
    for words in (
        "pour developer",
        "drain, pour stop bath",
        "drain, pour fixer",
        "wash, first of 4 fills",
        "hang",
    ):
        assert words in said
