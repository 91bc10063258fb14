"""A new note that points at an old one: nothing is edited or deleted."""

from __future__ import annotations

from tankside.core.refusals import refuse
from tankside.core.run.commands import RestateNote, RetimeNote, WithdrawNote
from tankside.core.run.decide.drafts import Draft, readable_age
from tankside.core.run.envelope import Event
from tankside.core.run.events import (
    ClockDoubted,
    NoteRestated,
    NoteRetimed,
    NoteWithdrawn,
    PlanAmended,
    RunOpened,
)
from tankside.core.run.instants import Instant
from tankside.core.run.state import Run


def withdraw(run: Run, asked: WithdrawNote) -> list[Draft]:
    """That did not happen; an opening, a change of plan or a doubted clock is not taken back."""
    about = _noted(run, asked.about)
    if isinstance(about.body, RunOpened | PlanAmended | ClockDoubted):
        raise refuse("not-withdrawn", kind=about.kind, ways_on=("change-plan",))
    return [Draft(NoteWithdrawn(asked.about, asked.why), about.tankful)]


def retime(run: Run, asked: RetimeNote, now: Instant) -> list[Draft]:
    """That happened at another time."""
    about = _noted(run, asked.about)
    readable_age(asked.happened_age_s)
    if isinstance(about.body, RunOpened | PlanAmended | ClockDoubted | NoteWithdrawn | NoteRetimed):
        raise refuse("not-retimed", kind=about.kind, ways_on=("withdraw",))
    happened = now.before(seconds=asked.happened_age_s)
    return [Draft(NoteRetimed(asked.about, happened, asked.why), about.tankful)]


def restate(run: Run, asked: RestateNote) -> list[Draft]:
    """That was really this; of the same kind, for the same tankful."""
    about = _noted(run, asked.about)
    if about.kind != asked.body.kind:
        raise refuse("another-kind", was=about.kind, body=asked.body.kind, ways_on=("withdraw",))
    return [Draft(NoteRestated(asked.about, asked.body, asked.why), about.tankful)]


def _noted(run: Run, about: str) -> Event:
    for event in run.events:
        if event.id == about:
            return event
    raise refuse("unknown-note", about=about, ways_on=("look-again",))
