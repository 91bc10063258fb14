"""What the log of a development predicts: time that counted, temperature, and contrast with its doubt."""

from __future__ import annotations

import pytest
from unit.core.review.invented_run import carried_out
from unit.core.run.evening import Sink, opened, plan

from tankside.core.review.predicted import counted, developed_of, temperatures, together
from tankside.core.run.commands import DrainBath, PourBath, TakeReading


def developed_at(temp_c: float, *, for_s: float = 570.0) -> Sink:
    """A tank in a room of its own temperature, read at 3:00 and poured out after `for_s`."""
    sink = opened(plan("A", room_c=temp_c))
    sink.do(PourBath("A.develop"), 0.0)
    sink.do(TakeReading("tank", "A", temp_c), 180.0)
    sink.do(DrainBath("A.develop", "drain", held=True), for_s)
    return sink


@pytest.mark.parametrize(("temp_c", "percent"), [(21.0, 5.2), (20.8, 4.1), (21.1, 5.7), (20.0, 0.0)])
def test_the_temperature_of_the_log_predicts_the_contrast(temp_c: float, percent: float) -> None:
    """0.589, 0.583 and 0.592 for an aim of 0.56, as the scenario of the three step strips has it."""
    found = counted(developed_at(temp_c).state, "A")

    assert found is not None
    assert percent == pytest.approx(found.percent.value, abs=0.15)
    assert found.percent.low < found.percent.value < found.percent.high
    assert temp_c == pytest.approx(found.mean_c, abs=0.01)


def test_an_unread_tank_is_known_less() -> None:
    """The same time counts, with more doubt."""
    read, unread = counted(developed_at(20.0).state, "A"), counted(carried_out().state, "A")

    assert read is not None
    assert unread is not None
    assert (0, 1) == (unread.readings, read.readings)
    assert unread.percent.high > read.percent.high
    assert unread.percent.low < read.percent.low


def test_a_drift_is_followed_through_its_readings() -> None:
    """19.2 at 1:00 and 18.9 at 5:00: the path goes through both, warmer before and cooler after."""
    sink = opened(plan("A", room_c=16.0))
    sink.do(PourBath("A.develop"), 0.0)
    sink.do(TakeReading("tank", "A", 19.2), 60.0)
    sink.do(TakeReading("tank", "A", 18.9), 300.0)
    sink.do(DrainBath("A.develop", "drain", held=True), 600.0)
    path = temperatures(sink.state, "A")

    assert path is not None
    at = dict(zip(path.times_s, path.temps_c, strict=True))
    assert (19.2, 18.9) == pytest.approx((at[60.0], at[300.0]))
    assert at[0.0] > 19.2
    assert at[600.0] < 18.9


def test_nothing_is_said_while_it_is_in_the_tank() -> None:
    """A development that is not over has no verdict."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0.0)

    assert counted(sink.state, "A") is None
    assert developed_of(sink.state, "A") is None
    assert temperatures(sink.state, "A") is None


def test_several_logs_are_one_by_their_means() -> None:
    """Three runs of one combination: mean temperature, mean of what they predict."""
    found = [developed_of(developed_at(temp_c).state, "A") for temp_c in (21.0, 20.8, 21.1)]
    mean = together([one for one in found if one is not None])

    assert pytest.approx(20.97, abs=0.01) == mean.mean_c
    assert pytest.approx(5.0, abs=0.2) == mean.explained_percent.value
