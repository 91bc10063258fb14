"""How fast one developer works at another temperature: from its leaflet's rows, or from what is believed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from tankside.core.development.printed_rows import BEYOND_ROWS_K, Row, knots_of, once_each, read_between
from tankside.core.doubt.distributions import Z95
from tankside.core.doubt.estimate import Estimate
from tankside.core.fits.lines import Line, SlopeRange, line_with_belief, slopes_through
from tankside.core.rates import DEFAULT_Q10, Q10_BELIEF, BelievedRate, Knot
from tankside.core.refusals import refuse

TimeRule = Literal["rate", "table only", "completion"]
"""How a method's time goes with temperature: by its rate, as its table says and no further, or not at all."""

DEFAULT_LEAST_C, DEFAULT_MOST_C = 18.0, 24.0
HYDROQUINONE_LEAST_C = 16.0
SHORT_TIME_S = 300.0


@dataclass(frozen=True, slots=True)
class Rate:
    """What is known of time against temperature: a factor per 10 K, or a table that no single slope fits.

    `time_s` holds at `ref_c`; outside `least_c` to `most_c` no number is given. Where no single slope fits,
    `knots` are read between and `q10` only says how wide they spread.
    """

    time_s: Estimate
    ref_c: float
    q10: Estimate
    least_c: float
    most_c: float
    rows: tuple[Row, ...]
    knots: tuple[Knot, ...] = ()
    line: Line | None = None

    @property
    def interpolates(self) -> bool:
        """Whether no one slope holds, so that times are read between the rows."""
        return bool(self.knots)

    @property
    def believed(self) -> BelievedRate:
        """How the rate goes with temperature, as plan, run and review are given it."""
        return BelievedRate(self.q10, self.ref_c, self.least_c, self.most_c, self.knots)


def rate_of(rows: Sequence[Row], *, ref_c: float = 20.0) -> Rate:
    """The rate that the rows of one combination tell, the default factor being their prior.

    Arguments: one row or more, 10-35 C, times above 0; `ref_c` where the time is told.
    Result: time in s at `ref_c`, factor per 10 K. One row: the default, 18-24 C only. Several: log-linear,
    each row good to half its printed step, used up to 2 K outside them. No one slope: interpolated only.
    Own model: docs/science/rate-and-equivalent-time; printed tables follow one slope to 0.2-4.8 %.
    Doubt: 5-95 % interval of the factor.

    >>> found = rate_of([Row(20.0, 570.0)])
    >>> found.q10.value, found.least_c, found.most_c
    (2.2, 18.0, 24.0)
    >>> table = [Row(18.33, 540), Row(20.0, 480), Row(21.11, 450), Row(22.22, 390), Row(23.89, 330)]
    >>> round(rate_of(table).q10.value, 1)
    2.3
    """
    ordered = tuple(sorted(rows, key=lambda row: row.temp_c))
    if not ordered:
        raise refuse("no-time-known", ways_on=("enter-a-time",))
    temps = np.array([row.temp_c for row in ordered])
    if len(np.unique(temps)) == 1:
        return _from_one_row(ordered, ref_c)
    if not slopes_of(ordered).exists:
        return _from_table(ordered, ref_c)
    return _from_line(ordered, ref_c)


def slopes_of(rows: Sequence[Row]) -> SlopeRange:
    """Slopes of ln(time) per kelvin that pass through every row within half its printed step.

    Arguments: rows at two temperatures or more. Result: 1/K; `exists` is False when no one slope holds.
    Own model: docs/science/rate-and-equivalent-time. Doubt: none, if the printed steps are right.

    >>> table = [Row(20.0, 390), Row(21.11, 390), Row(22.22, 360), Row(23.89, 330)]
    >>> found = slopes_of(table)
    >>> [round(float(np.exp(-10 * slope)), 2) for slope in (found.high, found.low)]
    [1.35, 1.91]
    """
    temps = np.array([row.temp_c for row in rows])
    times = np.array([row.time_s for row in rows])
    half = np.array([row.step_s for row in rows]) / 2
    return slopes_through(temps, np.log(times - half), np.log(times + half))


def time_at(rate: Rate, temp_c: float, *, hydroquinone: bool = False) -> Estimate:
    """Development time in s that makes the same contrast at a steady `temp_c`, with its interval.

    Arguments: `temp_c` inside the rate's range, else refused with a way on; no `hydroquinone` developer
    is offered below 16 C. Result: s, 5-95 %.
    Own model: docs/science/rate-and-equivalent-time. Doubt: the interval; equal contrast is not equal fog.

    >>> told = time_at(rate_of([Row(20.0, 570.0)]), 21.0)
    >>> round(told.value), round(told.low), round(told.high)
    (527, 512, 547)
    """
    check_temperature(rate, temp_c, hydroquinone=hydroquinone)
    if rate.line is not None:
        ends = np.exp(rate.line.at(temp_c) + rate.line.sd_at(temp_c) * np.array([-Z95, 0.0, Z95]))
        return Estimate(float(ends[1]), float(ends[0]), float(ends[2]), "s", rate.time_s.source)
    if rate.knots and rate.time_s.low < rate.time_s.high:
        return read_between(rate.rows, temp_c)
    return _carried(rate, temp_c)


