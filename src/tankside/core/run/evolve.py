"""One settled note moves the state; a state is the fold of its notes and holds no science."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import reduce

from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.core.run.events import (
    AgitationNoted,
    BathDiscarded,
    BathDrained,
    BathPoured,
    BathReturned,
    BathSkipped,
    BottleConfirmed,
    ClockDoubted,
    ClockSettled,
    DoubtAnswered,
    EndMoved,
    FilmHung,
    LiquidPrepared,
    NoteRestated,
    NoteRetimed,
    NoteWithdrawn,
    NoteWritten,
    PlanAmended,
    ReadingTaken,
    RollMarked,
    RunClosed,
    RunOpened,
    TankfulEnded,
    TankLoaded,
    TestTimed,
    WaterChanged,
)
from tankside.core.run.passes import changed, discarded, drained, poured, returned
from tankside.core.run.settle import Note, Settled
from tankside.core.run.state import (
    ClockDoubt,
    Confirmed,
    Cycle,
    Ended,
    Hung,
    Mark,
    Prepared,
    Reading,
    RunState,
    Skipped,
    TankfulState,
    Tested,
    Told,
    Written,
)

OF_SESSION = (ReadingTaken, LiquidPrepared, TestTimed, NoteWritten, RollMarked, DoubtAnswered)
"""Bodies that are kept with the session even where they name a tankful."""


def fold(settled: Settled) -> RunState:
    """The state after all the notes of a log; ValueError if it does not begin with an opening."""
    opening = next((note for note in settled.notes if isinstance(note.body, RunOpened)), None)
    if opening is None:
        raise ValueError("a run's log begins with its opening")
    rest = (note for note in settled.notes if note is not opening)
    return reduce(evolve, rest, opened(opening, settled))


def opened(note: Note, settled: Settled) -> RunState:
    """The state that an opening leaves."""
    body = note.body
    if not isinstance(body, RunOpened):
        raise TypeError(body.kind)
    return RunState(
        plan=body.plan,
        plan_no=body.plan.number,
        zone=body.zone,
        opened=_mark(note),
        timeline=settled.timeline,
        bench=body.bench,
        tankfuls=tuple(TankfulState(one) for one in body.plan.tankfuls),
    )


def evolve(state: RunState, note: Note) -> RunState:
    """The state after one more note, which is the latest."""
    if note.tankful is None or isinstance(note.body, OF_SESSION):
        return _session(state, note)
    return _in_tankful(state, note.tankful, lambda one: _tankful(one, note, state))


def _session(state: RunState, note: Note) -> RunState:  # noqa: C901, PLR0911 - one arm a kind
    mark = _mark(note)
    match note.body:
        case PlanAmended(plan=plan):
            return _amended(state, plan)
        case ReadingTaken() as body:
            return replace(state, readings=(*state.readings, Reading(mark, body)))
        case LiquidPrepared() as body:
            return replace(state, prepared=(*state.prepared, Prepared(mark, body)))
        case TestTimed() as body:
            return replace(state, tests=(*state.tests, Tested(mark, body)))
        case NoteWritten(text=text):
            return replace(state, written=(*state.written, Written(mark, note.tankful or "", text)))
        case RollMarked(roll=roll, mark=text):
            return replace(state, written=(*state.written, Written(mark, roll, text)))
        case DoubtAnswered(about=about, answer=answer):
            return replace(state, answered=(*state.answered, (about, answer)))
        case RunClosed(how=how):
            return replace(state, closed=how)
        case ClockDoubted() as body:
            doubt = ClockDoubt(mark, body.boot, body.by_s, body.across)
            return replace(state, clock_doubts=(*state.clock_doubts, doubt))
        case ClockSettled(boot=boot):
            settled = tuple(
                replace(one, settled=True) if one.boot == boot else one for one in state.clock_doubts
            )
            return replace(state, clock_doubts=settled)
        case _:
            raise TypeError(f"{note.body.kind} needs a tankful")


def _tankful(one: TankfulState, note: Note, state: RunState) -> TankfulState:  # noqa: C901, PLR0911, PLR0912
    mark = _mark(note)
    match note.body:
        case TankLoaded(rolls=rolls):
            return replace(one, loaded=rolls)
        case BottleConfirmed(bath=bath, bottle=bottle):
            return _confirmed(one, Confirmed(bath, bottle, mark))
        case BathPoured() as body:
            after_pour = replace(one, passes=poured(one.passes, body, mark, state.plan_no))
            if body.bottle is None:
                return after_pour
            return _confirmed(after_pour, Confirmed(body.bath, body.bottle, mark))
        case BathDrained(bath=bath):
            return drained(one, bath, mark, state.plan_no)
        case BathReturned() as body:
            return returned(one, body, mark)
        case BathDiscarded() as body:
            return discarded(one, body, mark)
        case WaterChanged() as body:
            return changed(one, body, mark, state.plan_no)
        case AgitationNoted(bath=bath, cycle=cycle, done=done):
            return replace(one, cycles=(*one.cycles, Cycle(bath, cycle, done, mark)))
        case EndMoved() as body:
            return replace(one, told=(*one.told, _told(body, mark)))
        case BathSkipped(bath=bath, why=why):
            return replace(one, skipped=(*one.skipped, Skipped(bath, why, mark)))
        case FilmHung(roll=roll, place=place):
            return replace(one, hung=(*one.hung, Hung(roll, place, mark)))
        case TankfulEnded(outcome=outcome):
            return replace(one, ended=Ended(outcome, mark))
        case NoteWithdrawn() | NoteRetimed() | NoteRestated():
            raise TypeError(f"{note.body.kind} is settled before it is folded")
        case _:
            raise TypeError(f"{note.body.kind} belongs to the session")


def _confirmed(one: TankfulState, new: Confirmed) -> TankfulState:
    """A bottle is confirmed once for each pour: at measuring, at the latest by the pour itself."""
    for before in one.confirmed:
        same = (before.bath, before.bottle) == (new.bath, new.bottle)
        used = any(
            there.bath == new.bath and before.mark.at_us <= there.poured.at_us < new.mark.at_us
            for there in one.passes
        )
        if same and not used:
            return one
    return replace(one, confirmed=(*one.confirmed, new))


def _told(body: EndMoved, mark: Mark) -> Told:
    return Told(body.bath, mark, body.end_after_s, body.interval_s, body.because, body.model)


def _amended(state: RunState, plan: Plan) -> RunState:
    """Tankfuls keep what happened to them; one that the new plan leaves out stays only if it has begun."""
    before = {one.letter: one for one in state.tankfuls}
    planned = {one.letter for one in plan.tankfuls}
    kept = tuple(
        _replanned(before[one.letter], one) if one.letter in before else TankfulState(one)
        for one in plan.tankfuls
    )
    begun = tuple(one for one in state.tankfuls if one.letter not in planned and one.passes)
    return replace(state, plan=plan, plan_no=plan.number, tankfuls=(*kept, *begun))


def _replanned(one: TankfulState, plan: PlannedTankful) -> TankfulState:
    planned = {bath.id for bath in plan.baths}
    former = tuple(bath for bath in (*one.former, *one.plan.baths) if bath.id not in planned)
    return replace(one, plan=plan, former=former)


def _in_tankful(state: RunState, letter: str, change: Callable[[TankfulState], TankfulState]) -> RunState:
    """One tankful changed; a note about a tankful that the plan of its time did not hold changes nothing."""
    return replace(
        state,
        tankfuls=tuple(change(one) if one.letter == letter else one for one in state.tankfuls),
    )


def _mark(note: Note) -> Mark:
    return Mark(note.id, note.at_us, note.within_s)


def after(state: RunState, notes: Iterable[Note]) -> RunState:
    """The state after several notes, each later than all before."""
    return reduce(evolve, notes, state)
