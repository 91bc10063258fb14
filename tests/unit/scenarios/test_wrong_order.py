"""S9: stop bath poured first and noted 25 s later; and fixer first, which nothing brings back."""

from __future__ import annotations

from unit.core.run.evening import FIXER, STOP, Sink, at, opened, plan

from tankside.core.run.commands import DrainBath, EndTankful, PourBath
from tankside.core.run.consequences import Consequence
from tankside.core.run.sink_view import TankfulView, sink_view


def urgent(sink: Sink, seconds: float) -> Consequence:
    """The first thing that the sink says."""
    first = sink_view(sink.state, at(seconds)).consequences[0]
    assert first.urgent
    return first


def tankful_a(sink: Sink, seconds: float) -> TankfulView:
    """Tankful A as shown."""
    return sink_view(sink.state, at(seconds)).tankfuls[0]


def main_id(sink: Sink, seconds: float) -> str:
    """The main act, by its cue."""
    main = tankful_a(sink, seconds).main
    assert main is not None
    return main.cue.id


def press(sink: Sink, seconds: float) -> str:
    """Press the main act."""
    main = tankful_a(sink, seconds).main
    assert main is not None
    sink.do(main.asked, seconds)
    return main.cue.id


def test_stop_first_is_put_right_by_one_change_of_plan() -> None:
    """Film unharmed: drain, three fills of water, developer for its full time from its own pour."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.stop"), 25, age_s=25)
    said = urgent(sink, 26)
    assert (said.code, said.poured, said.owed) == ("before-developer", "A.stop", "A.develop")
    assert said.best is not None
    sink.do(said.best, 30)
    assert press(sink, 31) == "A.stop.out-again"
    pressed = [press(sink, seconds) for seconds in (50, 75, 100, 130)]
    assert pressed == ["A.rinse.pour", "A.rinse.water-2", "A.rinse.water-3", "A.develop.pour"]
    view = tankful_a(sink, 200)
    assert view.bath is not None
    assert view.bath.poured_us == at(130).wall_us
    assert view.bath.end_us == at(700).wall_us
    assert not any(one.urgent for one in sink_view(sink.state, at(200)).consequences)
    sink.do(DrainBath("A.develop"), 700)
    assert main_id(sink, 701) == "A.stop.measure"


def test_the_stop_bottle_taken_for_the_developer_is_the_same_mistake() -> None:
    """What counts is the bottle that was poured; its liquid goes back where it came from."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop", bottle=STOP), 0)
    assert urgent(sink, 5).code == "before-developer"
    events = sink.do(DrainBath("A.develop"), 10)
    assert events[1].body.bottle == STOP  # type: ignore[union-attr]
    assert main_id(sink, 11) == "A.develop.pour"


def test_fixer_first_says_that_the_image_is_gone() -> None:
    """Never 'develop longer': the fixer comes out, and the tankful may be ended."""
    for asked in (PourBath("A.fix"), PourBath("A.develop", bottle=FIXER)):
        sink = opened(plan("A"))
        sink.do(asked, 0)
        said = urgent(sink, 5)
        assert said.code == "image-gone"
        assert said.best == EndTankful("A", "image lost")
        waiting = [ring.cue.bath for ring in tankful_a(sink, 5).rings]
        assert "A.develop" not in waiting or asked.bath == "A.develop"
        sink.do(said.best, 6)
        assert tankful_a(sink, 7).stage == "done"


def test_a_skipped_stop_is_let_go() -> None:
    """Fixer straight after the developer is no wrong order: the stop bath is not asked for again."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    sink.do(DrainBath("A.develop"), 570)
    sink.do(PourBath("A.fix"), 585)
    assert sink_view(sink.state, at(590)).consequences == ()
    assert main_id(sink, 886) == "A.fix.drain"
