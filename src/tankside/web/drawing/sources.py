"""Every source of a number as a length on one scale, joined to the words that say it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tankside.web.drawing.doubt import DoubtLength, doubt_length
from tankside.web.drawing.fitting import fitting_scale
from tankside.web.drawing.graduation import Graduation
from tankside.web.drawing.leaders import elbow

LINE_PX, GAP_PX, TOP_PX, FOOT_PX, LEAST_PX = 24, 20, 34.0, 12.0, 300.0
COLUMNS_X = (80.0, 97.0, 114.0)
WORDS_X = 136.0
WIDTH_PX = 11.0
ROW_WORDS_PX = 13.0
APART_PX = 8.0


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
    scale = fitting_scale(
        min(one.low for one in wishes),
        max(one.high for one in wishes),
        unit=unit,
        length_px=height - TOP_PX - FOOT_PX,
        words=words,
    )
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
