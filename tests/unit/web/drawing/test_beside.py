"""Planned and happened on one clock: what stands where, and that words keep their order and their room."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.review.beside import Beside, Stay
from tankside.web.drawing.beside import LAPTOP, LINE_PX, PHONE, Layout, Picture, Said, picture
from tankside.web.drawing.heat import Reading, Warm


def shown(late_s: float = 0.0) -> Beside:
    """Developer and a wash of two fills; the developer came out late, and the wash with it."""
    planned = (
        Stay("A.develop", "develop", 0.0, 570.0),
        Stay("A.wash", "wash", 585.0, 1185.0, (585.0, 885.0)),
    )
    happened = (
        Stay("A.develop", "develop", 0.0, 570.0 + late_s, (), ((60.0, True), (120.0, False))),
        Stay("A.wash", "wash", 585.0 + late_s, 1185.0 + late_s, (585.0 + late_s, 885.0 + late_s)),
    )
    return Beside("A", 0, planned, happened, 1200.0, 1200.0 + late_s, 0.0)


def drawn(layout: Layout = LAPTOP, *, late_s: float = 60.0, said: tuple[Said, ...] = ()) -> Picture:
    """Poured at 21:04:30."""
    warm = Warm(
        ((0.0, 20.0), (570.0, 19.8)),
        ((0.0, 19.5), (630.0, 19.2)),
        0.25,
        (Reading(120.0, 19.4, "dev", "19.4"),),
    )
    return picture(shown(late_s), begins_min=21 * 60 + 4.5, layout=layout, warm=warm, said=said)


@pytest.mark.parametrize("layout", [LAPTOP, PHONE])
def test_both_columns_begin_together_and_down_is_later(layout: Layout) -> None:
    """Equal pours stand at equal heights; a minute late is a minute lower; a fill is a layer."""
    one = drawn(layout)

    assert one.planned.lip_px == one.happened.lip_px
    assert [3, 3] == [len(one.planned.layers), len(one.happened.layers)]
    lower = one.happened.layers[1].stripe.y - one.planned.layers[1].stripe.y
    assert one.minute_px == pytest.approx(lower, abs=0.01)
    assert one.planned.right < one.happened.left


def test_the_clock_is_that_of_the_place() -> None:
    """The first pour stands half a minute below 21:04, numerals at full five minutes."""
    one = drawn()
    numerals = {each.text: each.at_px for each in one.scale.numerals}

    assert "21:05" in numerals
    assert one.first_px == pytest.approx(one.top_px + numerals["21:05"] - one.minute_px / 2, abs=0.01)


def test_a_missed_inversion_is_an_open_bead() -> None:
    """Done ones are filled, in order of time."""
    assert [True, False] == [bead.done for bead in drawn().beads]


def test_a_reading_stands_between_the_marks_of_its_degrees() -> None:
    """19.4 on the scale, its words away from the planned line."""
    heat = drawn().heat
    assert heat is not None
    (cross,) = heat.crosses

    assert heat.left + heat.scale.at(19.4) == pytest.approx(cross.x)
    assert "end" == cross.anchor


@given(st.lists(st.tuples(st.floats(0, 1200), st.integers(1, 12)), max_size=12))
def test_words_keep_order_and_never_touch(marks: list[tuple[float, int]]) -> None:
    """However many and how long: in order of time, apart, and never wider than their column."""
    said = tuple(Said(at_s, "Drained late.", "word " * count) for at_s, count in sorted(marks))
    blocks = drawn(said=said).blocks

    assert all(
        len(f"{line.heavy} {line.plain}") <= LAPTOP.letters + 1 for one in blocks for line in one.lines
    )
    for before, after in pairwise(blocks):
        assert before.at_px <= after.at_px
        assert before.lines[-1].y + LINE_PX - 1 <= after.lines[0].y


def test_a_piece_holds_both_glasses_and_its_moment() -> None:
    """The part about a moment is wide enough for both columns, and the moment lies in it."""
    one = drawn(PHONE)
    for at_s in (0.0, 600.0, 1245.0):
        left, top, wide, high = map(float, one.piece(at_s).split())
        assert left < one.planned.left < one.happened.right < left + wide
        assert top <= one.y(at_s) <= top + high
