"""Push, pull, and two films in one tank."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.development.one_tank import Due, fairest_together, made_together
from tankside.core.development.push import push
from tankside.core.refusals import Refused


def test_one_stop_takes_what_darkrooms_give_it() -> None:
    """Common practice: a stop is +40 to 100 % of time, worth 1/3 to 2/3 stop in the shadows."""
    found = push(1, time_s=570)

    assert 1.4 <= found.time.value / 570 <= 2.0
    assert 1 / 3 <= found.shadows_short_stops.value <= 2 / 3
    assert found.sure


def test_no_push_is_the_usual_development() -> None:
    """Nothing asked, nothing changed (to the fineness of the search)."""
    found = push(0, time_s=570)

    assert pytest.approx(570, rel=1e-3) == found.time.value
    assert pytest.approx(0.56, abs=1e-3) == found.contrast.value


def test_what_the_film_cannot_reach_is_refused() -> None:
    """Three stops ask for more than 0.95; two may or may not be reached."""
    with pytest.raises(Refused) as no:
        push(3, time_s=570)

    assert "push-out-of-reach" == no.value.refusal.code
    assert not push(2, time_s=570).sure


@given(stops=st.floats(-2, 1.6), more=st.floats(0.05, 0.3))
def test_a_longer_push_gives_more_contrast_and_thinner_shadows(stops: float, more: float) -> None:
    """All three rise with the stops."""
    less, further = push(stops, time_s=570), push(stops + more, time_s=570)

    assert less.time.value < further.time.value
    assert less.contrast.value < further.contrast.value
    assert less.shadows_short_stops.value < further.shadows_short_stops.value


def test_each_film_gets_its_own_contrast() -> None:
    """At the longer film's time that one is right and the other over by 11 %."""
    both = made_together([Due(570.0), Due(480.0)], time_s=570)

    assert pytest.approx(0.0, abs=1e-9) == both.deviations[0].value
    assert both.deviations[1].low < both.deviations[1].value < both.deviations[1].high
    assert ("too small to see", "will show") == both.sizes


@given(first=st.floats(300, 900), second=st.floats(300, 900))
def test_the_fairest_time_misses_alike(first: float, second: float) -> None:
    """One is over by what the other is under, within the fineness of the search."""
    both = fairest_together([Due(first), Due(second)])

    assert min(first, second) <= both.time_s <= max(first, second)
    assert both.deviations[0].value == pytest.approx(-both.deviations[1].value, abs=0.6)
