"""A plot of a why: two engraved scales outside, a hatched band, its lines named where they end."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tankside.core.planning.why import Plot
from tankside.web.drawing.fitting import fitting_scale
from tankside.web.drawing.graduation import Graduation, graduation, plain
from tankside.web.drawing.tens import by_tens

WIDTH_PX, HEIGHT_PX = 320.0, 286.0
LEFT_PX, TOP_PX, FIELD_WIDTH_PX, FIELD_HEIGHT_PX = 62.0, 28.0, 176.0, 212.0
NAME_GAP_PX, NAME_LINE_PX = 6.0, 16.0
LEAST_BY_TENS, MARKS_ACROSS = 0.002, 9

Say = Callable[[float], str]


@dataclass(frozen=True, slots=True)
class Name:
    """What a line is, written at its end; `told` is the one that counts."""

    x: float
    y: float
    words: str
    told: bool = False


@dataclass(frozen=True, slots=True)
class Point:
    """One place that is marked."""

    x: float
    y: float


@dataclass(frozen=True, slots=True)
class DrawnPlot:
    """Everything as pixels of a field `WIDTH_PX` wide; paths are in the field's own coordinates."""

    width_px: float
    height_px: float
    left_px: float
    top_px: float
    field_width_px: float
    field_height_px: float
    up: Graduation
    across: Graduation
    band: str
    edges: tuple[str, ...]
    middle: str
    level_px: float | None
    points: tuple[Point, ...]
    names: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class Names:
    """What stands at the ends of the lines, beside the limit and at what is marked."""

    low: str
    high: str
    middle: str
    level: str
    marks: tuple[str, ...]


def drawn_plot(plot: Plot, names: Names, *, say_up: Say, say_across: Say) -> DrawnPlot:
    """A plot of a why as pixels; its values beyond what is told run out at the foot of the scale."""
    up, across = _up(plot, say_up), _across(plot, say_across)
    low, high, middle = (_points(plot, one, up, across) for one in (plot.low, plot.high, plot.middle))
    sources = not plot.middle
    points = tuple(Point(across.at(one.across), up.at(one.up)) for one in plot.marks)
    written = [
        *((high[-1], names.high, sources), (low[-1], names.low, False)),
        *([(middle[-1], names.middle, True)] if middle else []),
    ]
    level_px = None if plot.level is None else up.at(plot.level)
    return DrawnPlot(
        WIDTH_PX,
        HEIGHT_PX,
        LEFT_PX,
        TOP_PX,
        FIELD_WIDTH_PX,
        FIELD_HEIGHT_PX,
        up,
        across,
        _closed(low, high),
        (_line(low), _line(high)),
        _line(middle),
        level_px,
        points,
        _apart(
            [
                *(
                    Name(min(x, FIELD_WIDTH_PX) + NAME_GAP_PX, y, words, told)
                    for (x, y), words, told in written
                ),
                *([] if level_px is None else [Name(FIELD_WIDTH_PX + NAME_GAP_PX, level_px, names.level)]),
            ]
        )
        + tuple(
            Name(one.x + NAME_GAP_PX + 2, one.y + NAME_LINE_PX, words, told=True)
            for one, words in zip(points, names.marks, strict=True)
        ),
    )


def _up(plot: Plot, say: Say) -> Graduation:
    """The scale at the left."""
    told = [one for one in (*plot.low, *plot.high, *plot.middle, plot.level) if one is not None]
    if plot.by_tens:
        return by_tens(low=LEAST_BY_TENS, high=1.2 * max(told), length_px=FIELD_HEIGHT_PX)
    return fitting_scale(
        min(told), max(told), unit=plot.up_unit, length_px=FIELD_HEIGHT_PX, words=say, upward=True
    )


def _across(plot: Plot, say: Say) -> Graduation:
    """The scale below: whole minutes of a time, every one of what is counted."""
    last = plot.across[-1]
    unit = 60.0 if plot.across_unit == "s" else 1.0
    every = 5 if last / unit > MARKS_ACROSS else 1
    words = say if plot.across_unit == "s" else plain
    return graduation(
        low=plot.across[0],
        high=last,
        unit=unit,
        length_px=FIELD_WIDTH_PX,
        middle=every,
        long=every,
        words=words,
    )


def _points(
    plot: Plot, values: Sequence[float | None], up: Graduation, across: Graduation
) -> list[tuple[float, float]]:
    """A line's points, to the foot of the scale where it is told no further."""
    points = []
    for x, y in zip(plot.across, values, strict=False):
        points.append((across.at(x), FIELD_HEIGHT_PX if y is None else up.at(y)))
        if y is None:
            break
    return points


def _line(points: Sequence[tuple[float, float]]) -> str:
    """A path through points."""
    return "".join(f"{'L' if n else 'M'}{x:g} {y:g}" for n, (x, y) in enumerate(points))


def _closed(low: Sequence[tuple[float, float]], high: Sequence[tuple[float, float]]) -> str:
    """The area between two lines, along the foot where one of them ends first."""
    last = max(low[-1][0], high[-1][0])
    foot = [(last, FIELD_HEIGHT_PX)] if low[-1][0] < last else []
    return _line([*high, *foot, *reversed(low)]) + "Z"


def _apart(names: Sequence[Name]) -> tuple[Name, ...]:
    """Names moved down until no two that stand in one column touch."""
    placed: list[Name] = []
    for one in sorted(names, key=lambda name: name.y):
        y = one.y
        for other in placed:
            if abs(other.x - one.x) < FIELD_WIDTH_PX / 2 and y < other.y + NAME_LINE_PX:
                y = other.y + NAME_LINE_PX
        placed.append(Name(one.x, round(y, 1), one.words, one.told))
    return tuple(placed)
