"""S5: nobody there from 6:10 to 11:40 of a development of 9:30, and a used bath poured into the wrong bottle.

Source of the expected values: reference practice, scenario S5 (ours, computed apart from this code).
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from unit.core.run.evening import BENCH, DEVELOPER, STOP, Sink, at, opened, plan

from tankside.core.refusals import Refused
from tankside.core.run.commands import ConfirmBottle, DrainBath, PourBath
from tankside.core.run.consequences import Consequence
from tankside.core.run.events import BathPoured, BenchBottle
from tankside.core.run.replay import replay
from tankside.core.run.sink_view import sink_view


def consequence(sink: Sink, code: str, seconds: float) -> Consequence:
    """The consequence of that code as the sink shows it."""
    view = sink_view(sink.state, at(seconds))
    return next(one for one in view.consequences if one.code == code)


def developing() -> Sink:
    """A developer poured at 20:00, its times those of the scenario."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    return sink


def test_the_first_screen_after_the_outage_says_what_happened_and_what_is_best() -> None:
    """2:10 over, contrast +13 % (10 to 17), pour out now; the cues that nobody heard are named."""
    sink = developing()
    over = consequence(sink, "over-time", 700)
    assert over.urgent
    assert over.over_s == pytest.approx(130)
    assert over.contrast is not None
    found = over.contrast.percent
    assert (round(found.value), round(found.low), round(found.high)) == (13, 10, 17)
    assert over.best == DrainBath("A.develop", "drain", held=True)
    view = sink_view(sink.state, at(700), away_since_us=at(370).wall_us)
    assert view.away is not None
    assert [one.id for one in view.away.cues] == [
        "A.develop.invert-7",
        "A.develop.invert-8",
        "A.stop.measure",
        "A.develop.invert-9",
        "A.develop.drain",
    ]


def test_a_shorter_outage_is_no_drama() -> None:
    """Back at 9:35 nothing has gone otherwise: it may be drained up to 10 s late."""
    assert sink_view(developing().state, at(575), away_since_us=at(370).wall_us).consequences == ()


def test_every_tap_is_kept() -> None:
    """A program started anew from the log holds what the old one held."""
    sink = developing()
    assert replay(sink.run.events) == sink.run


def test_a_phone_that_was_alone_hands_in_its_taps_later() -> None:
    """Drained at 9:31 on a phone out of touch, noted at 11:40: nothing is over."""
    sink = developing()
    sink.do(DrainBath("A.develop"), 700, age_s=129, how="queued")
    assert sink_view(sink.state, at(700)).consequences == ()
    assert sink.state.tankful("A").passes[0].ended_us == at(571).wall_us


def test_once_the_stop_bath_is_spoilt_another_of_its_kind_is_offered_or_a_jug() -> None:
    """The developer went back into the stop bottle: the spare is offered, without one a jug."""
    spare = BenchBottle("S3PB-X", "stop bath", "stop", 500.0, 0.1)
    for bench, wanted in (((*BENCH, spare), "S3PB-X"), (BENCH, None)):
        sink = opened(plan("A"), bench=bench)
        sink.do(PourBath("A.develop"), 0)
        sink.do(DrainBath("A.develop", to=STOP), 570)
        main = sink_view(sink.state, at(580)).tankfuls[0].main
        assert main is not None
        assert main.cue.bottle == wanted
        sink.do(main.asked, 580)
        main = sink_view(sink.state, at(585)).tankfuls[0].main
        assert main is not None
        events = sink.do(main.asked, 590)
        if wanted is not None:
            assert events[0].body == BathPoured("A.stop", wanted)


def returned(used_ml: float) -> Sink:
    """The used 1+1 of A poured back into its stock bottle of 480 mL."""
    # the working developer was mixed from another bottle, so that 480 mL are still there
    planned = plan("A")
    liquids = tuple(replace(one, bottle=None) if one.key == "develop-A" else one for one in planned.liquids)
    sink = opened(replace(planned, liquids=liquids), bench=BENCH)
    sink.do(PourBath("A.develop", ml=used_ml), 0)
    sink.do(DrainBath("A.develop", to=DEVELOPER), 570)
    return sink


@pytest.mark.parametrize(("used_ml", "percent"), [(300.0, 81), (100.0, 91)])
def test_a_wrong_return_contaminates_the_bottle(used_ml: float, percent: int) -> None:
    """(480 + half of what came back) over the whole is the most strength that can be left."""
    sink = returned(used_ml)
    found = consequence(sink, "contaminated", 580).contamination
    assert found is not None
    assert (found.bottle, found.held_ml, found.poured_ml) == (DEVELOPER, 480.0, used_ml)
    assert found.most_strength is not None
    assert round(100 * found.most_strength) == percent


def test_a_contaminated_bottle_is_never_offered_again() -> None:
    """It is refused at measuring, and this film is unaffected."""
    sink = returned(300.0)
    with pytest.raises(Refused) as no:
        sink.do(ConfirmBottle("A.develop", DEVELOPER), 590)
    assert no.value.refusal.code == "bottle-contaminated"
    assert not any(one.urgent for one in sink_view(sink.state, at(590)).consequences)
