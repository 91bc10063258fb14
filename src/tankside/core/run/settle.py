"""What the log comes to once everything put right in it is put right: notes in the order they happened."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType

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
from tankside.core.run.instants import Timeline

SAME_ACT_US = 20_000_000
"""Two notes of one act closer than this are one act, noted twice."""

PUTS_RIGHT = (NoteWithdrawn, NoteRetimed, NoteRestated)
REACHES_BACK = (*PUTS_RIGHT, ClockSettled)
"""Bodies that change what was noted before them, so that a log is settled anew."""

ONCE: frozenset[type[Body]] = frozenset({
    BathPoured, BathDrained, BathReturned, BathDiscarded, BottleConfirmed,
    WaterChanged, AgitationNoted, FilmHung, TankLoaded,
})  # fmt: skip
"""Bodies of acts; all others may come as often as they like."""

Act = tuple[str, ...]


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
    twice: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))

    def kept_for(self, event: str) -> str | None:
        """The note that was kept instead of `event`, None if it counts itself."""
        return self.twice.get(event)


def settle(events: Sequence[Event]) -> Settled:
    """Apply withdrawals, new times and new words, sort by (happened, seq), keep the earliest of doubles."""
    back = [event for event in events if isinstance(event.body, REACHES_BACK)]
    withdrawn = taken_back(back)
    back = [event for event in back if event.id not in withdrawn]
    line = _timeline(events, back)
    times = {one.body.about: one for one in back if isinstance(one.body, NoteRetimed)}
    bodies = {one.body.about: one.body.body for one in back if isinstance(one.body, NoteRestated)}
    notes = [
        _put_right(event, line, times.get(event.id), bodies.get(event.id))
        if event.id in times or event.id in bodies
        else _as_noted(event, line)
        for event in events
        if event.id not in withdrawn and not isinstance(event.body, PUTS_RIGHT)
    ]
    notes.sort(key=_order)
    return _once_each(notes, line)


def settled_with(settled: Settled, more: Sequence[Event]) -> Settled | None:
    """The same with `more` events at its end; None where one of them is not the latest, or reaches back."""
    line = settled.timeline
    for event in more:
        if isinstance(event.body, REACHES_BACK) or event.recorded.boot not in line.offset_us:
            return None
    notes = sorted((_as_noted(event, line) for event in more), key=_order)
    if notes and settled.notes and _order(notes[0]) < _order(settled.notes[-1]):
        return None
    kept, twice = list(settled.notes), dict(settled.twice)
    for note in notes:
        before = _same_act(kept, note)
        if before is None:
            kept.append(note)
        else:
            twice[note.id] = before.id
    return Settled(tuple(kept), line, MappingProxyType(twice))


def taken_back(events: Iterable[Event]) -> set[str]:
    """Ids that were taken back; a withdrawal that is itself withdrawn takes nothing back."""
    gone: set[str] = set()
    for event in sorted(events, key=lambda one: -one.seq):
        if isinstance(event.body, NoteWithdrawn) and event.id not in gone:
            gone.add(event.body.about)
    return gone


def act_of(tankful: str | None, body: Body) -> Act | None:  # noqa: PLR0911 - one arm a kind
    """What makes two notes the same act; None for those that may come as often as they like."""
    if type(body) not in ONCE:
        return None
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


def _order(note: Note) -> tuple[int, int]:
    return (note.at_us, note.seq)


def _timeline(events: Iterable[Event], back: Iterable[Event]) -> Timeline:
    line = Timeline()
    for event in events:
        if event.recorded.boot not in line.offset_us:
            line = line.seeing(event.recorded)
    for event in back:
        if isinstance(event.body, ClockSettled) and event.body.shift_s:
            line = line.shifted(event.body.boot, event.body.shift_s)
    return line


def _as_noted(event: Event, line: Timeline) -> Note:
    at_us = line.at_us(event.happened)
    return Note(event.id, event.seq, at_us, event.tankful, event.body, event.how, event.within_s)


def _put_right(event: Event, line: Timeline, retimed: Event | None, body: Body | None) -> Note:
    """The note of an event that happened at another time, or was really something else."""
    note = replace(_as_noted(event, line), body=body or event.body, put_right=True)
    if retimed is None or not isinstance(retimed.body, NoteRetimed):
        return note
    return replace(note, at_us=line.at_us(retimed.body.happened), within_s=retimed.within_s)


def _once_each(notes: list[Note], line: Timeline) -> Settled:
    kept: list[Note] = []
    latest: dict[Act, Note] = {}
    twice: dict[str, str] = {}
    for note in notes:
        act = act_of(note.tankful, note.body)
        if act is not None:
            before = latest.get(act)
            if before and note.at_us - before.at_us <= SAME_ACT_US:
                twice[note.id] = before.id
                continue
            latest[act] = note
        kept.append(note)
    return Settled(tuple(kept), line, MappingProxyType(twice))


def _same_act(kept: Sequence[Note], note: Note) -> Note | None:
    """The same act, kept not long before `note`, which is the latest."""
    act = act_of(note.tankful, note.body)
    if act is None:
        return None
    for before in reversed(kept):
        if note.at_us - before.at_us > SAME_ACT_US:
            return None
        if act_of(before.tankful, before.body) == act:
            return before
    return None
