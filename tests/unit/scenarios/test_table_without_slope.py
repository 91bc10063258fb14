"""Tempering and readings for a table that no one slope fits: plan, run and review go by its own rows.

Times of T.O. 33B-1-1 / TM 1-1500-335-23, Table 6-16 (maximum time): *published*. Expected values are worked
out here by small steps along the printed rows, read between on the logarithm of time.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from literature.tables import rows_of
from planned import combination, evening, planned, row
from scipy.optimize import brentq
from unit.core.run.evening import Sink, opened, plan

from tankside.core.development.advice import worth_telling
from tankside.core.methods.known_time import KnownTime, known_time
from tankside.core.planning.development import Setting, mix_to, time_for
from tankside.core.planning.plan import Plan
from tankside.core.planning.wish import Wish
from tankside.core.refusals import Refused
from tankside.core.review.predicted import counted
from tankside.core.run.advise import advise_end
from tankside.core.run.commands import DrainBath, PourBath, TakeReading

PRINTED = sorted(
    (float(one["temp_c"]), 60 * float(one["time_min"]))
    for one in rows_of("time-temperature.csv")
    if one["table_id"] == "X3"
)
DUE_S = 480.0
ROWS = tuple(row(300 + number, time_s, temp_c) for number, (temp_c, time_s) in enumerate(PRINTED))


def known() -> KnownTime:
    """All rows of the table as one leaflet."""
    return known_time(combination(*ROWS), 125.0)


def done(start_c: float, *, room_c: float, time_s: float) -> float:
    """Share of a development that `time_s` of a drift does, by steps of a tenth of a second."""
    at_s = np.arange(0.05, time_s, 0.1)
    temps = room_c + (start_c - room_c) * np.exp(-at_s / (60 * 106))
    logs = np.interp(temps, [one for one, _ in PRINTED], np.log([one for _, one in PRINTED]))
    return float(np.sum(0.1 * np.exp(-logs)))


def end_of(start_c: float, *, room_c: float) -> float:
    """When a drift from `start_c` has done all of it."""
    return float(brentq(lambda time_s: done(start_c, room_c=room_c, time_s=time_s) - 1, 200, 1200, rtol=1e-4))


def ran(table: Plan, *, raw_c: float, until_s: float) -> Sink:
    """A run of that plan, its tank read at one minute and drained at `until_s`."""
    sink = opened(table)
    sink.do(PourBath("A.develop"), 0)
    sink.do(TakeReading("tank", "A", raw_c), 60)
    sink.do(DrainBath("A.develop", "drain"), until_s)
    return sink


def by_table(*, room_c: float = 20.0) -> Plan:
    """The hand-made evening with this table in the place of a factor, due at 8:00."""
    made = plan("A", room_c=room_c, offset_c=-0.3, time_s=DUE_S)
    rate = known().rate
    first = made.tankfuls[0]
    development = replace(first.development, rate=rate.believed, time_s=rate.time_s)
    return replace(made, tankfuls=(replace(first, development=development),))


def test_temper_first_holds_without_a_slope() -> None:
    """Everything at 17 C, 8:00 at 20 C: the start found makes 8:00 count as 8:00 by the rows themselves."""
    setting = Setting(volume_ml=500, worth_ml=112, tank_c=17, room_c=17, tau_min=106)
    jug = mix_to(known(), setting, DUE_S).estimate

    assert 1.0 == pytest.approx(done(setting.start_c(jug.value), room_c=17, time_s=DUE_S), abs=2e-4)
    assert 20.6 < jug.value < 20.9


def test_the_plan_goes_by_its_own_rows() -> None:
    """A jug at 24 C into a tank at 20: the end is that of the rows, not of one overall factor."""
    setting = Setting(volume_ml=500, worth_ml=112, tank_c=20, room_c=20, tau_min=106)
    end = time_for(known(), setting, 25.0, thermometer_step_c=0.1).estimate

    assert end_of(setting.start_c(25.0), room_c=20) == pytest.approx(end.value, abs=0.5)


@pytest.mark.parametrize(("raw_c", "room_c"), [(19.5, 16.0), (24.5, 20.0), (21.9, 27.0)])
def test_a_reading_at_one_minute(raw_c: float, room_c: float) -> None:
    """The end told is where the rows add up to one development, and its interval is not empty."""
    sink = opened(by_table(room_c=room_c))
    sink.do(PourBath("A.develop"), 0)
    sink.do(TakeReading("tank", "A", raw_c), 60)
    advice = advise_end(sink.state, "A")
    start_c = room_c + (raw_c - 0.3 - room_c) * float(np.exp(60 / (60 * 106)))

    assert advice is not None
    assert end_of(start_c, room_c=room_c) == pytest.approx(advice.end_s.value, abs=1.5)
    assert advice.end_s.low < advice.end_s.value < advice.end_s.high


def test_the_review_counts_as_the_run_did() -> None:
    """Drained when the run said, it counts as 8:00 and there is nothing to correct."""
    sink = opened(by_table(room_c=20))
    sink.do(PourBath("A.develop"), 0)
    sink.do(TakeReading("tank", "A", 24.5), 60)
    advice = advise_end(sink.state, "A")
    assert advice is not None
    found = counted(ran(by_table(room_c=20), raw_c=24.5, until_s=advice.end_s.value).state, "A")

    assert found is not None
    assert DUE_S == pytest.approx(found.counted_s, abs=1.0)
    assert "too small to see" == found.size


def test_one_overall_factor_would_be_wrong() -> None:
    """At 22.2 C the printed 7:00 and what the overall factor makes of 8:00 part by what is worth telling."""
    overall = replace(known().rate.believed, knots=())

    assert worth_telling(DUE_S / float(overall.law.factor(22.22)), told_s=420.0)


def test_no_number_outside_the_rows() -> None:
    """Below 17.2 C and above 26.7 the refusal says the range and a way on; no time is told."""
    setting = Setting(volume_ml=500, worth_ml=0, tank_c=20, room_c=20, tau_min=1e6)
    for jug_c, code, way in ((17.0, "too-cold-to-time", "warm"), (27.0, "too-warm-to-time", "cool")):
        with pytest.raises(Refused) as no:
            time_for(known(), setting, jug_c, thermometer_step_c=0.1)
        assert (code, (way,)) == (no.value.refusal.code, no.value.refusal.ways_on)
        assert (17.22, 26.67) == (no.value.refusal.numbers["least_c"], no.value.refusal.numbers["most_c"])


def test_a_time_of_ones_own_goes_by_the_leaflets_table() -> None:
    """7:00 at 21 C of one's own, among these rows, is 7:00 there and changes as the table does."""
    own = replace(row(400, 420.0, 21.11), source="own", words="own time")
    mine = known_time(combination(*ROWS, own), 125.0)
    at_22 = 420.0 * 420.0 / 450.0

    assert mine.rate.interpolates
    assert at_22 == pytest.approx(420.0 / float(mine.rate.believed.law.factor(22.22)))


def test_a_whole_plan_carries_the_table() -> None:
    """Worked out from a wish, every row reaches the sink as a knot, one more on each side."""
    wish = _wish()
    carried = planned(wish).tankfuls[0].development.rate

    assert len(PRINTED) + 2 == len(carried.knots)
    assert (17.22, 26.67) == (carried.least_c, carried.most_c)


def _wish() -> Wish:
    """The invented first evening with this table as its leaflet."""
    wish = evening().wish
    first = wish.rolls[0]
    return replace(wish, rolls=(replace(first, combination=replace(first.combination, rows=ROWS)),))


def test_told_as_well_as_it_is_printed() -> None:
    """At a row a time is as sure as its printed quarter minute: 6.75 s either way, and a reading's on top."""
    end = time_for(known(), Setting(500, 0, 20, 20, 1e6), 20.0, thermometer_step_c=0.1).estimate

    assert 6.75 < (end.high - end.low) / 2 < 10
