"""Rolls joined to the day they were exposed: months down the left edge, one row of words for each roll."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from tankside.web.drawing.leaders import elbow

ROW_PX = 104.0
MONTH_NAMES = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
LINE_X, WORDS_X = 65.0, 88.0
LEAST_BETWEEN_NAMES_PX = 22.0
LEAST_DAYS = 28


@dataclass(frozen=True, slots=True)
class MonthMark:
    """The first of a month: long with its name, middle where names would crowd; weeks are short."""

    at_px: float
    length_px: int
    name: str


@dataclass(frozen=True, slots=True)
class Joint:
    """A roll's day on the line, and the path to its row; `chosen` ones are filled."""

    at_px: float
    path: str
    chosen: bool


@dataclass(frozen=True, slots=True)
class Months:
    """The whole margin beside the rows."""

    height_px: float
    marks: tuple[MonthMark, ...]
    joints: tuple[Joint, ...]


def months(exposed: Sequence[date | None], *, chosen: Sequence[bool], today: date) -> Months:
    """Margin for rows in the order of `exposed`, which rises; rolls without a day have a row and no joint."""
    height = max(len(exposed), 1) * ROW_PX
    days = [day for day in exposed if day is not None]
    first = min([*days, today - timedelta(days=LEAST_DAYS)])
    span = max((today - first).days, 1)
    top, room = 14.0, height - 28.0

    def at(day: date) -> float:
        return top + room * (day - first).days / span

    joints = tuple(
        Joint(
            round(at(day), 1),
            elbow(from_x=LINE_X, from_y=round(at(day), 1), to_x=WORDS_X, to_y=row * ROW_PX + 26),
            ticked,
        )
        for row, (day, ticked) in enumerate(zip(exposed, chosen, strict=True))
        if day is not None
    )
    return Months(height, _marks(first, today, at_days=room / span, top=top), joints)


def _marks(first: date, today: date, *, at_days: float, top: float) -> tuple[MonthMark, ...]:
    """Every month with its name where there is room, and the weeks between where they stay 4 px apart."""
    marks: list[MonthMark] = []
    last_name = float("-inf")
    for number in range((today - first).days + 1):
        day = first + timedelta(days=number)
        at_px = round(top + number * at_days, 1)
        if day.day == 1 and at_px - last_name >= LEAST_BETWEEN_NAMES_PX:
            marks.append(MonthMark(at_px, 30, MONTH_NAMES[day.month - 1]))
            last_name = at_px
        elif day.day == 1:
            marks.append(MonthMark(at_px, 21, ""))
        elif day.day in (8, 15, 22) and 7 * at_days >= 4:
            marks.append(MonthMark(at_px, 12, ""))
    return tuple(marks)
