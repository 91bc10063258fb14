"""One tankful from first pour to hung, by pressing only what the sink puts in front."""

from __future__ import annotations

from unit.core.run.evening import FIXER, STOP, Sink, at, opened, plan

from tankside.core.run.charges import charges
from tankside.core.run.progress import progress
from tankside.core.run.sink_view import SinkView, sink_view


def pressed_when_due(sink: Sink) -> list[tuple[str, float]]:
    """Press each main act when it falls due, until the film hangs; what was pressed, and when."""
    seconds, done = 0.0, []
    for _ in range(40):
        view = sink_view(sink.state, at(seconds))
        main = view.tankfuls[0].main
        if main is None:
            return done
        assert main.due_us is not None
        due_s = (main.due_us - at(0).wall_us) / 1e6
        measure = [ring for ring in view.tankfuls[0].rings if ring.cue.kind == "measure" and ring.own]
        if measure and main.cue.kind != "measure":
            due_s = min(due_s, (measure[0].at_us - at(0).wall_us) / 1e6)
        if due_s > seconds:
            seconds = due_s
            continue
        sink.do(main.asked, seconds)
        done.append((main.cue.id, seconds))
    raise AssertionError(done)


def test_the_default_method_is_fifteen_taps_at_most() -> None:
    """Pour and drain a tap each, a reused bath measured, a wash fill one, hung."""
    sink = opened(plan("A"))
    done = pressed_when_due(sink)
    assert [name for name, _ in done] == [
        "A.develop.pour",
        "A.stop.measure",
        "A.develop.drain",
        "A.stop.pour",
        "A.fix.measure",
        "A.stop.drain",
        "A.fix.pour",
        "A.fix.drain",
        "A.wash.pour",
        "A.wash.water-2",
        "A.wash.water-3",
        "A.wash.water-4",
        "A.wetting.pour",
        "A.wetting.drain",
        "A.hang",
    ]
    times = dict(done)
    assert times["A.develop.drain"] == 570.0
    assert times["A.stop.drain"] - times["A.stop.pour"] == 60.0
    assert times["A.fix.drain"] - times["A.fix.pour"] == 300.0
    assert times["A.wash.water-3"] - times["A.wash.water-2"] == 300.0


def test_reused_baths_come_back_charged_with_the_film() -> None:
    """What was drawn of stop bath and fixer is returned, with one roll of area each."""
    sink = opened(plan("A"))
    pressed_when_due(sink)
    lines = [one.line for one in charges(sink.state)]
    for bottle in (STOP, FIXER):
        assert [(one.kind, one.ml, one.area_units) for one in lines if one.bottle == bottle] == [
            ("drawn", -500.0, 0.0),
            ("returned", 500.0, 1.0),
        ]


def view_at(sink: Sink, seconds: float) -> SinkView:
    """The sink at a second of the evening."""
    return sink_view(sink.state, at(seconds))


def test_the_surface_has_its_bath_and_its_rings() -> None:
    """In the developer: end, least and most as the method says, inversions each full minute."""
    sink = opened(plan("A"))
    assert view_at(sink, -600).tankfuls[0].stage == "waiting"
    assert view_at(sink, -30).tankfuls[0].stage == "filling"
    pressed = view_at(sink, 0).tankfuls[0].main
    assert pressed is not None
    sink.do(pressed.asked, 0)
    view = view_at(sink, 50).tankfuls[0]
    assert view.bath is not None
    begun = at(0).wall_us
    assert (view.bath.end_us - begun, view.bath.least_us - begun) == (570_000_000, 565_000_000)
    assert view.bath.most_us == begun + 580_000_000
    inversions = [(one.at_us - begun) // 1_000_000 for one in view.rings if one.cue.bath == "A.develop"]
    assert inversions == [60, 120, 180, 240, 300, 360, 420, 480, 540, 570]
    assert view.stage == "running"
    assert view_at(sink, 61).tankfuls[0].stage == "cue due"
    assert view_at(sink, 571).tankfuls[0].stage == "overtime"


def test_a_bath_before_its_least_time_must_be_held() -> None:
    """The main act says so, and its command says that it was."""
    sink = opened(plan("A"))
    sink.do(view_at(sink, 0).tankfuls[0].main.asked, 0)  # type: ignore[union-attr]
    early, late = view_at(sink, 300).tankfuls[0].main, view_at(sink, 566).tankfuls[0].main
    assert early is not None
    assert late is not None
    assert (early.cue.kind, early.hold) == ("drain", True)
    assert (late.cue.kind, late.hold) == ("measure", False)


def test_the_tankful_that_needs_hands_next_stands_first() -> None:
    """B is poured at 12:00; before that A's inversion comes first, then B's pour."""
    sink = opened(plan("AB"))
    assert [one.letter for one in view_at(sink, 0).tankfuls] == ["A", "B"]
    sink.do(view_at(sink, 0).tankfuls[0].main.asked, 0)  # type: ignore[union-attr]
    assert view_at(sink, 100).tankfuls[0].letter == "A"
    rings = view_at(sink, 100).tankfuls[0].rings
    assert any(not one.own and one.cue.id == "B.develop.pour" for one in rings)
    view = view_at(sink, 100).tankfuls[1]
    assert view.needs_us == at(720).wall_us


def test_progress_counts_from_now() -> None:
    """Planning hears that A is 100 s in its developer, due in 470, and that B has not begun."""
    sink = opened(plan("AB"))
    sink.do(view_at(sink, 0).tankfuls[0].main.asked, 0)  # type: ignore[union-attr]
    now = progress(sink.state, at(100))
    develop = now.tankful("A").baths[0]
    assert (develop.poured_s, develop.ends_s, develop.over) == (-100.0, 470.0, False)
    assert now.tankful("B").where == "not begun"


def test_two_tankfuls_at_once_are_brought_to_the_line() -> None:
    """Each second the tankful that stands first is looked at, and its act pressed when due: both hang."""
    sink = opened(plan("AB"))
    pressed = []
    for seconds in range(0, 4200, 5):
        for view in view_at(sink, seconds).tankfuls:
            if view.main is not None and view.main.due_us is not None:
                if view.main.due_us <= at(seconds).wall_us:
                    sink.do(view.main.asked, seconds)
                    pressed.append(view.main.cue.id)
                break
    assert pressed.index("B.develop.pour") > pressed.index("A.fix.pour")
    assert [one.stage for one in view_at(sink, 4200).tankfuls] == ["done", "done"]
    assert view_at(sink, 4200).close is not None
    assert view_at(sink, 4200).consequences == ()
    area = [one.line.area_units for one in charges(sink.state) if one.line.bottle == FIXER]
    assert sum(area) == 2.0
