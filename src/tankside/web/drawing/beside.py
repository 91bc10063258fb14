"""Planned and happened as two columns of glass on one clock, temperature across, what differed in words."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from tankside.core.review.beside import Beside, Stay
from tankside.web.drawing.graduation import Graduation, graduation
from tankside.web.drawing.heat import DrawnHeat, Warm, drawn_heat
from tankside.web.drawing.kinds import BATH_NAMES, sign_of_bath
from tankside.web.drawing.leaders import Words, elbow, spread
from tankside.web.drawing.session import clock_words
from tankside.web.drawing.shapes import Box
from tankside.web.drawing.vessel import Column, Layer, column

LINE_PX = 21.0
BATH_LINE_PX = 18.0
TOP_PX = 64.0
BEAD_PX = 9.0
FARTHEST_PX = 120.0


@dataclass(frozen=True, slots=True)
class Layout:
    """Where things stand across the picture, in pixels; None where there is no room for it."""

    planned_px: float
    happened_px: float
    glass_px: float
    heat_px: tuple[float, float] | None
    words_px: float | None
    width_px: float
    letters: int
    tallest_px: float
    bath_words: bool


PHONE = Layout(74.0, 124.0, 30.0, (170.0, 258.0), None, 288.0, 0, 560.0, bath_words=False)
LAPTOP = Layout(164.0, 254.0, 42.0, (402.0, 632.0), 690.0, 1032.0, 42, 640.0, bath_words=True)


@dataclass(frozen=True, slots=True)
class Said:
    """Words at a moment, `at_s` after the first pour: `head` is heavy; a higher `rank` is kept longer."""

    at_s: float
    head: str
    rest: str = ""
    rank: int = 1


@dataclass(frozen=True, slots=True)
class Line:
    """One line of words; its first `heavy` letters are heavy."""

    y: float
    heavy: str
    plain: str


@dataclass(frozen=True, slots=True)
class Block:
    """Words on their leader, with the dotted line from the glass to it."""

    at_px: float
    path: str
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class BathWords:
    """Name and length of a bath beside its glass."""

    path: str
    x: float
    y: float
    anchor: str
    name: str
    length: str


@dataclass(frozen=True, slots=True)
class Bead:
    """An inversion on the stripe of what happened, done or missed."""

    box: Box
    done: bool


@dataclass(frozen=True, slots=True)
class Picture:
    """The whole picture; `piece(at_s)` is the part of both glasses about a moment."""

    width_px: float
    height_px: float
    top_px: float
    scale: Graduation
    planned: Column
    happened: Column
    joints: tuple[str, ...]
    beads: tuple[Bead, ...]
    baths: tuple[BathWords, ...]
    heat: DrawnHeat | None
    blocks: tuple[Block, ...]
    dotted_px: tuple[float, float]
    first_px: float
    minute_px: float

    def y(self, seconds: float) -> float:
        """Where a moment after the first pour stands."""
        return self.first_px + seconds / 60 * self.minute_px

    def piece(self, at_s: float, *, wide_px: float = 112.0, high_px: float = 90.0) -> str:
        """A viewBox about a moment, with both glasses in it."""
        left = self.planned.left - (wide_px - (self.happened.right - self.planned.left)) / 2
        top = min(max(self.y(at_s) - high_px / 2, 0.0), max(self.height_px - high_px, 0.0))
        return f"{left:g} {top:.1f} {wide_px:g} {high_px:g}"


def picture(
    shown: Beside, *, begins_min: float, layout: Layout, warm: Warm | None, said: Sequence[Said]
) -> Picture:
    """The picture of one tankful; `begins_min` is its first pour in minutes since midnight at its place."""
    low = floor(begins_min - 0.7)
    high = ceil(begins_min + shown.last_s / 60 + 1.2)
    minute_px = max(8.0, min(20.0, layout.tallest_px / (high - low)))
    scale = graduation(
        low=low, high=high, unit=1, middle=5, long=5, length_px=(high - low) * minute_px, words=clock_words
    )
    first_px = TOP_PX + scale.at(begins_min)
    place = _Place(first_px, minute_px)
    planned = _glass(shown.planned, place, layout.planned_px, layout)
    happened = _glass(shown.happened, place, layout.happened_px, layout)
    bottom = TOP_PX + scale.length_px
    heat = drawn_heat(warm, layout.heat_px, y=place.y, bottom=bottom) if warm and layout.heat_px else None
    return Picture(
        width_px=layout.width_px,
        height_px=bottom + 26,
        top_px=TOP_PX,
        scale=scale,
        planned=planned,
        happened=happened,
        joints=tuple(_joints(shown, place, planned, happened)),
        beads=tuple(_beads(shown, place, happened, layout)),
        baths=tuple(_all_bath_words(shown, place, planned, happened)) if layout.bath_words else (),
        heat=heat,
        blocks=tuple(_blocks(said, place, layout, bottom)) if layout.words_px else (),
        dotted_px=(happened.right + 6, (layout.words_px or layout.width_px) - 28),
        first_px=first_px,
        minute_px=minute_px,
    )


@dataclass(frozen=True, slots=True)
class _Place:
    """Seconds after the first pour to pixels."""

    first_px: float
    minute_px: float

    def y(self, seconds: float) -> float:
        return self.first_px + seconds / 60 * self.minute_px


def _glass(stays: Sequence[Stay], place: _Place, left: float, layout: Layout) -> Column:
    """One column: a layer for each bath, one for each fill of a wash."""
    layers = [layer for stay in stays for layer in _layers(stay, place)]
    return column(layers, left=left, width_px=layout.glass_px, minute_px=place.minute_px)


def _layers(stay: Stay, place: _Place) -> Iterator[Layer]:
    starts = stay.fills_s or (stay.start_s,)
    for start_s, end_s in zip(starts, (*starts[1:], max(stay.end_s, starts[-1])), strict=True):
        yield Layer(sign_of_bath(stay.kind), place.y(start_s), place.y(end_s))


def _joints(shown: Beside, place: _Place, planned: Column, happened: Column) -> Iterator[str]:
    """Lines between the glasses: from where a bath was to begin to where it began."""
    for before, after in shown.pairs():
        if before is not None and after is not None:
            yield (
                f"M{planned.right:g} {place.y(before.start_s):.1f}L{happened.left:g} "
                f"{place.y(after.start_s):.1f}"
            )


def _beads(shown: Beside, place: _Place, happened: Column, layout: Layout) -> Iterator[Bead]:
    """Inversions of every bath on the stripe, where there is room for them."""
    size_px = min(BEAD_PX, round(place.minute_px * 0.5, 1))
    x = happened.right - layout.glass_px * 0.2 - size_px / 2
    for stay in shown.happened:
        for at_s, done in stay.inversions if stay.kind == "develop" else ():
            yield Bead(Box(x, place.y(at_s) - size_px / 2, size_px, size_px), done)


def _all_bath_words(shown: Beside, place: _Place, planned: Column, happened: Column) -> Iterator[BathWords]:
    """Names left of what was planned, and right of what happened."""
    yield from _bath_words(shown.planned, place, planned.left, -1)
    yield from _bath_words(shown.happened, place, happened.right, 1)


def _bath_words(stays: Sequence[Stay], place: _Place, wall: float, side: int) -> Iterator[BathWords]:
    ordered = sorted(stays, key=lambda stay: stay.start_s)
    wishes = [
        Words(place.y(stay.start_s) + min(14.0, stay.for_s / 120 * place.minute_px), 2 * BATH_LINE_PX + 2)
        for stay in ordered
    ]
    lowest = place.y(ordered[-1].end_s) + 60
    for leader, stay in zip(spread(wishes, top_px=0, bottom_px=lowest), ordered, strict=True):
        if leader.words_px is None:
            continue
        y = leader.words_px - BATH_LINE_PX / 2
        path = elbow(from_x=wall, from_y=leader.at_px, to_x=wall + side * 12, to_y=y)
        minutes, seconds = divmod(round(stay.for_s), 60)
        yield BathWords(
            path, wall + side * 16, y + 5, "start" if side > 0 else "end",
            BATH_NAMES[sign_of_bath(stay.kind)], f"{minutes}:{seconds:02d}",
        )  # fmt: skip


def _blocks(said: Sequence[Said], place: _Place, layout: Layout, bottom: float) -> Iterator[Block]:
    """What differed, in words at its time, pushed apart in order; what has no room is in the table only."""
    ordered = sorted(said, key=lambda one: one.at_s)
    wrapped = [_wrapped(one, layout.letters) for one in ordered]
    wishes = [
        Words(place.y(one.at_s), LINE_PX * len(lines) + 10, one.rank)
        for one, lines in zip(ordered, wrapped, strict=True)
    ]
    placed = spread(wishes, top_px=TOP_PX - 20, bottom_px=bottom + 24, farthest_px=FARTHEST_PX)
    words_x = layout.words_px or 0.0
    for leader, lines in zip(placed, wrapped, strict=True):
        if leader.words_px is None:
            continue
        first = leader.words_px - LINE_PX * (len(lines) - 1) / 2
        path = elbow(from_x=words_x - 28, from_y=leader.at_px, to_x=words_x - 6, to_y=first)
        yield Block(
            leader.at_px,
            path,
            tuple(Line(first + LINE_PX * n + 6, heavy, plain) for n, (heavy, plain) in enumerate(lines)),
        )


def _wrapped(said: Said, letters: int) -> list[tuple[str, str]]:
    """Lines of at most `letters`, each cut where the heavy part ends.

    >>> _wrapped(Said(0, "Drained 9 s late.", "Too small to see."), 20)
    [('Drained 9 s late.', ''), ('', 'Too small to see.')]
    """
    whole = f"{said.head} {said.rest}".strip()
    lines, at = [], 0
    for line in textwrap.wrap(whole, letters):
        at = whole.index(line, at)
        cut = max(0, min(len(line), len(said.head) - at))
        lines.append((line[:cut].rstrip() if cut == len(line) else line[:cut], line[cut:].lstrip()))
        at += len(line)
    return lines
