"""A plot of a why: two engraved scales outside, a hatched band, its lines named where they end."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from tankside.core.planning.why import Plot
from tankside.web.drawing.fitting import fitting_scale
from tankside.web.drawing.graduation import Graduation, graduation, plain
from tankside.web.drawing.tens import by_tens

WIDTH_PX, HEIGHT_PX = 320.0, 304.0
LEFT_PX, TOP_PX, FIELD_WIDTH_PX, FIELD_HEIGHT_PX = 62.0, 28.0, 176.0, 212.0
NAME_GAP_PX, NAME_LINE_PX = 6.0, 16.0
LEAST_BY_TENS, MARKS_ACROSS, SAME_COLUMN_PX = 0.002, 9, 88.0

Say = Callable[[float], str]


@dataclass(frozen=True, slots=True)
class Name:
    """What a line is, written at its end, or `before` it; `told` is the one that counts."""

    x: float
    y: float
    words: str
    told: bool = False
    before: bool = False


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
    written = [_name(high, names.high, told=sources), _name(low, names.low, before=sources)]
    if middle:
        written.append(_name(middle, names.middle, told=True))
    level_px = None if plot.level is None else up.at(plot.level)
    if level_px is not None:
        written.append(Name(FIELD_WIDTH_PX + NAME_GAP_PX, level_px, names.level))
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
        (
            *_apart(written),
            *(_beside(at, words, level_px) for at, words in zip(points, names.marks, strict=True)),
        ),
    )


def _name(
    points: Sequence[tuple[float, float]], words: str, *, told: bool = False, before: bool = False
) -> Name:
    """A name where a line ends; above the foot where it runs out there, one of two sources before it."""
    x, y = points[-1]
    foot = y >= FIELD_HEIGHT_PX
    before = before and foot
    gap_px = -NAME_GAP_PX if before else NAME_GAP_PX
    return Name(x + gap_px, y - NAME_LINE_PX / 2 if foot else y, words, told, before)


def _beside(at: Point, words: str, level_px: float | None) -> Name:
    """The name of what is marked, below it at the right, or at the left above where foot or limit is near."""
    below = at.y + NAME_LINE_PX
    limit_near = level_px is not None and abs(below - level_px) < NAME_LINE_PX / 2
    if below > FIELD_HEIGHT_PX or limit_near:
        return Name(at.x - NAME_GAP_PX - 2, at.y - NAME_LINE_PX / 2, words, told=True, before=True)
    return Name(at.x + NAME_GAP_PX + 2, below, words, told=True)


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
            if (
                one.before == other.before
                and abs(other.x - one.x) < SAME_COLUMN_PX
                and y < other.y + NAME_LINE_PX
            ):
                y = other.y + NAME_LINE_PX
        placed.append(replace(one, y=round(y, 1)))
    return tuple(placed)
