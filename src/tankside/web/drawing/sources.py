"""Every source of a number as a length on one scale, joined to the words that say it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tankside.web.drawing.doubt import DoubtLength, doubt_length
from tankside.web.drawing.graduation import Graduation, graduation
from tankside.web.drawing.leaders import elbow

LINE_PX, GAP_PX, TOP_PX, FOOT_PX, LEAST_PX = 24, 20, 34.0, 12.0, 300.0
COLUMNS_X = (80.0, 97.0, 114.0)
WORDS_X = 136.0
WIDTH_PX = 11.0
ROW_WORDS_PX = 13.0
APART_PX = 8.0
CLEAR = 0.12
"""Share of the whole that stays free above the first length and below the last."""

STEPS = {
    "s": ((10.0, 3, 6), (60.0, 5, 10), (300.0, 2, 6)),
    "C": ((0.1, 5, 10), (0.5, 2, 10), (5.0, 2, 4)),
    "mL": ((1.0, 5, 10), (5.0, 2, 10), (20.0, 5, 10), (100.0, 5, 10)),
}
MOST_UNITS = 60


@dataclass(frozen=True, slots=True)
class SourceWish:
    """One source: its interval and value, and how many lines its words take where they are narrowest."""

    low: float
    value: float
    high: float
    lines: int


@dataclass(frozen=True, slots=True)
class Joined:
    """A source drawn: its length, and the leader to its words."""

    length: DoubtLength
    path: str


@dataclass(frozen=True, slots=True)
class Sources:
    """The picture at the left; the words stand beside it in rows of `24 lines + 20` px."""

    width_px: float
    height_px: float
    top_px: float
    scale: Graduation
    joined: tuple[Joined, ...]


def sources(wishes: Sequence[SourceWish], *, unit: str, words: Callable[[float], str]) -> Sources:
    """Lengths on one scale in `unit`, joined to rows that stand in the order of `wishes`."""
    rows = [one.lines * LINE_PX + GAP_PX for one in wishes]
    height = max(float(sum(rows)), LEAST_PX)
    scale = _scale(wishes, unit, height - TOP_PX - FOOT_PX, words)
    columns = _columns(wishes, scale)
    tops = [sum(rows[:number]) for number in range(len(rows))]
    return Sources(
        WORDS_X,
        height,
        TOP_PX,
        scale,
        tuple(
            _joined(one, scale, COLUMNS_X[column], top)
            for one, column, top in zip(wishes, columns, tops, strict=True)
        ),
    )


def _scale(
    wishes: Sequence[SourceWish], unit: str, length_px: float, words: Callable[[float], str]
) -> Graduation:
    """The finest scale that holds every length with some room, from mark to mark."""
    low, high = min(one.low for one in wishes), max(one.high for one in wishes)
    choices = STEPS.get(unit, STEPS["mL"])
    spans = [_span(low, high, step * middle) for step, middle, _ in choices]
    fits = (number for number, one in enumerate(choices) if _width(spans[number]) <= MOST_UNITS * one[0])
    chosen = next(fits, len(choices) - 1)
    step, middle, long = choices[chosen]
    first, last = spans[chosen]
    return graduation(
        low=max(first, 0.0) if low >= 0 else first,
        high=last, unit=step, length_px=length_px, middle=middle, long=long, words=words,
    )  # fmt: skip


def _span(low: float, high: float, whole: float) -> tuple[float, float]:
    """From mark to mark, with some room on both sides."""
    room = max((high - low) * CLEAR, whole)
    return _down(low - room, whole), -_down(-high - room, whole)


def _width(span: tuple[float, float]) -> float:
    """How much a span spans."""
    return span[1] - span[0]


def _down(value: float, step: float) -> float:
    """The multiple of `step` at or below `value`."""
    return float(step * (value // step))


def _columns(wishes: Sequence[SourceWish], scale: Graduation) -> list[int]:
    """Side by side where two lengths would cover each other, else in one column."""
    ends = [float("-inf")] * len(COLUMNS_X)
    found = [0] * len(wishes)
    for number in sorted(range(len(wishes)), key=lambda at: wishes[at].low):
        top, bottom = scale.at(wishes[number].low), scale.at(wishes[number].high)
        free = [column for column, end in enumerate(ends) if top >= end + APART_PX]
        found[number] = free[0] if free else len(ends) - 1
        ends[found[number]] = max(ends[found[number]], bottom)
    return found


def _joined(one: SourceWish, scale: Graduation, x: float, row_top: float) -> Joined:
    """A length with its leader."""
    drawn = doubt_length(scale, low=one.low, high=one.high, value=one.value, x=x, width_px=WIDTH_PX)
    from_y = TOP_PX + scale.at(one.value)
    path = elbow(
        from_x=x + WIDTH_PX + 4,
        from_y=round(from_y, 1),
        to_x=WORDS_X - 4,
        to_y=row_top + ROW_WORDS_PX,
        run_px=3.0,
    )
    return Joined(drawn, path)
