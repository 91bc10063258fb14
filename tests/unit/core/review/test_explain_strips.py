"""Why a time from step strips is what it is: its sources, the parts of its doubt, and its plot."""

from __future__ import annotations

from math import hypot

import pytest
from strips import law

from tankside.core.doubt.distributions import Z95
from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import Refused
from tankside.core.review.explain_strips import why_strip_time
from tankside.core.review.strips import Aimed, JudgedStrip, as_in_use, belief_of, best_next

AIMED = Aimed(570.0, 0.56, 570.0)


def read(contrast: float, time_s: float, sd: float = 0.012) -> JudgedStrip:
    """A strip that told a contrast."""
    return JudgedStrip(
        Estimate(contrast, contrast - Z95 * sd, contrast + Z95 * sd, ""), time_s, time_s
    )  # fmt: skip


STRIPS = tuple(read(law(time_s, c_inf=0.95, k_per_s=0.0017), time_s) for time_s in (400.0, 570.0, 900.0))


def test_strips_narrow_what_was_believed() -> None:
    """Before, one alone, together: each interval narrower, the last one told and holding the true time."""
    found = why_strip_time(AIMED, 0.56, STRIPS)
    before, alone, together = (one.estimate for one in found.lengths)
    true_s = next(t for t in range(400, 900) if law(float(t), c_inf=0.95, k_per_s=0.0017) >= 0.56)

    assert ["before-strips", "one-strip", "all-strips"] == [one.code for one in found.lengths]
    assert together == found.answer
    assert together.high - together.low < alone.high - alone.low < before.high - before.low
    assert together.low <= true_s <= together.high


def test_the_parts_make_the_whole() -> None:
    """Reading errors and the rest combine as squares to half the interval."""
    found = why_strip_time(AIMED, 0.56, STRIPS)

    half = (found.answer.high - found.answer.low) / 2
    assert half == pytest.approx(hypot(*(part.half_width for part in found.parts)), rel=0.02)


def test_better_readings_leave_less_to_readings() -> None:
    """Varied: three times the reading error makes its part larger."""
    rough = tuple(read(one.contrast.value, one.counted_s, sd=0.036) for one in STRIPS)
    parts = [
        next(part.half_width for part in why_strip_time(AIMED, 0.56, of).parts if part.code == "readings")
        for of in (STRIPS, rough)
    ]

    assert parts[0] < parts[1]


def test_one_more_strip_is_worth_less_the_more_there_are() -> None:
    """What it would leave is less than what is, and the first strip is worth most."""
    none, three = belief_of(AIMED, ()), belief_of(AIMED, STRIPS)

    assert best_next(three, 0.56).half_left_s < best_next(none, 0.56).half_left_s
    (narrowing,) = why_strip_time(AIMED, 0.56, STRIPS).narrows
    assert narrowing.figure("left_s") < narrowing.figure("now_s")


def test_the_plot_has_every_strip_and_the_wanted_contrast() -> None:
    """Marks where they were read, the level at what was asked."""
    plot = why_strip_time(AIMED, 0.60, STRIPS).plot

    assert plot is not None
    assert 0.60 == plot.level
    assert [(one.counted_s, one.contrast.value) for one in STRIPS] == [(m.across, m.up) for m in plot.marks]


def test_what_no_time_makes_is_refused() -> None:
    """A contrast beyond where the film levels off."""
    with pytest.raises(Refused) as caught:
        why_strip_time(AIMED, 1.2, STRIPS)

    assert "contrast-out-of-reach" == caught.value.refusal.code


def test_a_strip_at_the_time_in_use_is_taken_as_read() -> None:
    """Others are brought to it along the curve: strips off one law agree there."""
    belief = belief_of(AIMED, STRIPS)
    said = as_in_use(AIMED, STRIPS, belief)

    assert STRIPS[1].contrast.value == said.measured[1]
    assert said.measured == pytest.approx([STRIPS[1].contrast.value] * 3, rel=0.05)
    with pytest.raises(Refused):
        as_in_use(AIMED, (), belief)
