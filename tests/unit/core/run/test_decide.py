"""Commands become events: what is recorded, what is refused, what is told."""

from __future__ import annotations

import pytest
from unit.core.run.evening import BENCH, DEVELOPER, FIXER, STOP, opened

from tankside.core.refusals import Refused
from tankside.core.run.charges import charges
from tankside.core.run.commands import ConfirmBottle, DrainBath, PourBath, SkipBath, TakeReading
from tankside.core.run.events import BenchBottle


def test_pouring_confirms_a_bottle_that_was_not_confirmed_at_measuring() -> None:
    """One tap gives two events, a second one after measuring gives one."""
    sink = opened()
    events = sink.do(PourBath("A.develop"), 0)
    assert [one.kind for one in events] == ["bath-poured", "bottle-confirmed"]
    sink.do(ConfirmBottle("A.stop", STOP), 500)
    sink.do(DrainBath("A.develop"), 570)
    events = sink.do(PourBath("A.stop"), 585)
    assert [one.kind for one in events] == ["bath-poured"]


def test_draining_before_the_least_time_asks_to_be_held() -> None:
    """A wet knuckle may not end development."""
    sink = opened()
    sink.do(PourBath("A.develop"), 0)
    with pytest.raises(Refused) as no:
        sink.do(DrainBath("A.develop"), 300)
    assert no.value.refusal.code == "hold-to-drain"
    assert no.value.refusal.numbers["least_s"] == 565.0
    sink.do(DrainBath("A.develop", held=True), 301)
    assert sink.state.tankful("A").in_tank is None


def test_a_drain_that_was_told_late_is_recorded_before_the_least_time() -> None:
    """What a phone off the net has noted, or a person tells afterwards, has happened all the same."""
    sink = opened()
    sink.do(PourBath("A.develop"), 0)
    sink.do(DrainBath("A.develop"), 500, age_s=100, how="queued")
    assert sink.state.tankful("A").in_tank is None
    sink.do(PourBath("B.develop"), 510)
    sink.do(DrainBath("B.develop"), 600, age_s=15)
    assert sink.state.tankful("B").in_tank is None


def test_draining_names_where_the_bath_goes() -> None:
    """The developer goes down the drain, the stop bath back into its bottle."""
    sink = opened()
    sink.do(PourBath("A.develop"), 0)
    events = sink.do(DrainBath("A.develop"), 570)
    assert [one.kind for one in events] == ["bath-drained", "bath-discarded"]
    sink.do(PourBath("A.stop"), 585)
    events = sink.do(DrainBath("A.stop"), 645)
    assert [one.kind for one in events] == ["bath-drained", "bath-returned"]
    assert events[1].body.bottle == STOP  # type: ignore[union-attr]


def test_an_act_noted_twice_within_twenty_seconds_is_one() -> None:
    """Both are stored; the answer names the time of the earlier one."""
    sink = opened()
    sink.do(PourBath("A.develop"), 0)
    sink.do(PourBath("A.develop"), 12, age_s=14)
    assert sink.answers[-1].code == "noted"
    assert sink.state.tankful("A").passes[0].poured.event == "phone:2/0"
    sink.do(PourBath("A.develop"), 15)
    assert sink.answers[-1].code == "already-noted"
    assert sink.answers[-1].about == "phone:2/0"


def test_what_cannot_be_read_is_refused() -> None:
    """Steam, a volume of nothing, the future and an unknown tankful."""
    sink = opened()
    for asked, code in (
        (TakeReading("tank", "A", 104.0), "not-a-liquid"),
        (PourBath("A.develop", ml=0.0), "no-volume"),
        (PourBath("Z.develop"), "unknown-tankful"),
    ):
        with pytest.raises(Refused) as no:
            sink.do(asked, 0)
        assert no.value.refusal.code == code
    with pytest.raises(Refused) as no:
        sink.do(PourBath("A.develop"), 0, age_s=-3)
    assert no.value.refusal.code == "in-the-future"
    sink.do(PourBath("A.develop"), 0, age_s=-2)


def test_a_wrong_bottle_is_refused_at_measuring() -> None:
    """Fixer in the hand for the stop bath: no, and no way round it."""
    sink = opened()
    with pytest.raises(Refused) as no:
        sink.do(ConfirmBottle("A.stop", FIXER, knowingly=True), 500)
    assert no.value.refusal.code == "wrong-bottle"
    assert no.value.refusal.numbers["holds"] == "fixer"


def test_a_request_from_a_screen_that_is_behind_is_refused() -> None:
    """A skip that had not seen the pour is refused; one that had is taken."""
    sink = opened()
    seen = sink.run.last_seq
    sink.do(PourBath("A.develop"), 0)
    with pytest.raises(Refused) as no:
        sink.do(SkipBath("A.stop", "out of acid"), 10, saw=seen)
    assert no.value.refusal.code == "screen-behind"
    sink.do(SkipBath("A.stop", "out of acid"), 11, saw=sink.run.last_seq)
    assert sink.state.tankful("A").skipped[0].bath == "A.stop"


def test_the_developer_is_charged_by_the_stock_in_it() -> None:
    """500 mL of 1+1 mixed in a jug took 250 mL of stock; the rest of the bench is untouched."""
    sink = opened()
    sink.do(PourBath("A.develop"), 0)
    (owed,) = charges(sink.state)
    assert (owed.line.bottle, owed.line.kind, owed.line.ml) == (DEVELOPER, "drawn", -250.0)


def test_a_developer_that_stands_mixed_is_charged_whole() -> None:
    """The same pour from a bottle filled at 'Get ready', where half is stock, drew all of its 500 mL."""
    mixed = BenchBottle(DEVELOPER, "developer", "umber stock", 500.0, 0.5, "grey", "far left")
    sink = opened(bench=(mixed, *BENCH[1:]))
    sink.do(PourBath("A.develop"), 0)
    (owed,) = charges(sink.state)
    assert (owed.line.bottle, owed.line.kind, owed.line.ml) == (DEVELOPER, "drawn", -500.0)
