"""What the Plan page shows of a plan: its picture for phone and laptop, and the same as tables."""

from __future__ import annotations

from dataclasses import dataclass, replace
from zoneinfo import ZoneInfo

from tankside.core.planning.plan import Plan
from tankside.core.planning.timetable import Layer, Stretch, Timetable
from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.web.drawing.session import LAPTOP, NARROW, PHONE, Said, Session, session
from tankside.wording.timetable import Line, lines_of

ROOM_PX = 520.0
"""Height of the picture on a laptop that needs no scrolling."""

LONG_STRETCH_S = 240.0
"""A stretch without work has words on a phone from here on."""

WORTH_WORDS_S = 300.0
"""And on a laptop, where every act has its words: shorter ones are seen as gaps between them."""


@dataclass(frozen=True, slots=True)
class Row:
    """One act in the table of acts: clock, tankful, words."""

    clock: str
    tankful: str
    words: str


@dataclass(frozen=True, slots=True)
class Pictures:
    """The session as drawn for phones and for a laptop, and as rows of a table."""

    narrow: Session
    phone: Session
    laptop: Session
    rows: tuple[Row, ...]


def pictures(plan: Plan, timed: Timetable, preferences: Preferences) -> Pictures:
    """All three from one timetable."""
    lines = lines_of(timed.acts)
    zone = plan.place.zone

    def long(letter: str, bath: Layer) -> tuple[str, ...]:
        return _details(plan, letter, bath, preferences, joined=True)

    def short(letter: str, bath: Layer) -> tuple[str, ...]:
        return _details(plan, letter, bath, preferences, joined=False)

    laptop = replace(LAPTOP, minute_px=_minute_px(timed))
    brief = _said_on_phone(timed, zone)
    return Pictures(
        session(timed, zone=zone, layout=NARROW, details=short, said=brief),
        session(timed, zone=zone, layout=PHONE, details=short, said=brief),
        session(timed, zone=zone, layout=laptop, details=long, said=_said_on_laptop(lines, timed, zone)),
        tuple(Row(clock_at(timed, one.start_s, zone), one.tankful, one.words) for one in lines),
    )


def _minute_px(timed: Timetable) -> float:
    """Pixels of a minute, so that the evening stands on a laptop's screen if it can."""
    minutes = (timed.ends - timed.begins).total_seconds() / 60 + 10
    return max(6.0, min(12.0, ROOM_PX / minutes))


def clock_at(timed: Timetable, seconds: float, zone: str) -> str:
    """The clock of the place at `seconds` after the first pour."""
    moment = timed.clock(seconds).astimezone(ZoneInfo(zone))
    return f"{moment.hour}:{moment.minute:02d}"


def _details(
    plan: Plan, letter: str, bath: Layer, preferences: Preferences, *, joined: bool
) -> tuple[str, ...]:
    """What stands under the name of a bath: its time, and what the tank should read while it develops."""
    length = time_text(bath.end_s - bath.start_s)
    if bath.bath == "develop":
        reads = temperature_text(plan.tankful(letter).development.start_c, preferences)
        return (f"{length}, {reads}",) if joined else (length, reads)
    if bath.fills_s:
        return (f"{length}, {len(bath.fills_s)} fills",) if joined else (length,)
    return (length,) if bath.end_s - bath.start_s >= 120 or joined else ()


def _said_on_phone(timed: Timetable, zone: str) -> list[Said]:
    """The long stretches, the tightest moment and the end."""
    said = [
        Said(
            (one.start_s + one.end_s) / 2,
            "free" if one.kind == "free" else "inversions",
            (f"to {clock_at(timed, one.end_s, zone)}",),
        )
        for one in timed.stretches
        if one.end_s - one.start_s >= LONG_STRETCH_S
    ]
    ends = max(one.hung_s for one in timed.columns)
    return [*said, Said(ends, "done", (clock_at(timed, ends, zone),), rank=2)]


def _said_on_laptop(lines: tuple[Line, ...], timed: Timetable, zone: str) -> list[Said]:
    """Every act in words, and the long stretches between them."""
    several = len(timed.columns) > 1
    said = [
        Said(
            (one.start_s + one.end_s) / 2 if one.words.startswith("mix") else one.start_s,
            clock_at(timed, one.start_s, zone),
            (f"{one.tankful} {one.words}" if several else one.words,),
            rank=1,
        )
        for one in lines
    ]
    free = [
        Said(one.start_s + 60, "", (_said_stretch(one, timed, zone),))
        for one in timed.stretches
        if one.end_s - one.start_s >= WORTH_WORDS_S
    ]
    return [*said, *free]


def _said_stretch(stretch: Stretch, timed: Timetable, zone: str) -> str:
    """How long the hands are free, or wanted for inversions alone."""
    what = "free" if stretch.kind == "free" else "only inversions"
    return f"{what} until {clock_at(timed, stretch.end_s, zone)}"
