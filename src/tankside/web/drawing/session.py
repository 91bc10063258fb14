"""A session on a clock: columns of baths with their words, and the lane of the hands beside them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from math import ceil, floor
from zoneinfo import ZoneInfo

from tankside.core.planning.acts import AGITATING, Act
from tankside.core.planning.timetable import Column as Tankful
from tankside.core.planning.timetable import Layer as Bath
from tankside.core.planning.timetable import Timetable
from tankside.web.drawing.graduation import Graduation, graduation
from tankside.web.drawing.kinds import BATH_NAMES, sign_of_bath
from tankside.web.drawing.leaders import Words, elbow, spread
from tankside.web.drawing.shapes import Box
from tankside.web.drawing.vessel import Column, Layer, column

TOP_PX = 40.0
LINE_PX = 19.0
LANE_PX = 12.0
FARTHEST_PX = 72.0


@dataclass(frozen=True, slots=True)
class Layout:
    """Where things stand across the picture, in pixels, and how many of them a minute is long."""

    minute_px: float
    first_px: float
    widest_px: float
    column_px: float
    lane_px: float
    width_px: float
    letter_px: float
    lane_words: bool

    def left(self, place: int, count: int) -> float:
        """Left wall of the `place`-th of `count` columns, as far apart as there is room."""
        return self.first_px + place * min(self.widest_px, (self.lane_px - 16 - self.first_px) / count)


NARROW = Layout(7.0, 82.0, 110.0, 26.0, 238.0, 320.0, 7.2, lane_words=False)
PHONE = Layout(7.0, 86.0, 128.0, 30.0, 308.0, 390.0, 7.2, lane_words=False)
LAPTOP = Layout(10.0, 97.0, 176.0, 40.0, 510.0, 770.0, 8.4, lane_words=True)


@dataclass(frozen=True, slots=True)
class Joined:
    """Words on a leader: a heavy first part, then lines under or behind it."""

    path: str
    x: float
    y: float
    strong: str
    rest: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class DrawnTankful:
    """One tankful's glass with its letter above and its baths' words beside it."""

    letter: str
    letter_x: float
    letter_y: float
    glass: Column
    words: tuple[Joined, ...]


@dataclass(frozen=True, slots=True)
class Lane:
    """Hands: blocks of work, short ticks for inversions, and what is said beside them."""

    x: float
    top: float
    bottom: float
    blocks: tuple[Box, ...]
    ticks: tuple[float, ...]
    words: tuple[Joined, ...]


@dataclass(frozen=True, slots=True)
class Session:
    """The whole picture; `scale` is the clock, its marks `TOP_PX` below the top."""

    width_px: float
    height_px: float
    top_px: float
    scale: Graduation
    tankfuls: tuple[DrawnTankful, ...]
    lane: Lane


@dataclass(frozen=True, slots=True)
class Said:
    """Something beside the lane of the hands at a moment: `strong` the clock, `rest` what is done."""

    at_s: float
    strong: str
    rest: tuple[str, ...] = ()
    rank: int = 0


Details = Callable[[str, Bath], tuple[str, ...]]


def session(
    timed: Timetable, *, zone: str, layout: Layout, details: Details, said: Sequence[Said]
) -> Session:
    """The picture of a timetable: `details` stand under a bath's name, `said` beside the lane."""
    clock = _Clock(timed, zone, layout.minute_px)
    glasses = [
        _glass(one, place, len(timed.columns), clock, layout) for place, one in enumerate(timed.columns)
    ]

    def told(tankful: Tankful) -> list[_Bath]:
        return [
            _Bath(
                clock.y(bath.start_s),
                clock.y(bath.end_s),
                BATH_NAMES[sign_of_bath(bath.bath)],
                details(tankful.letter, bath),
            )
            for bath in tankful.layers
        ]

    tankfuls = tuple(
        _tankful(one, glass, after, layout, told)
        for one, glass, after in zip(timed.columns, glasses, (*glasses[1:], None), strict=True)
    )
    bottom = TOP_PX + clock.scale.length_px
    lane = _lane(timed.acts, clock, layout, said, bottom)
    return Session(layout.width_px, bottom + 24, TOP_PX, clock.scale, tankfuls, lane)


class _Clock:
    """Seconds after the first pour to pixels, on a scale of the place's own wall clock."""

    def __init__(self, timed: Timetable, zone: str, minute_px: float) -> None:
        self._pour = timed.poured.astimezone(ZoneInfo(zone))
        begins = _minutes(timed.begins.astimezone(ZoneInfo(zone)), self._pour)
        ends = _minutes(timed.ends.astimezone(ZoneInfo(zone)), self._pour)
        low, high = floor(begins / 10) * 10, ceil(ends / 10) * 10
        self.scale = graduation(
            low=low, high=high, unit=1, length_px=(high - low) * minute_px, words=clock_words
        )

    def y(self, seconds: float) -> float:
        """Where a moment stands."""
        return TOP_PX + self.scale.at(_minutes(self._pour + timedelta(seconds=seconds), self._pour))


