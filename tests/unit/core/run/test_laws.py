"""The laws of the live run, over whatever hands may note in whatever order."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from unit.core.run.evening import (
    BENCH,
    DEVELOPER,
    FIXER,
    STOP,
    Sink,
    at,
    opened,
    plan,
    without_told,
)

from tankside.core.refusals import Refused
from tankside.core.run.advise import advise_end
from tankside.core.run.charges import Charge, charges, difference
from tankside.core.run.commands import (
    Asked,
    ChangeWater,
    ConfirmBottle,
    DrainBath,
    HangFilm,
    NoteAgitation,
    PourBath,
    RestateNote,
    RetimeNote,
    SkipBath,
    TakeReading,
    WithdrawNote,
)
from tankside.core.run.events import BathPoured, ClockDoubted
from tankside.core.run.replay import follow, replay
from tankside.core.run.sink_view import sink_view
from tankside.core.run.state import RunState

BATHS = [f"{letter}.{kind}" for letter in "AB" for kind in ("develop", "stop", "fix", "wash", "wetting")]
BOTTLES = [None, DEVELOPER, STOP, FIXER]
LIQUID = [bath for bath in BATHS if not bath.endswith("wash")]

observations: st.SearchStrategy[Asked] = st.one_of(
    st.builds(PourBath, st.sampled_from(BATHS), st.sampled_from(BOTTLES), st.sampled_from([None, 300.0])),
    st.builds(
        DrainBath, st.sampled_from(LIQUID), st.sampled_from(["drain", STOP, FIXER, DEVELOPER]), st.just(True)
    ),
    st.builds(ChangeWater, st.sampled_from(["A.wash", "B.wash"]), st.integers(1, 4)),
    st.builds(NoteAgitation, st.sampled_from(["A.develop", "B.fix"]), st.integers(0, 5), st.booleans()),
    st.builds(TakeReading, st.just("tank"), st.sampled_from("AB"), st.floats(15, 25)),
    st.builds(HangFilm, st.sampled_from("AB")),
)
requests: st.SearchStrategy[Asked] = st.one_of(
    st.builds(ConfirmBottle, st.sampled_from(["A.stop", "B.fix"]), st.sampled_from([STOP, FIXER])),
    st.builds(SkipBath, st.sampled_from(["A.stop", "B.wetting"]), st.just("out of it")),
)
steps = st.lists(
    st.tuples(
        st.one_of(
            st.just("press"), st.just("press-other"), st.just("best"), st.just("answer"),
            st.just("withdraw"), st.just("retime"), st.just("restate"), observations, requests,
        ),
        st.floats(0.5, 400),
        st.floats(0, 60),
    ),
    max_size=18,
)  # fmt: skip


def restated(sink: Sink) -> RestateNote | None:
    """The last pour was of 200 mL only."""
    for event in reversed(sink.run.events):
        if isinstance(event.body, BathPoured):
            return RestateNote(event.id, replace(event.body, ml=200.0))
    return None


def chosen(sink: Sink, what: str | Asked, seconds: float, age_s: float) -> Asked | None:  # noqa: PLR0911
    """The command that a step stands for where things stand now."""
    view = sink_view(sink.state, at(seconds))
    noted = [one for one in sink.run.events if isinstance(one.body, BathPoured)]
    match what:
        case "press" | "press-other":
            main = view.tankfuls[0 if what == "press" else -1].main
            return main.asked if main else None
        case "best":
            return next((one.best for one in view.consequences if one.best), None)
        case "answer":
            return next((way.asked for one in view.doubts for way in one.ways), None)
        case "withdraw":
            return WithdrawNote(sink.run.events[-1].id)
        case "retime":
            return RetimeNote(noted[-1].id, age_s) if noted else None
        case "restate":
            return restated(sink)
        case str():
            raise ValueError(what)
        case _:
            return what


def lived(taken: list[tuple[str | Asked, float, float]]) -> tuple[Sink, list[Charge], float]:
    """An evening of these steps, the ledger booked by differences as it goes, and its last second."""
    sink, seconds, booked = opened(), 0.0, list[Charge]()
    for what, wait_s, age_s in taken:
        seconds += wait_s
        asked = chosen(sink, what, seconds, age_s)
        if asked is None:
            continue
        try:
            sink.do(asked, seconds, age_s=0.0 if isinstance(what, str) else age_s)
        except Refused:
            continue
        booked.extend(difference(charges(sink.state), booked))
    return sink, booked, seconds


@given(steps)
@settings(max_examples=60, deadline=None)
def test_replay_equals_live_and_any_prefix_resumes(taken: list[tuple[str | Asked, float, float]]) -> None:
    """The log alone gives back the run, whole or continued from anywhere."""
    sink, _, _ = lived(taken)
    events = sink.run.events
    assert replay(events) == sink.run
    for cut in range(1, len(events)):
        assert follow(replay(events[:cut]), events[cut:]) == sink.run


@given(steps)
@settings(max_examples=60, deadline=None)
def test_the_ledger_is_what_the_settled_log_owes(taken: list[tuple[str | Asked, float, float]]) -> None:
    """Booked differences add up to the charges; no known bottle ever holds less than nothing."""
    sink, booked, _ = lived(taken)
    owed = charges(sink.state)
    assert difference(owed, booked) == ()
    for bottle in BENCH:
        lines = [one.line for one in owed if one.line.bottle == bottle.code]
        assert bottle.ml is not None
        held = bottle.ml
        for line in lines:
            held += line.ml
            assert held >= -1e-9
            assert line.area_units >= 0
        total = sum(one.line.ml for one in booked if one.line.bottle == bottle.code)
        assert abs(bottle.ml + total - held) < 1e-6


@given(steps)
@settings(max_examples=60, deadline=None)
def test_looking_changes_nothing_and_there_is_always_a_next_act(
    taken: list[tuple[str | Asked, float, float]],
) -> None:
    """The same look twice is the same; what the sink puts in front is never refused."""
    sink, _, seconds = lived(taken)
    before = sink.run
    view = sink_view(sink.state, at(seconds + 1))
    assert sink_view(sink.state, at(seconds + 1)) == view
    assert replay(before.events) == sink.run
    mains = [one.main for one in view.tankfuls if one.main is not None]
    undone = [one for one in view.tankfuls if one.stage != "done"]
    assert len(mains) == len(undone)
    acts = [main.asked for main in mains] or ([view.close] if view.close else [])
    assert acts
    for asked in acts:
        Sink(before, count=1000).do(asked, seconds + 1)


def by_name(taken: list[tuple[Asked, float]], order: list[int], ends_s: float) -> RunState:
    """The state after these observations of known times came in, in that order, once all had happened."""
    sink = opened()
    for place in order:
        asked, happened_s = taken[place]
        sink.count = 100 + place
        sink.do(asked, ends_s, age_s=ends_s - happened_s, how="queued")
    return sink.state


@given(
    st.lists(st.tuples(observations, st.integers(1, 3000)), min_size=2, max_size=9, unique_by=lambda x: x[1]),
    st.randoms(use_true_random=False),
)
@settings(max_examples=60, deadline=None)
def test_any_order_of_delivery_converges(taken: list[tuple[Asked, float]], dice: object) -> None:
    """State, charges and the end advised now depend on what happened, not on when it was handed in."""
    order = list(range(len(taken)))
    first = by_name(taken, order, 3000)
    dice.shuffle(order)  # type: ignore[attr-defined]
    second = by_name(taken, order, 3000)
    assert without_told(second) == without_told(first)
    assert charges(second) == charges(first)
    for letter in "AB":
        assert advise_end(second, letter) == advise_end(first, letter)


@given(st.lists(st.tuples(observations, st.integers(1, 3000)), min_size=1, max_size=6), st.data())
@settings(max_examples=60, deadline=None)
def test_a_retimed_note_gives_what_the_right_note_would_have(
    taken: list[tuple[Asked, float]], data: st.DataObject
) -> None:
    """One note made at a wrong time and put right, against the same note at the right time."""
    place = data.draw(st.integers(0, len(taken) - 1))
    wrong_s = data.draw(st.integers(1, 3000))
    order = list(range(len(taken)))
    right = by_name(taken, order, 3000)
    sink = opened()
    for n, (asked, happened_s) in enumerate(taken):
        sink.count = 100 + n
        sink.do(asked, 3000, age_s=3000 - (wrong_s if n == place else happened_s), how="queued")
    sink.count = 200
    kind = taken[place][0]
    if isinstance(kind, HangFilm):
        return
    sink.do(RetimeNote(f"phone:{101 + place}/0", 3000 - taken[place][1]), 3000)
    assert without_told(sink.state) == without_told(right)
    assert charges(sink.state) == charges(right)


@given(steps, st.floats(2.5, 7200), st.booleans())
@settings(max_examples=40, deadline=None)
def test_a_clock_jump_within_a_boot_changes_nothing(
    taken: list[tuple[str | Asked, float, float]], jump_s: float, back: bool
) -> None:
    """One ClockDoubted, and every end, order and charge as without it."""
    plain, jumped = opened(), opened()
    seconds = 0.0
    jumped.wall_jump_s = -jump_s if back else jump_s
    for what, wait_s, age_s in taken:
        seconds += wait_s
        if isinstance(what, str):
            continue
        for sink in (plain, jumped):
            try:
                sink.do(what, seconds, age_s=age_s)
            except Refused:
                continue
    doubted = [one for one in jumped.run.events if isinstance(one.body, ClockDoubted)]
    assert len(doubted) == (1 if len(jumped.run.events) > 1 else 0)
    assert replace(jumped.state, clock_doubts=()) == plain.state
    assert charges(jumped.state) == charges(plain.state)


def test_a_plan_of_one_tankful_closes() -> None:
    """Once the film hangs there is one act left: to close."""
    sink = opened(plan("A"))
    sink.do(HangFilm("A"), 3000)
    view = sink_view(sink.state, at(3001))
    assert view.close is not None
    sink.do(view.close, 3002)
    assert sink_view(sink.state, at(3003)).closed
