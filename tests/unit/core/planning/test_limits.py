"""Where no time is told: outside the range, and cold developers that hold or may hold hydroquinone."""

from __future__ import annotations

from dataclasses import replace

import pytest
from planned import combination, evening, planned, row
from unit.core.run.evening import Sink, at, opened, plan

from tankside.core.methods.known_time import known_time
from tankside.core.planning.development import Setting, time_for
from tankside.core.refusals import Refused
from tankside.core.run.advise import advise_end
from tankside.core.run.commands import PourBath, TakeReading
from tankside.core.run.sink_view import sink_view
from tankside.wording.consequences import say_consequence
from tankside.wording.refusals import say

COLD = combination(row(61, 900.0, 16.5), row(65, 570.0, 20.0))
THIN = Setting(volume_ml=500, worth_ml=0, tank_c=16, room_c=16, tau_min=1e6)


@pytest.mark.parametrize(
    ("holds", "code"), [(True, "hydroquinone-too-cold"), (None, "hydroquinone-not-told"), (False, "")]
)
def test_cold_developers(holds: bool | None, code: str) -> None:
    """At 15 C, 1.5 K below the coldest row: refused with hydroquinone, asked where nobody has said."""
    known = known_time(replace(COLD, hydroquinone=holds), 125.0)
    if not code:
        assert time_for(known, THIN, 15.0, thermometer_step_c=0.1).estimate.value > 900
        return
    with pytest.raises(Refused) as no:
        time_for(known, THIN, 15.0, thermometer_step_c=0.1)

    assert code == no.value.refusal.code
    assert "16.0 °C" in say(no.value.refusal)


@pytest.mark.parametrize("holds", [True, None, False])
def test_above_sixteen_nobody_asks(holds: bool | None) -> None:
    """At 17 C, steady, the agent could not matter."""
    known = known_time(replace(COLD, hydroquinone=holds), 125.0)
    steady = replace(THIN, room_c=17, tank_c=17)

    assert time_for(known, steady, 17.0, thermometer_step_c=0.1).estimate.value > 570


def test_a_drift_below_sixteen_is_asked_about() -> None:
    """It starts at 16.4 and goes to 15.7 in a room of 12: then it matters."""
    known = known_time(COLD, 125.0)
    cooling = Setting(volume_ml=500, worth_ml=0, tank_c=16.4, room_c=12, tau_min=80)
    with pytest.raises(Refused) as no:
        time_for(known, cooling, 16.4, thermometer_step_c=0.1)

    assert "hydroquinone-not-told" == no.value.refusal.code


@pytest.mark.parametrize(
    ("reads_c", "code", "way"), [(17.0, "too-cold-to-time", "warm"), (25.0, "too-warm-to-time", "cool")]
)
def test_the_default_holds_from_18_to_24(reads_c: float, code: str, way: str) -> None:
    """A plan with one row is refused outside, the range in its sentence and a way on beside it."""
    with pytest.raises(Refused) as no:
        planned(replace(evening().wish, reads_c=reads_c, place=replace(evening().place, room_c=reads_c)))

    assert (code, (way,)) == (no.value.refusal.code, no.value.refusal.ways_on)
    assert "18.0 °C to 24.0 °C" in say(no.value.refusal)


def reading(raw_c: float) -> Sink:
    """A tank read at one minute."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    sink.do(TakeReading("tank", "A", raw_c), 60)
    return sink


@pytest.mark.parametrize(("raw_c", "bath"), [(17.5, "warmer"), (24.6, "cooler")])
def test_at_the_sink_nothing_is_told_outside(raw_c: float, bath: str) -> None:
    """No end moves; the sink says the range and to stand the tank in warmer or cooler water."""
    sink = reading(raw_c)
    view = sink_view(sink.state, at(61))
    one = next(each for each in view.consequences if each.code == "outside-times")
    said = say_consequence(one, sink.state)

    assert advise_end(sink.state, "A") is None
    assert one.urgent
    assert "18.0 °C to 24.0 °C" in said.more
    assert f"{bath} water" in said.more


def test_read_again_inside_it_is_told() -> None:
    """Once the tank reads 18.4 an end is told again and the warning goes."""
    sink = reading(17.5)
    sink.do(TakeReading("tank", "A", 18.4), 180)

    assert advise_end(sink.state, "A") is not None
    assert "outside-times" not in {one.code for one in sink_view(sink.state, at(181)).consequences}