def check_temperature(rate: Rate, temp_c: float, *, hydroquinone: bool | None = False) -> None:
    """Refuse a temperature where nothing is known, saying the range and whether to warm or to cool.

    Arguments: `hydroquinone` None where nobody has said whether the developer holds any; that is asked only
    below 16 C, where it matters.
    Own model: docs/science/rate-and-equivalent-time. Doubt: none.

    >>> check_temperature(rate_of([Row(20.0, 570.0)]), 21.0)
    >>> check_temperature(rate_of([Row(20.0, 570.0)]), 25.0)
    Traceback (most recent call last):
    tankside.core.refusals.Refused: too-warm-to-time
    """
    least_c = max(rate.least_c, HYDROQUINONE_LEAST_C) if hydroquinone else rate.least_c
    if temp_c < least_c:
        code = (
            "hydroquinone-too-cold" if hydroquinone and temp_c < HYDROQUINONE_LEAST_C else "too-cold-to-time"
        )
        raise refuse(code, at="temp_c", ways_on=("warm",), temp_c=temp_c, least_c=least_c, most_c=rate.most_c)
    if hydroquinone is None and temp_c < HYDROQUINONE_LEAST_C:
        raise refuse(
            "hydroquinone-not-told", at="temp_c", ways_on=("say-the-agent", "warm"),
            temp_c=temp_c, least_c=HYDROQUINONE_LEAST_C, most_c=rate.most_c,
        )  # fmt: skip
    if temp_c > rate.most_c:
        raise refuse(
            "too-warm-to-time", at="temp_c", ways_on=("cool",),
            temp_c=temp_c, least_c=least_c, most_c=rate.most_c,
        )  # fmt: skip


def uneven_if_short(time_s: float) -> bool:
    """Whether a time is so short (under 5:00) that filling and emptying make it uneven; common practice.

    Own model: docs/science/rate-and-equivalent-time. Doubt: none.

    >>> uneven_if_short(299.0), uneven_if_short(300.0)
    (True, False)
    """
    return time_s < SHORT_TIME_S


def _carried(rate: Rate, temp_c: float) -> Estimate:
    """The known time carried to `temp_c` by its own rate and the band of that."""
    times = [
        rate.time_s.value / float(law.factor(temp_c)) for law in (rate.believed.law, *rate.believed.ends)
    ]
    return Estimate(
        times[0],
        min(times),
        max(times),
        "s",
        "one row, default factor" if len(rate.rows) == 1 else rate.time_s.source,
    )


def _from_one_row(rows: tuple[Row, ...], ref_c: float) -> Rate:
    """Only one temperature is known: the default factor, in the default range."""
    row = rows[0]
    printed = Estimate(row.time_s, row.time_s, row.time_s, "s", "the leaflet's row")
    at_row = Rate(printed, row.temp_c, DEFAULT_Q10, DEFAULT_LEAST_C, DEFAULT_MOST_C, rows)
    return replace(at_row, time_s=_carried(at_row, ref_c), ref_c=ref_c)


def _from_table(rows: tuple[Row, ...], ref_c: float) -> Rate:
    """No one slope fits: read between the rows, and give no number outside them."""
    rows = once_each(rows)
    temps = np.array([row.temp_c for row in rows])
    logs = np.log([row.time_s for row in rows])
    local = -np.diff(logs) / np.diff(temps)
    overall = -float(np.polyfit(temps, logs, 1)[0])
    steep = np.exp(10 * np.array([overall, min(overall, *local), max(overall, *local)]))
    spread = Estimate(
        float(steep[0]), float(steep[1]), float(steep[2]), "per 10 K", "leaflet rows, no one slope"
    )
    held_c = float(np.clip(ref_c, temps[0], temps[-1]))
    told = read_between(rows, held_c)
    knots = knots_of(rows, ref_c=held_c, time_s=told.value, overall=overall)
    return Rate(told, held_c, spread, float(temps[0]), float(temps[-1]), rows, knots)


def _from_line(rows: tuple[Row, ...], ref_c: float) -> Rate:
    """Several rows on one slope: least squares on ln t, sharpening the belief about the factor."""
    temps = np.array([row.temp_c for row in rows])
    times = np.array([row.time_s for row in rows])
    sds = np.array([row.step_s for row in rows]) / (2 * np.sqrt(3) * times)
    belief = -np.log(Q10_BELIEF.median) / 10
    line = line_with_belief(
        temps, np.log(times), sds, slope=float(belief), slope_sd=Q10_BELIEF.log_sd / 10, x_ref=ref_c
    )
    ends = np.exp(-10 * (line.slope + line.slope_sd * np.array([Z95, 0.0, -Z95])))
    q10 = Estimate(float(ends[1]), float(ends[0]), float(ends[2]), "per 10 K", "leaflet rows and default")
    spread = Z95 * line.level_sd
    level = np.exp(line.level + np.array([-spread, 0.0, spread]))
    told = Estimate(float(level[1]), float(level[0]), float(level[2]), "s", "line through the leaflet's rows")
    low, high = float(temps.min()) - BEYOND_ROWS_K, float(temps.max()) + BEYOND_ROWS_K
    return Rate(told, ref_c, q10, low, high, rows, line=line)
