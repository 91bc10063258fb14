"""Columns, cylinders, bottles, and doubt as a length."""

from __future__ import annotations

import pytest

from tankside.web.drawing.doubt import doubt_length
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import Layer, bottle, column, cylinder


def test_a_column_reaches_from_above_its_first_pour_to_its_foot() -> None:
    """Lip 24 px above the first surface, foot under the last bath, every bath in between in order."""
    one = column([Layer("dev", 100, 170), Layer("stop", 172, 182), Layer("fix", 184, 240)], left=30)

    assert 76 == one.lip_px
    assert 242 == one.foot.y
    assert ["dev", "stop", "fix"] == [layer.sign for layer in one.layers]
    assert [135, 177, 212] == [layer.middle_px for layer in one.layers]


def test_layers_thinner_than_10_px_carry_no_hatch() -> None:
    """There only place and words tell them."""
    one = column([Layer("dev", 0, 40), Layer("stop", 41, 48)], left=0)

    assert [True, False] == [layer.hatched for layer in one.layers]


def test_minutes_are_counted_from_each_pour() -> None:
    """Seven minutes of 10 px give six marks inside, the fifth longer; none where they would crowd."""
    one = column([Layer("dev", 100, 170)], left=0, minute_px=10)

    assert [110, 120, 130, 140, 150, 160] == [at for at, _ in one.marks]
    assert [6, 6, 6, 6, 11, 6] == [length for _, length in one.marks]
    assert () == column([Layer("dev", 100, 170)], left=0, minute_px=3).marks


def test_a_column_needs_a_layer() -> None:
    """An empty vessel is another drawing."""
    with pytest.raises(ValueError, match="needs a layer"):
        column([], left=0)


def test_a_cylinder_is_read_at_its_level() -> None:
    """60 of 300 over 150 px stands 30 px above the foot; more than full stands at the brim."""
    level = cylinder(high=300, unit=15, holds=60, top=20, height_px=150).level_px

    assert 140 == level
    assert 20 == cylinder(high=300, unit=15, holds=900, top=20, height_px=150).level_px
    assert cylinder(high=300, unit=15).level_px is None


def test_a_bottle_fills_from_its_foot() -> None:
    """Half full is half of its straight part; less than nothing is refused."""
    empty, half, full = (bottle(left=0, foot=200, full=share) for share in (0, 0.5, 1))

    assert 0 == empty.liquid.height
    assert half.liquid.height == pytest.approx(full.liquid.height / 2)
    assert 200 == half.liquid.bottom
    with pytest.raises(ValueError, match="from 0 to 1"):
        bottle(left=0, foot=200, full=1.2)


def test_doubt_lies_on_the_scale_of_its_value() -> None:
    """8:30 +- 0:20 on a scale of 7:00 to 12:00 over 300 px: from 70 to 110, value at 90."""
    scale = graduation(low=420, high=720, unit=10, middle=3, long=6, length_px=300)

    length = doubt_length(scale, low=490, high=530, value=510, x=0)

    assert (70, 110, 90) == (length.box.y, length.box.bottom, length.at_px)
    assert not length.open_above
    assert not length.open_below


def test_doubt_off_the_scale_is_left_open() -> None:
    """An interval that goes on past the scale says so, and a value off it has no line."""
    scale = graduation(low=0, high=100, unit=10, length_px=100)

    length = doubt_length(scale, low=-20, high=30, value=-5, x=0)

    assert (0, 30) == (length.box.y, length.box.bottom)
    assert length.open_above
    assert length.at_px is None
