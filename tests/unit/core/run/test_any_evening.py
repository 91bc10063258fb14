"""The laws of the live run, held after every step of evenings that go any way they like."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule
from unit.core.run.any_evening import Choice, Evening, Log
from unit.core.run.evening import BENCH, DEVELOPER, FIXER, STOP, plan

from tankside.core.development.advice import worth_telling
from tankside.core.run.charges import charges, difference
from tankside.core.run.commands import (
    Asked,
    ChangeWater,
    CloseRun,
    Command,
    ConfirmBottle,
    DrainBath,
    EndTankful,
    HangFilm,
    NoteAgitation,
    PourBath,
    RestateNote,
    RetimeNote,
    SettleClock,
    SkipBath,
    TakeReading,
    WithdrawNote,
)
from tankside.core.run.cue_script import cue_script
from tankside.core.run.events import (
    BathPoured,
    ClockDoubted,
    ClockSettled,
    EndMoved,
    ReadingTaken,
    RunOpened,
)
from tankside.core.run.progress import progress
from tankside.core.run.replay import follow, replay
from tankside.core.run.sink_view import SinkView, sink_view
from tankside.core.run.state import Run, RunState

BATHS = [f"{letter}.{kind}" for letter in "AB" for kind in ("develop", "stop", "fix", "wash", "wetting")]
BOTTLES = [None, None, DEVELOPER, STOP, FIXER]
LIQUID = [bath for bath in BATHS if not bath.endswith("wash")]
HOMES = [None, "drain", STOP, FIXER, DEVELOPER]

observations: st.SearchStrategy[Asked] = st.one_of(
    st.builds(PourBath, st.sampled_from(BATHS), st.sampled_from(BOTTLES), st.sampled_from([None, 300.0])),
    st.builds(DrainBath, st.sampled_from(LIQUID), st.sampled_from(HOMES), st.just(True)),
    st.builds(ChangeWater, st.sampled_from(["A.wash", "B.wash"]), st.sampled_from([None, 1, 2, 4])),
    st.builds(NoteAgitation, st.sampled_from(["A.develop", "B.fix"]), st.integers(0, 5), st.booleans()),
    st.builds(TakeReading, st.just("tank"), st.sampled_from("AB"), st.floats(15, 25)),
    st.builds(TakeReading, st.just("room"), st.just(""), st.floats(10, 30)),
    st.builds(HangFilm, st.sampled_from("AB")),
)
requests: st.SearchStrategy[Asked] = st.one_of(
    st.builds(ConfirmBottle, st.sampled_from(["A.stop", "B.fix"]), st.sampled_from([STOP, FIXER])),
    st.builds(SkipBath, st.sampled_from(["A.stop", "B.wetting"]), st.just("out of it")),
    st.builds(EndTankful, st.sampled_from("AB"), st.sampled_from(["given up", "image lost"])),
    st.just(CloseRun("broken off")),
)
screens = st.sampled_from(["phone", "desk"])
ages = st.sampled_from([0.0, 0.0, 3.0, 15.0, 60.0, 400.0])


def main_of(place: int, view: SinkView) -> Asked | None:
    """What the button of that tankful would send; the first tankful is the one that needs hands next."""
    mains = [one.main for one in view.tankfuls if one.main is not None]
    if not mains:
        return view.close
    return mains[min(place, len(mains) - 1)].asked


def pointed_at(run: Run, back: int, asked: str, age_s: float) -> Asked | None:
    """A putting right of one of the notes, counted from the last, that both runs know by the same id."""
    noted = [one for one in run.events[1:] if not isinstance(one.body, ClockDoubted | ClockSettled)]
    if not noted:
        return None
    about = noted[-1 - back % len(noted)]
    if asked == "withdraw":
        return WithdrawNote(about.id)
    if asked == "retime":
        return RetimeNote(about.id, age_s)
    if isinstance(about.body, BathPoured):
        return RestateNote(about.id, replace(about.body, ml=200.0))
    if isinstance(about.body, ReadingTaken):
        return RestateNote(about.id, replace(about.body, raw_c=21.0))
    return None


def always(asked: Asked) -> Choice:
    """A hand that sends this, whatever the screen shows."""
    return lambda _run, _view: asked


class AnyEvening(RuleBasedStateMachine):
    """Taps, double taps, putting right, wrong bottles, readings, jumping clocks, late notes, restarts."""

    def __init__(self) -> None:
        super().__init__()
        self.evening = Evening()
        self.before: tuple[Run, Run] = (self.evening.noted.run, self.evening.steady.run)

    @initialize(begun=st.sampled_from([(), ("A",), ("A", "B")]))
    def begin(self, begun: tuple[str, ...]) -> None:
        """Developer is in no tank yet, in one, or in both."""
        for letter in begun:
            assert self.evening.do(always(PourBath(f"{letter}.develop"))) is None
            self.evening.machine.seconds += 30.0

    @rule(letter=st.sampled_from("AB"), raw_c=st.sampled_from([18.0, 19.0, 19.8, 20.1, 21.0]))
    def read(self, letter: str, raw_c: float) -> None:
        """A thermometer in the tank, near what was expected or not."""
        assert self.evening.do(always(TakeReading("tank", letter, raw_c))) is None

    @rule(wait_s=st.sampled_from([0.3, 5.0, 30.0, 61.0, 300.0, 570.0, 2000.0]))
    def wait(self, wait_s: float) -> None:
        """Time goes by."""
        self.evening.machine.seconds += wait_s

    @rule(place=st.integers(0, 1), screen=screens, twice=st.booleans())
    def press(self, place: int, screen: str, twice: bool) -> None:
        """The main act is never refused; a second touch 0.3 s later sends what the screen showed before."""
        if self.evening.noted.run.state.closed is not None:
            return
        shown = main_of(place, self.evening.views()[0])
        assert self.evening.do(lambda _, view: main_of(place, view), screen=screen) is None
        if twice and shown is not None and not isinstance(shown, CloseRun):
            self.evening.machine.seconds += 0.3
            self.evening.do(always(shown), screen=screen)

    @rule(asked=observations, age_s=ages, screen=screens)
    def note(self, asked: Asked, age_s: float, screen: str) -> None:
        """Whatever happened is recorded, however odd."""
        assert self.evening.do(always(asked), age_s=age_s, screen=screen) is None

    @rule(asked=requests, screen=screens)
    def ask(self, asked: Asked, screen: str) -> None:
        """A request may be refused; then nothing has changed."""
        before = self.evening.noted.run
        if self.evening.do(always(asked), screen=screen) is not None:
            assert before == self.evening.noted.run

    @rule(back=st.integers(0, 6), how=st.sampled_from(["withdraw", "retime", "restate"]), age_s=ages)
    def put_right(self, back: int, how: str, age_s: float) -> None:
        """Something noted is taken back, moved or said otherwise."""
        self.evening.do(lambda run, _view: pointed_at(run, back, how, age_s))

    @rule()
    def best(self) -> None:
        """What is best now, where something went otherwise."""
        self.evening.do(lambda _, view: next((one.best for one in view.consequences if one.best), None))

    @rule(place=st.integers(0, 1))
    def answer(self, place: int) -> None:
        """The first doubt that both have is answered."""

        def way(_run: Run, view: SinkView) -> Asked | None:
            open_ones = [one for one in view.doubts if one.code not in ("clock", "clock-across") and one.ways]
            return open_ones[0].ways[min(place, len(open_ones[0].ways) - 1)].asked if open_ones else None

        self.evening.do(way)

    @rule(asked=observations, screen=screens, main=st.booleans())
    def note_offline(self, asked: Asked, screen: str, main: bool) -> None:
        """A screen without its server keeps what was touched."""
        shown = main_of(0, self.evening.views()[0]) if main else asked
        if shown is not None and not isinstance(shown, ConfirmBottle | EndTankful | CloseRun):
            self.evening.queues[screen].append((shown, self.evening.machine.seconds))

    @precondition(lambda self: any(self.evening.queues.values()))
    @rule(screen=screens, backwards=st.booleans())
    def deliver(self, screen: str, backwards: bool) -> None:
        """The queue of a screen goes up, late, in order or not; nothing that happened is refused."""
        queue, self.evening.queues[screen] = self.evening.queues[screen], []
        for asked, happened_s in reversed(queue) if backwards else queue:
            age_s = self.evening.machine.seconds - happened_s
            assert self.evening.do(always(asked), age_s=age_s, screen=screen, late=True) is None

    @rule(by_s=st.sampled_from([-7200.0, -30.0, -2.5, 2.5, 45.0, 3600.0]))
    def jump(self, by_s: float) -> None:
        """Somebody sets the wall clock."""
        self.evening.machine.wall_ahead_s += by_s

    @rule(down_s=st.sampled_from([0.0, 20.0, 400.0]), lost=st.booleans())
    def restart(self, down_s: float, lost: bool) -> None:
        """The machine comes up anew and reads its log; the clock may come up wrong."""
        machine = self.evening.machine
        machine.seconds += down_s
        machine.boot += 1
        machine.booted_s = machine.seconds
        machine.wall_ahead_s -= 3600.0 if lost else 0.0
        for log in (self.evening.noted, self.evening.steady):
            log.run = replay(log.run.events)

    @rule()
    def settle_clock(self) -> None:
        """The elapsed clock was right: where the clocks parted within a boot nothing moves."""
        noted, now = self.evening.noted, self.evening.machine.now()
        parted = [one for one in noted.run.state.clock_doubts if not (one.settled or one.across)]
        if parted and now.boot in self.evening.steady.run.state.timeline.offset_us:
            self.evening.count += 1
            asked = SettleClock("elapsed", parted[0].mark.event)
            noted.take(Command(f"phone:{self.evening.count}", asked, "phone"), now)

    # -- the laws ------------------------------------------------------------------------------------------

    @invariant()
    def laws(self) -> None:
        """Each law of the run, in its order."""
        was, self.before = self.before, (self.evening.noted.run, self.evening.steady.run)
        for log, before in zip((self.evening.noted, self.evening.steady), was, strict=True):
            self.one_log_only_grows(before, log.run)
            self.replay_equals_live(before, log.run)
            self.the_ledger_follows(log)
            self.an_end_moves_only_by_enough(before, log.run)
        self.looking_changes_nothing()
        self.there_is_a_next_act()
        self.a_jump_changes_nothing()

    def one_log_only_grows(self, before: Run, run: Run) -> None:
        """Laws 1, 5 and 7: rows are added at the end, the plan stands in the first, tankfuls are named."""
        assert before.events == run.events[: len(before.events)]
        assert list(range(1, run.last_seq + 1)) == [one.seq for one in run.events]
        assert len({one.id for one in run.events}) == len(run.events)
        first = run.events[0].body
        assert isinstance(first, RunOpened)
        assert plan() == first.plan
        for one in run.events:
            bath = getattr(one.body, "bath", None)
            assert bath is None or one.tankful == bath.partition(".")[0]

    def replay_equals_live(self, before: Run, run: Run) -> None:
        """Laws 3 and 4: the log alone gives the run back, whole or from where it stood."""
        if before is not run:
            assert replay(run.events) == run
            assert follow(replay(before.events), run.events[before.last_seq :]) == run

    def the_ledger_follows(self, log: Log) -> None:
        """Law 8: what is booked is what is owed, and no bottle holds less than nothing."""
        owed = charges(log.run.state)
        assert difference(owed, log.booked) == ()
        for bottle in BENCH:
            assert bottle.ml is not None
            held_ml = bottle.ml
            for one in owed:
                if one.line.bottle == bottle.code:
                    held_ml += one.line.ml
                    assert held_ml >= -1e-9
                    assert one.line.area_units >= 0

    def an_end_moves_only_by_enough(self, before: Run, run: Run) -> None:
        """Law 12: a reading tells another end only if that is 10 s and 3 % or more from the one told last."""
        for event in run.events[before.last_seq :]:
            if isinstance(event.body, EndMoved) and event.body.because == "reading":
                told_s = before.state.tankful(event.tankful or "").told_end_s(event.body.bath)
                assert abs(event.body.end_after_s - told_s) >= 9.5
                assert worth_telling(event.body.end_after_s, told_s=told_s) or (
                    abs(event.body.end_after_s - told_s) >= 0.03 * told_s - 0.5
                )

    def looking_changes_nothing(self) -> None:
        """Law 6: the same look twice is the same, and the run is as it was."""
        run, now = self.evening.noted.run, self.evening.machine.now()
        assert sink_view(run.state, now) == self.evening.views()[0]
        assert progress(run.state, now) == progress(run.state, now)
        assert run is self.evening.noted.run

    def there_is_a_next_act(self) -> None:
        """Laws 9 and 11: every tankful that is not done has its act, every cue its own name and its times."""
        view, _ = self.evening.views()
        for one in view.tankfuls:
            assert (one.main is None) == (one.stage == "done")
        if not view.closed:
            assert main_of(0, view) is not None
        script = cue_script(self.evening.noted.run.state)
        assert len({cue.id for cue in script.cues}) == len(script.cues)
        for cue in script.cues:
            assert cue.least_s <= cue.after_s + 1e-9
            assert cue.most_s is None or cue.after_s <= cue.most_s + 1e-9

    def a_jump_changes_nothing(self) -> None:
        """Law 10: but for the doubt the state is the same, and so is every act on the screen."""
        noted, steady = self.evening.noted.run, self.evening.steady.run
        assert clockless(steady.state) == clockless(noted.state)
        assert charges(steady.state) == charges(noted.state)
        here, there = self.evening.views()
        if self.evening.machine.now().boot in noted.state.timeline.offset_us:
            assert there.tankfuls == here.tankfuls
            assert there.consequences == here.consequences


def clockless(state: RunState) -> RunState:
    """A state without the doubts of clocks; what is asked about them does depend on them."""
    return replace(state, clock_doubts=(), clocks_settled=frozenset())


TestAnyEvening = pytest.mark.filterwarnings("error")(AnyEvening.TestCase)
TestAnyEvening.settings = settings(max_examples=15, stateful_step_count=25, deadline=None)
