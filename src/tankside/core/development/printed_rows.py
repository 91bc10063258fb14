"""Times as a leaflet prints them, and what may be read from them alone."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

import numpy as np

from tankside.core.doubt.estimate import Estimate
from tankside.core.rates import Knot
from tankside.core.refusals import refuse

BEYOND_ROWS_K = 2.0
HALF_MINUTE_S = 30.0
_PRINTED_STEPS_S = (HALF_MINUTE_S, 15.0, 5.0)
_ROUNDED = 0.45
"""Half of the 5-95 % interval of a rounding, by its step."""


@dataclass(frozen=True, slots=True)
class Row:
    """One printed time: `time_s` at `temp_c`, printed in steps of `step_s`."""

    temp_c: float
    time_s: float
    step_s: float = HALF_MINUTE_S


def printed_step_s(times_s: Sequence[float]) -> float:
    """The step in s that a table's times are printed in: half minutes unless one of them says finer.

    Arguments: times in s, above 0. Own model: docs/science/rate-and-equivalent-time; a table of whole
    minutes is taken to be rounded to the half minute. Doubt: a fine table may show
    half minutes only by chance.

    >>> printed_step_s([570, 480]), printed_step_s([375, 405, 420]), printed_step_s([370])
    (30.0, 15.0, 5.0)
    """
    return next((step for step in _PRINTED_STEPS_S if all(one % step == 0 for one in times_s)), 1.0)


def read_between(rows: tuple[Row, ...], temp_c: float) -> Estimate:
    """Between two rows on the logarithm of time; the interval is the printed rounding (90 % of its width).

    Arguments: rows by rising temperature; beyond them the last one's time. Result: s, 5-95 %.
    Own model: docs/science/rate-and-equivalent-time. Doubt: the interval.

    >>> round(read_between((Row(20.0, 600), Row(22.0, 540)), 21.0).value)
    569
    """
    temps = [row.temp_c for row in rows]
    told = float(np.exp(np.interp(temp_c, temps, np.log([row.time_s for row in rows]))))
    half = _ROUNDED * float(np.interp(temp_c, temps, [row.step_s for row in rows]))
    return Estimate(told, told - half, told + half, "s", "between the leaflet's rows")


def as_printed(rows: Sequence[Row], temp_c: float) -> Estimate:
    """The time of a method that follows no rate but stands in a table: as its rows say, and no further.

    Arguments: one row or more; `temp_c` within 2 K of them, else refused with a way on. Result: s; between
    rows with the interval of their rounding, at and beyond them as printed.
    Own model: docs/science/rate-and-equivalent-time. Doubt: the interval; no temperature corrects it.

    >>> as_printed([Row(20.0, 3600)], 21.0).value
    3600
    """
    ordered = once_each(tuple(sorted(rows, key=lambda row: row.temp_c)))
    least_c, most_c = ordered[0].temp_c - BEYOND_ROWS_K, ordered[-1].temp_c + BEYOND_ROWS_K
    if not least_c <= temp_c <= most_c:
        code, way = ("too-cold-for-table", "warm") if temp_c < least_c else ("too-warm-for-table", "cool")
        raise refuse(code, at="temp_c", ways_on=(way,), temp_c=temp_c, least_c=least_c, most_c=most_c)
    inside_c = min(max(temp_c, ordered[0].temp_c), ordered[-1].temp_c)
    printed = next((row for row in ordered if row.temp_c == inside_c), None)
    if printed is None:
        return read_between(ordered, inside_c)
    return Estimate(printed.time_s, printed.time_s, printed.time_s, "s", "as printed")


def once_each(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """One row for each temperature: where two leaflets differ their middle, in a step as wide as both.

    Arguments: rows by rising temperature. Own model: docs/science/rate-and-equivalent-time. Doubt: the step.

    >>> [(round(row.time_s), row.step_s) for row in once_each((Row(20.0, 400), Row(20.0, 484)))]
    [(440, 84)]
    """
    found = []
    for temp_c, same in groupby(rows, key=lambda row: row.temp_c):
        there = list(same)
        if len(there) == 1:
            found.append(there[0])
            continue
        times = [one.time_s for one in there]
        step_s = max(*(one.step_s for one in there), max(times) - min(times))
        found.append(Row(temp_c, float(np.exp(np.mean(np.log(times)))), step_s))
    return tuple(found)


def knots_of(rows: tuple[Row, ...], *, ref_c: float, time_s: float, overall: float) -> tuple[Knot, ...]:
    """Each row as a rate over that at `ref_c`, and one row's spacing more on each side with a wide range.

    Out there a tank may drift to though nobody plans it: the overall slope goes on, from level to twice it.
    Arguments: two rows or more; `time_s` that they tell at `ref_c`; `overall` slope of ln rate in 1/K.
    Own model: docs/science/rate-and-equivalent-time. Doubt: the rounding of each row.

    >>> knots = knots_of((Row(20.0, 600), Row(22.0, 500)), ref_c=20.0, time_s=600, overall=0.09)
    >>> [(one.temp_c, round(one.factor, 2), round(one.spread, 2)) for one in knots]
    [(18.0, 0.84, 0.18), (20.0, 1.0, 0.0), (22.0, 1.2, 0.03), (24.0, 1.44, 0.21)]
    """
    inside = [
        Knot(row.temp_c, time_s / row.time_s, _ROUNDED * row.step_s / row.time_s)
        for row in rows
        if row.temp_c != ref_c
    ]
    inside = sorted([*inside, Knot(ref_c, 1.0, 0.0)], key=lambda one: one.temp_c)
    before_k, beyond_k = rows[0].temp_c - rows[1].temp_c, rows[-1].temp_c - rows[-2].temp_c
    return (_outer(inside[0], before_k, overall), *inside, _outer(inside[-1], beyond_k, overall))


def _outer(end: Knot, step_k: float, overall: float) -> Knot:
    """A knot one spacing beyond the last row."""
    widened = end.spread + abs(overall * step_k)
    return Knot(end.temp_c + step_k, end.factor * float(np.exp(overall * step_k)), widened)
