"""What the log comes to once everything put right in it is put right: notes in the order they happened."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tankside.core.run.envelope import Event, How
from tankside.core.run.events import (
    AgitationNoted,
    BathDiscarded,
    BathDrained,
    BathPoured,
    BathReturned,
    Body,
    BottleConfirmed,
    ClockSettled,
    FilmHung,
    NoteRestated,
    NoteRetimed,
    NoteWithdrawn,
    TankLoaded,
    WaterChanged,
)
from tankside.core.run.instants import Instant, Timeline

SAME_ACT_US = 20_000_000
"""Two notes of one act closer than this are one act, noted twice."""


@dataclass(frozen=True, slots=True)
class Note:
    """One event after putting right; `at_us` on the run's timeline."""

    id: str
    seq: int
    at_us: int
    tankful: str | None
    body: Body
    how: How
    within_s: float
    put_right: bool = False


@dataclass(frozen=True, slots=True)
class Settled:
    """Notes by (happened, seq); `twice` maps each note left out to the one kept in its place."""

    notes: tuple[Note, ...]
    timeline: Timeline
    twice: tuple[tuple[str, str], ...] = ()

    def kept_for(self, event: str) -> str | None:
        """The note that was kept instead of `event`, None if it counts itself."""
        return dict(self.twice).get(event)


def settle(events: Sequence[Event]) -> Settled:
    """Apply withdrawals, new times and new words, sort by (happened, seq), keep the earliest of doubles."""
    withdrawn = _withdrawn(events)
    standing = [event for event in events if event.id not in withdrawn]
    timeline = _timeline(events, standing)
    times: dict[str, tuple[Instant, float]] = {}
    bodies: dict[str, Body] = {}
    for event in standing:
        match event.body:
            case NoteRetimed(about=about, happened=happened):
                times[about] = (happened, event.within_s)
            case NoteRestated(about=about, body=body):
                bodies[about] = body
            case _:
                pass
    notes = [
        _note(event, timeline, times, bodies)
        for event in standing
        if not isinstance(event.body, NoteWithdrawn | NoteRetimed | NoteRestated)
    ]
    notes.sort(key=lambda note: (note.at_us, note.seq))
    return _once_each(notes, timeline)


def act_of(tankful: str | None, body: Body) -> tuple[str, ...] | None:  # noqa: PLR0911 - one arm a kind
    """What makes two notes the same act; None for those that may come as often as they like."""
    match body:
        case BathPoured(bath=bath) | BathDrained(bath=bath):
            return (body.kind, bath)
        case BathReturned(bath=bath) | BathDiscarded(bath=bath):
            return ("fate", bath)
        case BottleConfirmed(bath=bath, bottle=bottle):
            return (body.kind, bath, bottle)
        case WaterChanged(bath=bath, n=n):
            return (body.kind, bath, str(n))
        case AgitationNoted(bath=bath, cycle=cycle):
            return (body.kind, bath, str(cycle))
        case FilmHung(roll=roll):
            return (body.kind, roll)
        case TankLoaded():
            return (body.kind, tankful or "")
        case _:
            return None


def _withdrawn(events: Iterable[Event]) -> set[str]:
    """Ids that were taken back; a withdrawal that is itself withdrawn takes nothing back."""
    gone: set[str] = set()
    for event in sorted(events, key=lambda one: -one.seq):
        if isinstance(event.body, NoteWithdrawn) and event.id not in gone:
            gone.add(event.body.about)
    return gone


def _timeline(events: Iterable[Event], standing: Iterable[Event]) -> Timeline:
    line = Timeline()
    for event in events:
        line = line.seeing(event.recorded)
    for event in standing:
        if isinstance(event.body, ClockSettled) and event.body.shift_s:
            line = line.shifted(event.body.boot, event.body.shift_s)
    return line


def _note(
    event: Event, line: Timeline, times: dict[str, tuple[Instant, float]], bodies: dict[str, Body]
) -> Note:
    happened, within_s = times.get(event.id, (event.happened, event.within_s))
    return Note(
        id=event.id,
        seq=event.seq,
        at_us=line.at_us(happened),
        tankful=event.tankful,
        body=bodies.get(event.id, event.body),
        how=event.how,
        within_s=within_s,
        put_right=event.id in times or event.id in bodies,
    )


def _once_each(notes: list[Note], line: Timeline) -> Settled:
    kept: list[Note] = []
    latest: dict[tuple[str, ...], Note] = {}
    twice: list[tuple[str, str]] = []
    for note in notes:
        act = act_of(note.tankful, note.body)
        before = latest.get(act) if act else None
        if before and note.at_us - before.at_us <= SAME_ACT_US:
            twice.append((note.id, before.id))
            continue
        if act:
            latest[act] = note
        kept.append(note)
    return Settled(tuple(kept), line, tuple(twice))
