"""Settled notes move the state; a state is the fold of its notes and holds no science."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

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
from tankside.core.run.passes import moved
from tankside.core.run.settle import Note, Settled
from tankside.core.run.state import (
    ClockDoubt,
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
    return after(opened(opening, settled), rest)


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


def after(state: RunState, notes: Iterable[Note]) -> RunState:
    """The state after several notes, each later than all before.

    Between two plans what happens to the session and to each tankful is apart, so that each is folded in one
    go: a thousand readings make one new tuple, not a thousand.
    """
    apart: dict[str | None, list[Note]] = {}
    for note in notes:
        if isinstance(note.body, PlanAmended):
            state = _amended(_folded(state, apart), note.body.plan)
            apart = {}
        else:
            letter = None if isinstance(note.body, OF_SESSION) else note.tankful
            apart.setdefault(letter, []).append(note)
    return _folded(state, apart)


def _folded(state: RunState, apart: Mapping[str | None, Sequence[Note]]) -> RunState:
    """Each tankful with its notes; one that the plan of its time did not hold is not changed by any."""
    if not apart:
        return state
    tankfuls = tuple(
        _tankful(one, apart[one.letter], state.plan_no) if one.letter in apart else one
        for one in state.tankfuls
    )
    return _session(replace(state, tankfuls=tankfuls), apart.get(None, ()))


def _session(state: RunState, notes: Sequence[Note]) -> RunState:  # noqa: C901 - one arm a kind
    """What is noted of the session is kept in order of time, each kind by itself."""
    readings, prepared, tests, written = (
        list[Reading](), list[Prepared](), list[Tested](), list[Written]()
    )  # fmt: skip
    answered, clocks, closed = list[tuple[str, str]](), list(state.clock_doubts), state.closed
    settled = set(state.clocks_settled)
    for note in notes:
        match note.body:
            case ReadingTaken() as body:
                readings.append(Reading(_mark(note), body))
            case LiquidPrepared() as body:
                prepared.append(Prepared(_mark(note), body))
            case TestTimed() as body:
                tests.append(Tested(_mark(note), body))
            case NoteWritten(text=text):
                written.append(Written(_mark(note), note.tankful or "", text))
            case RollMarked(roll=roll, mark=text):
                written.append(Written(_mark(note), roll, text))
            case DoubtAnswered(about=about, answer=answer):
                answered.append((about, answer))
            case RunClosed(how=how):
                closed = how
            case ClockDoubted() as body:
                clocks.append(ClockDoubt(_mark(note), body.boot, body.by_s, body.across))
            case ClockSettled(settles=events):
                settled |= set(events)
            case _:
                raise TypeError(f"{note.body.kind} needs a tankful")
    return replace(
        state,
        readings=(*state.readings, *readings),
        prepared=(*state.prepared, *prepared),
        tests=(*state.tests, *tests),
        written=(*state.written, *written),
        answered=(*state.answered, *answered),
        clock_doubts=tuple(replace(one, settled=one.mark.event in settled) for one in clocks),
        clocks_settled=frozenset(settled),
        closed=closed,
    )


def _tankful(one: TankfulState, notes: Sequence[Note], plan_no: int) -> TankfulState:
    """What is noted of one tankful: baths move one after the other, the rest is kept in order of time."""
    cycles, told, skipped, hung = list[Cycle](), list[Told](), list[Skipped](), list[Hung]()
    loaded, ended = one.loaded, one.ended
    for note in notes:
        match note.body:
            case AgitationNoted(bath=bath, cycle=cycle, done=done):
                cycles.append(Cycle(bath, cycle, done, _mark(note)))
            case TankLoaded(rolls=rolls):
                loaded = rolls
            case EndMoved() as body:
                told.append(_told(body, _mark(note)))
            case BathSkipped(bath=bath, why=why):
                skipped.append(Skipped(bath, why, _mark(note)))
            case FilmHung(roll=roll, place=place):
                hung.append(Hung(roll, place, _mark(note)))
            case TankfulEnded(outcome=outcome):
                ended = Ended(outcome, _mark(note))
            case (
                BottleConfirmed() | BathPoured() | BathDrained() | BathReturned() | BathDiscarded()
                | WaterChanged() as body
            ):  # fmt: skip
                one = moved(one, body, _mark(note), plan_no)
            case NoteWithdrawn() | NoteRetimed() | NoteRestated():
                raise TypeError(f"{note.body.kind} is settled before it is folded")
            case _:
                raise TypeError(f"{note.body.kind} belongs to the session")
    return replace(
        one,
        loaded=loaded,
        cycles=(*one.cycles, *cycles),
        told=(*one.told, *told),
        skipped=(*one.skipped, *skipped),
        hung=(*one.hung, *hung),
        ended=ended,
    )


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


def _mark(note: Note) -> Mark:
    return Mark(note.id, note.at_us, note.within_s)
