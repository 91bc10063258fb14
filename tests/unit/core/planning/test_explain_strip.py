"""Why a step strip tells its contrast and its speed: values held against the sciences, and the words."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from strips import BASE_FOG, PATCHES, densities

from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.step_strips import Exposed
from tankside.core.planning.explain_curve import why_curve
from tankside.core.planning.explain_speed import why_speed
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refused
from tankside.core.sensitometry.curve import Strip
from tankside.core.sensitometry.findings import Findings, findings_of
from tankside.wording import why

METRIC = Preferences()


@cache
def found(contrast: float = 0.6, reading_sd: float = 0.01) -> Findings:
    """A strip of known contrast index, its speed point at log H -2.40 on the tablet's scale."""
    log_h, read = -np.array(PATCHES[::-1]), np.array(densities(contrast)[::-1])
    return findings_of(Strip(log_h, read, BASE_FOG, reading_sd))


def test_contrast_with_its_arcs() -> None:
    """0.60 by construction; both arcs lie where the line from base and fog is 0.2 and 2.2 long."""
    told = why_curve(found(), reading_sd=0.01)
    assert told.plot is not None
    inner, outer = told.plot.marks
    apart = np.hypot(outer.across - inner.across, outer.up - inner.up)

    assert 0.60 == pytest.approx(told.answer.value, abs=0.01)
    assert 2.0 == pytest.approx(apart, abs=0.01)
    assert 0.60 == pytest.approx((outer.up - inner.up) / (outer.across - inner.across), abs=0.01)
    assert 0.26 == pytest.approx(told.input("base_fog").value, abs=0.01)


def test_its_doubt_is_that_of_the_readings() -> None:
    """Twice the reading error, about twice the doubt; nothing else is in it."""
    fine, coarse = (why_curve(found(0.6, sd), reading_sd=sd) for sd in (0.005, 0.01))

    assert 2.0 == pytest.approx(coarse.parts[0].half_width / fine.parts[0].half_width, rel=0.35)
    assert ["densities"] == [one.code for one in coarse.parts]
    assert "between two arcs" in why.length_words(coarse.lengths[0], METRIC)[1]
    assert "1.50 further on" in why.length_words(coarse.lengths[1], METRIC)[1]


def test_speed_from_the_speed_point() -> None:
    """S = 0.8 / Hm (ISO 6:1993): Hm = 10^-2.40 lux seconds gives 201, which rounds to 200/24."""
    told = why_speed(found(), Exposed(log_h0=0.0), reading_sd=0.01)

    assert 24.0 == pytest.approx(told.answer.value, abs=0.5)
    assert "EI 200" == why.headline(told, METRIC)
    assert told.answer.low < told.answer.value < told.answer.high
    assert "An exposure index, not ISO" in why.answer_sentence(told, METRIC)


@pytest.mark.parametrize(("contrast", "iso"), [(0.62, True), (0.45, False)])
def test_iso_only_where_its_condition_holds(contrast: float, iso: bool) -> None:
    """Density must rise 0.80 +- 0.05 over 1.30 (ISO 6; limit from memory) in the standard's light."""
    strip = found(contrast, 0.005)
    told = why_speed(strip, Exposed(log_h0=0.0, stated_light=True), reading_sd=0.005)
    assert isinstance(strip.rise, Estimate)

    assert iso == (0.75 <= strip.rise.low and strip.rise.high <= 0.85)
    assert iso == why.headline(told, METRIC).startswith("ISO ")
    assert ("does not rise as ISO 6 asks" in why.answer_sentence(told, METRIC)) is not iso
    assert f"{strip.rise.value:.2f} (" in why.length_words(told.lengths[0], METRIC)[1]


def test_the_rise_is_marked_on_the_curve() -> None:
    """0.10 at the speed point, 1.30 further on, beside 0.90 that ISO 6 asks for."""
    plot = why_speed(found(), Exposed(log_h0=0.0), reading_sd=0.01).plot
    assert plot is not None
    point, further = plot.marks

    assert 0.90 == pytest.approx(plot.level)
    assert 0.10 == point.up
    assert 1.30 == pytest.approx(further.across - point.across)


def test_a_meter_gives_an_index() -> None:
    """Metered at 100 through clear: 100 x 10^(2.40 - 1.01) = 2,500, by constants of ISO 2720 (memory)."""
    told = why_speed(found(), Exposed(metered_index=100.0), reading_sd=0.01)

    assert "EI 2500" == why.headline(told, METRIC)
    assert "Meter, shutter and flare: a third of a stop." in why.leaves_out_sentences(told)


def test_without_an_exposure_the_speed_point_stands_alone() -> None:
    """No speed, said so, and how to get one."""
    told = why_speed(found(), Exposed(), reading_sd=0.01)

    assert -2.40 == pytest.approx(told.answer.value, abs=0.03)
    assert why.headline(told, METRIC).startswith("\u22122.4")
    assert "No speed: nobody measured the exposure." in why.answer_sentence(told, METRIC)
    assert any("lux seconds" in one for one in why.narrows_sentences(told, METRIC))


def test_a_speed_beyond_the_standard_ones_is_refused() -> None:
    """An index of 25 million is no speed."""
    with pytest.raises(Refused, match="speed-out-of-range"):
        why_speed(found(), Exposed(metered_index=1e6), reading_sd=0.01)
