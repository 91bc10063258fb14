"""A new note that points at an old one: nothing is edited or deleted."""

from __future__ import annotations

from tankside.core.refusals import refuse
from tankside.core.run.commands import RestateNote, RetimeNote, WithdrawNote
from tankside.core.run.decide.drafts import Draft, readable_age
from tankside.core.run.envelope import Event
from tankside.core.run.events import (
    BathDiscarded,
    BathDrained,
    BathPoured,
    BathReturned,
    BottleConfirmed,
    ClockDoubted,
    NoteRestated,
    NoteRetimed,
    NoteWithdrawn,
    PlanAmended,
    RunOpened,
)
from tankside.core.run.instants import Instant
from tankside.core.run.state import Run

BESIDE = {
    BathPoured.kind: (BottleConfirmed.kind,),
    BathDrained.kind: (BathReturned.kind, BathDiscarded.kind),
}
"""What comes with a note of that kind, and goes with it where it is put right."""


def withdraw(run: Run, asked: WithdrawNote) -> list[Draft]:
    """That did not happen; an opening, a change of plan or a doubted clock is not taken back."""
    about = _noted(run, asked.about)
    if isinstance(about.body, RunOpened | PlanAmended | ClockDoubted):
        raise refuse("not-withdrawn", kind=about.kind, ways_on=("change-plan",))
    return [Draft(NoteWithdrawn(one.id, asked.why), one.tankful) for one in (about, *_with_it(run, about))]


def retime(run: Run, asked: RetimeNote, now: Instant) -> list[Draft]:
    """That happened at another time."""
    about = _noted(run, asked.about)
    readable_age(asked.happened_age_s)
    if isinstance(about.body, RunOpened | PlanAmended | ClockDoubted | NoteWithdrawn | NoteRetimed):
        raise refuse("not-retimed", kind=about.kind, ways_on=("withdraw",))
    happened = now.before(seconds=asked.happened_age_s)
    return [
        Draft(NoteRetimed(one.id, happened, asked.why), one.tankful) for one in (about, *_with_it(run, about))
    ]


def restate(run: Run, asked: RestateNote) -> list[Draft]:
    """That was really this; of the same kind, for the same tankful."""
    about = _noted(run, asked.about)
    if about.kind != asked.body.kind:
        raise refuse("another-kind", was=about.kind, body=asked.body.kind, ways_on=("withdraw",))
    return [Draft(NoteRestated(asked.about, asked.body, asked.why), about.tankful)]


def _with_it(run: Run, about: Event) -> list[Event]:
    """What the same command noted beside it: a pour's confirming, a drain's return."""
    command, _, place = about.id.rpartition("/")
    if place != "0":
        return []
    return [
        one
        for one in run.events
        if one.id.startswith(f"{command}/")
        and one.kind in BESIDE.get(about.kind, ())
        and one.happened == about.happened
    ]


def _noted(run: Run, about: str) -> Event:
    for event in run.events:
        if event.id == about:
            return event
    raise refuse("unknown-note", about=about, ways_on=("look-again",))