def clock_words(minutes: float) -> str:
    """Minutes since midnight as a clock reads, past midnight too.

    >>> clock_words(20 * 60 + 5), clock_words(24 * 60 + 10)
    ('20:05', '0:10')
    """
    hour, minute = divmod(int(minutes) % (24 * 60), 60)
    return f"{hour}:{minute:02d}"


def _minutes(moment: datetime, of_day: datetime) -> float:
    """Minutes since the midnight that began the day of `of_day`."""
    midnight = of_day.replace(hour=0, minute=0, second=0, microsecond=0)
    return (moment - midnight).total_seconds() / 60


def _glass(one: Tankful, place: int, count: int, clock: _Clock, layout: Layout) -> Column:
    """The glass of one tankful: a layer for each bath, one for each fill of a wash."""
    layers = [part for bath in one.layers for part in _parts(bath, clock)]
    left = layout.left(place, count)
    return column(layers, left=left, width_px=layout.column_px, minute_px=layout.minute_px)


def _tankful(one: Tankful, glass: Column, after: Column | None, layout: Layout, told: _Told) -> DrawnTankful:
    """A glass with its letter and words; words without room before the next one are dropped."""
    words = tuple(
        fitting
        for joined in _bath_words(told(one), glass)
        if (fitting := _fitting(joined, _room_to(joined.y, after, layout), layout.letter_px)) is not None
    )
    return DrawnTankful(one.letter, (glass.left + glass.right) / 2, glass.lip_px - 8, glass, words)


def _room_to(y: float, after: Column | None, layout: Layout) -> float:
    """How far words at `y` may reach: to the next glass where it stands beside them, else to the hands."""
    if after is not None and after.lip_px - 30 <= y <= after.foot.bottom + 10:
        return after.left - 8
    return layout.lane_px - LANE_PX


def _fitting(joined: Joined, limit_px: float, letter_px: float) -> Joined | None:
    """The words as far as they have room; a name that has none is dropped while its mark stays."""
    letters = (limit_px - joined.x) / letter_px
    if len(joined.strong) > letters:
        return None
    rest = joined.rest if all(len(line) <= letters + 1 for line in joined.rest) else ()
    return Joined(joined.path, joined.x, joined.y, joined.strong, rest)


def _parts(bath: Bath, clock: _Clock) -> Iterator[Layer]:
    """A bath as layers: a wash is one for each fill."""
    starts = bath.fills_s or (bath.start_s,)
    for start_s, end_s in zip(starts, (*starts[1:], bath.end_s), strict=True):
        yield Layer(sign_of_bath(bath.bath), clock.y(start_s), clock.y(end_s))


@dataclass(frozen=True, slots=True)
class _Bath:
    """A bath where it stands on the picture, with what is said of it."""

    from_px: float
    to_px: float
    name: str
    lines: tuple[str, ...]


_Told = Callable[[Tankful], Sequence[_Bath]]


def _bath_words(baths: Sequence[_Bath], glass: Column) -> Iterator[Joined]:
    """Name and details of each bath, on leaders out of the right wall."""
    wishes = [
        Words(
            one.from_px + min(12, (one.to_px - one.from_px) / 2),
            LINE_PX * (1 + len(one.lines)) + 4,
            rank=len(one.lines),
        )
        for one in baths
    ]
    placed = spread(wishes, top_px=0, bottom_px=baths[-1].to_px + 80)
    for leader, one in zip(placed, baths, strict=True):
        if leader.words_px is None:
            continue
        y = leader.words_px - LINE_PX * len(one.lines) / 2
        path = elbow(from_x=glass.right, from_y=leader.at_px, to_x=glass.right + 12, to_y=y)
        yield Joined(path, glass.right + 16, y + 5, one.name, one.lines)


def _lane(acts: Sequence[Act], clock: _Clock, layout: Layout, said: Sequence[Said], bottom: float) -> Lane:
    """Work as blocks, inversions as ticks, words pushed apart in their order."""
    x = layout.lane_px
    blocks = tuple(
        Box(
            x - LANE_PX / 2,
            clock.y(act.start_s),
            LANE_PX,
            max(clock.y(act.end_s) - clock.y(act.start_s), 2.5),
        )
        for act in acts
        if act.kind not in AGITATING
    )
    ticks = tuple(clock.y(act.start_s) for act in acts if act.kind in AGITATING)
    ordered = sorted(said, key=lambda one: one.at_s)
    heights = [LINE_PX * (1 if layout.lane_words else 1 + len(one.rest)) for one in ordered]
    wishes = [
        Words(clock.y(one.at_s), height + 2, one.rank) for one, height in zip(ordered, heights, strict=True)
    ]
    placed = spread(wishes, top_px=TOP_PX - 10, bottom_px=bottom + 20, farthest_px=FARTHEST_PX)
    gap = 26.0 if layout.lane_words else 10.0
    words = tuple(
        Joined(
            elbow(from_x=x + LANE_PX / 2, from_y=leader.at_px, to_x=x + gap, to_y=leader.words_px),
            x + gap + 4,
            leader.words_px + 5 - (height - LINE_PX) / 2,
            one.strong,
            one.rest,
        )
        for leader, one, height in zip(placed, ordered, heights, strict=True)
        if leader.words_px is not None
    )
    return Lane(x, TOP_PX, bottom, blocks, ticks, words)
