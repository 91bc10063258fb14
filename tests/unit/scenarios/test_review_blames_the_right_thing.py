"""Scenario: three step strips came out too contrasty; was it the time, the temperature or the exposure?"""

from __future__ import annotations

import pytest

from tankside.core.development.contrast import C_INF, contrast_at, rate_constant
from tankside.core.doubt.estimate import Estimate
from tankside.core.review.evidence import NextMorning, TwoDensities, contrast_of_strips
from tankside.core.review.proposals import Developed, Proposal, propose_index, propose_time

AIM, DUE_S, Q10 = 0.56, 570.0, 2.2
STRIPS = (0.590, 0.585, 0.595)


def explained(*logged_c: float) -> Estimate:
    """By how many percent the logged temperatures alone predict the contrast to miss its aim."""
    k = float(rate_constant(AIM, time_s=DUE_S, c_inf=C_INF.value))
    made = [
        float(contrast_at(DUE_S * Q10 ** ((c - 20) / 10), c_inf=C_INF.value, k_per_s=k)) for c in logged_c
    ]
    percent = 100 * (sum(made) / len(made) / AIM - 1)
    return Estimate(percent, percent, percent, "%")


def review(*logged_c: float) -> Proposal:
    """The proposal for the three strips, had the log shown these temperatures."""
    mean_c = sum(logged_c) / len(logged_c)
    developed = Developed(DUE_S, mean_c, explained(*logged_c), contrast=AIM)
    return propose_time(contrast_of_strips(STRIPS, aim=AIM), developed)


def test_the_log_predicts_the_strips() -> None:
    """21.0, 20.8 and 21.1 C predict 0.589, 0.583 and 0.592."""
    predicted = [AIM * (1 + explained(c).value / 100) for c in (21.0, 20.8, 21.1)]

    assert [0.589, 0.583, 0.592] == [round(one, 3) for one in predicted]


def test_warm_liquid_is_blamed_not_the_time() -> None:
    """No change of time: temper, or 8:45 at 21 (to a quarter minute)."""
    proposal = review(21.0, 20.8, 21.1)

    assert ("temper", 21.0) == (proposal.what, proposal.at_c)
    assert 8 * 60 + 45 == round(proposal.new / 15) * 15


def test_the_same_strips_at_the_right_temperature_blame_the_time() -> None:
    """Logged at 20.0: full correction -8 % (-10.5 to -6.5 over the band of c_inf), half of it is offered."""
    proposal = review(20.0, 20.0, 20.0)

    assert "time" == proposal.what
    assert proposal.full_percent is not None
    full = proposal.full_percent
    assert (-8, -10.5, -6.5) == (round(full.value), round(full.low, 1), round(full.high, 1))
    assert -4 == round(100 * (proposal.new / proposal.old - 1))
    assert DUE_S == proposal.old


@pytest.mark.parametrize("logged_c", [20.2, 19.8])
def test_a_little_temperature_explains_a_little(logged_c: float) -> None:
    """Varied: a log 0.2 K off moves the correction the way it should, and keeps blaming the time."""
    straight, off = review(20.0), review(logged_c)

    assert "time" == off.what
    assert straight.full_percent is not None
    assert off.full_percent is not None
    assert (off.full_percent.value > straight.full_percent.value) == (logged_c > 20)


def test_thin_shadows_with_the_right_range_blame_the_exposure() -> None:
    """Shadow 0.18 for 0.35 and highlight 1.03 for 1.20 at slope 0.5: 1.1 stops under, contrast right."""
    pair = TwoDensities(0.18, 1.03, 0.35, 1.20, 0.5)

    assert (-0.34, -1.1) == (round(pair.log_h_over, 2), round(pair.stops_over, 1))
    assert 0 == round(pair.contrast_percent.value)
    none = Estimate(0, 0, 0, "%")
    proposal = propose_index(pair.stops_over, index=200, seen=pair.contrast_percent, explained=none)
    assert proposal is not None
    assert ("index", 125.0) == (proposal.what, proposal.new)
    assert "keep" == propose_time(pair.contrast_percent, Developed(DUE_S, 20, none, contrast=AIM)).what


@pytest.mark.parametrize(
    ("contrast", "temps_explain", "what"),
    [("harsh", 0.0, "time"), ("harsh", 9.0, "temper"), ("right", 0.0, "keep"), ("flat", 0.0, "time")],
)
def test_three_way_answers(contrast: str, temps_explain: float, what: str) -> None:
    """'Harsh' stands for 10 % less what the temperatures explain; 'right' keeps the time."""
    answer = NextMorning("right", contrast)  # type: ignore[arg-type]
    told = Estimate(temps_explain, temps_explain, temps_explain, "%")
    proposal = propose_time(answer.contrast_percent, Developed(DUE_S, 21, told))

    assert what == proposal.what


def test_no_step_is_larger_than_a_tenth() -> None:
    """A contrast far off still moves the time by at most 10 %."""
    seen = Estimate(35.0, 30.0, 40.0, "%")
    proposal = propose_time(seen, Developed(DUE_S, 20, Estimate(0, 0, 0, "%"), contrast=0.45))

    assert -10 <= 100 * (proposal.new / proposal.old - 1) + 0.1


@pytest.mark.parametrize(("shadows", "lower"), [("thin", True), ("heavy", False)])
def test_shadows_change_the_index_only(shadows: str, lower: bool) -> None:
    """Thin asks for a lower index, heavy for a higher one; the time stays."""
    morning = NextMorning(shadows, "right")  # type: ignore[arg-type]
    none = Estimate(0, 0, 0, "%")
    proposal = propose_index(morning.stops_over, index=200, seen=morning.contrast_percent, explained=none)

    assert proposal is not None
    assert lower == (proposal.new < 200)
