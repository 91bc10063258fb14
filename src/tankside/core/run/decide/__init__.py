"""From a command and an instant to events, one file per family of commands."""

from __future__ import annotations

from typing import assert_never

from tankside.core.refusals import refuse
from tankside.core.run.commands import (
    AnswerDoubt,
    Asked,
    ChangePlan,
    ChangeWater,
    CloseRun,
    Command,
    ConfirmBottle,
    DrainBath,
    EndTankful,
    HangFilm,
    LoadTank,
    MarkRoll,
    NoteAgitation,
    Observation,
    OpenRun,
    PourBath,
    PrepareLiquid,
    PuttingRight,
    Request,
    RestateNote,
    RetimeNote,
    SettleClock,
    SkipBath,
    TakeReading,
    TimeTest,
    WithdrawNote,
    WriteNote,
)
from tankside.core.run.decide import pours, putting_right, readings, requests
from tankside.core.run.decide.clocks import clocks_parted
from tankside.core.run.decide.drafts import (
    Answer,
    AnswerCode,
    Decision,
    Draft,
    enveloped,
    is_fresh,
    letter_of,
    readable_age,
)
from tankside.core.run.instants import Instant
from tankside.core.run.replay import follow
from tankside.core.run.state import Run

__all__ = ["Answer", "Decision", "decide"]


def decide(run: Run | None, command: Command, now: Instant) -> Decision:
    """The rows that a command gives, and its answer; raises Refused where it is refused.

    Observations are recorded however late or odd; only what cannot be read, or names no tankful, is refused.
    """
    readable_age(command.age_s)
    if run is None:
        return _open(command, now)
    drafts = _drafts(run, command, now)
    first = enveloped(drafts, command, now, run=run.key, after_seq=run.last_seq)
    after = follow(run, first)
    more = readings.ends_to_tell(run, after, now, put_right=_puts_right(command.asked))
    more.extend(clocks_parted(run, now))
    told = enveloped(more, command, now, run=run.key, after_seq=after.last_seq, from_index=len(first))
    return Decision((*first, *told), _answer(after, command, first[0].id))


def _open(command: Command, now: Instant) -> Decision:
    asked = command.asked
    if not isinstance(asked, OpenRun) or command.run is None:
        raise refuse("no-run-open", ways_on=("open-run",))
    events = enveloped(requests.opening(asked), command, now, run=command.run, after_seq=0)
    return Decision(events, Answer("opened", events[0].id, events[0].happened.wall_us))


def _drafts(run: Run, command: Command, now: Instant) -> list[Draft]:
    asked = command.asked
    if isinstance(asked, Request):
        return _requested(run, asked, command.saw_seq)
    if isinstance(asked, PuttingRight):
        return _put_right(run, asked, now)
    at_us = run.state.timeline.at_us(now.before(seconds=command.age_s))
    return _observed(run, asked, at_us, fresh=is_fresh(command))


def _observed(  # noqa: C901, PLR0911 - one arm a command
    run: Run, asked: Observation, at_us: int, *, fresh: bool
) -> list[Draft]:
    match asked:
        case PourBath():
            return pours.pour(run, asked, at_us)
        case DrainBath():
            return pours.drain(run, asked, at_us, fresh=fresh)
        case ChangeWater():
            return pours.change_water(run, asked, at_us)
        case NoteAgitation():
            return pours.agitation(run, asked, at_us)
        case TakeReading():
            return readings.reading(run, asked)
        case TimeTest():
            return readings.timed(asked)
        case PrepareLiquid():
            return pours.prepare(asked)
        case LoadTank():
            return pours.load(run, asked)
        case HangFilm():
            return pours.hang(run, asked)
        case MarkRoll() | WriteNote():
            return pours.words(run, asked)
        case _:
            assert_never(asked)


def _put_right(run: Run, asked: PuttingRight, now: Instant) -> list[Draft]:
    match asked:
        case WithdrawNote():
            return putting_right.withdraw(run, asked)
        case RetimeNote():
            return putting_right.retime(run, asked, now)
        case RestateNote():
            return putting_right.restate(run, asked)
        case _:
            assert_never(asked)


def _requested(run: Run, asked: Request, saw_seq: int | None) -> list[Draft]:  # noqa: PLR0911 - one arm a command
    if run.state.closed is not None and not isinstance(asked, AnswerDoubt | SettleClock):
        raise refuse("run-closed", ways_on=("open-run",))
    requests.seen(run, saw_seq, _tankful_asked(asked))
    match asked:
        case OpenRun():
            raise refuse("already-open", ways_on=("look-again",))
        case ConfirmBottle():
            return requests.confirm(run, asked)
        case SkipBath():
            return requests.skip(run, asked)
        case ChangePlan():
            return requests.change_plan(run, asked)
        case EndTankful():
            return requests.end(run, asked)
        case CloseRun():
            return requests.close(run, asked)
        case AnswerDoubt():
            return requests.answer(run, asked)
        case SettleClock():
            return requests.settle_clock(run, asked)
        case _:
            assert_never(asked)


def _tankful_asked(asked: Request) -> str | None:
    match asked:
        case ConfirmBottle(bath=bath) | SkipBath(bath=bath):
            return letter_of(bath)
        case EndTankful(tankful=tankful):
            return tankful
        case _:
            return None


def _answer(after: Run, command: Command, first: str) -> Answer:
    """'Noted', or 'already noted' with the time of the note that was kept."""
    kept = after.settled.kept_for(first)
    about = kept or first
    at_us = next((note.at_us for note in reversed(after.settled.notes) if note.id == about), 0)
    return Answer("already-noted" if kept else _code(command.asked), about, at_us)


def _code(asked: Asked) -> AnswerCode:
    if isinstance(asked, PuttingRight):
        return "put-right"
    if isinstance(asked, Request):
        return "closed" if isinstance(asked, CloseRun) else "agreed"
    return "noted"


def _puts_right(asked: Asked) -> bool:
    return isinstance(asked, PuttingRight)
