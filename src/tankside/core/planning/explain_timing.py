"""Why a tankful is developed as long as it is, and why its developer is mixed as warm."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from tankside.core.development.belief import Evidence
from tankside.core.doubt.distributions import Z95, FloatArray
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.known_time import KnownTime
from tankside.core.planning.development import WORTH_SHARE, Setting, WithParts
from tankside.core.planning.explain_contrast import next_strip
from tankside.core.planning.one_tankful import TimedTankful, timed
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.why import (
    Figure,
    Length,
    Narrowing,
    PartOfDoubt,
    Plot,
    Why,
    narrowings,
    rule,
)
from tankside.core.planning.wish import Wish
from tankside.core.quantities.display import to_step
from tankside.core.refusals import refuse
from tankside.core.thermal.drift import READING_SD_K, mean_temp, temp_at

RATE_PAGE = "docs/science/rate-and-equivalent-time"
TEMPER_PAGE = "docs/science/tempering"
RATE_LAW = "sheppard-mees-1907"
DRIFT_ROWS = 6


def time_of(tankful: PlannedTankful, wish: Wish, evidence: Sequence[Evidence] = ()) -> Why:
    """Why a tankful of a plan is developed as long as the plan says."""
    found, development = timed(tankful, wish), tankful.development
    return why_time(
        found,
        jug_c=development.jug_c if development.jug_c is not None else development.start_c,
        answer=development.end_s or found.end.estimate,
        by_rate=development.time_rule == "rate",
        tankful=tankful.letter,
        evidence=evidence,
    )


def why_time(
    found: TimedTankful,
    *,
    jug_c: float,
    answer: Estimate,
    by_rate: bool = True,
    tankful: str | None = None,
    evidence: Sequence[Evidence] = (),
) -> Why:
    """Why a developer that reads `jug_c` in the jug is poured out after `answer`.

    `by_rate` is false where a method's time may not be moved with temperature.
    """
    known, rows = found.known, found.known.rows
    start_c = found.setting.start_c(jug_c)
    lengths = [Length(known.source, known.rate.time_s, _row_figures(found, len(rows)))]
    if by_rate:
        figures = _warmth_figures(found, start_c, answer.value)
        lengths.append(Length("temperature", found.end.estimate, figures))
    if answer.source == "own time":
        lengths.append(Length("own-time", answer))
    strip = next_strip(known, evidence)
    one_row = len({row.temp_c for row in rows}) < 2
    return Why(
        "time",
        tankful,
        answer,
        tuple(lengths),
        parts_of_why(found.end) if by_rate else (),
        (
            *(narrowings("read-tank", *(("leaflet-rows",) if one_row else ())) if by_rate else ()),
            strip or Narrowing("step-strip"),
        ),
        _inputs(found, jug_c),
        _formula(known),
        (RATE_PAGE, "docs/science/tank-and-liquid", RATE_LAW),
        spread="rule" if answer.low == answer.high else "interval",
        leaves_out=("suits-your-hands",),
        plot=drift_plot(found.setting, jug_c=jug_c, until_s=answer.value),
    )


def _formula(known: KnownTime) -> str:
    """How a time was worked out, by its rule and its rate."""
    if known.rule == "completion":
        return "time as printed, the least; it works to completion, so no temperature corrects it"
    if known.rule == "table only":
        return "time as printed, between its rows on ln t; it follows no rate, so no reading corrects it"
    rate = "rate read between the rows" if known.rate.knots else "q10^((T - ref)/10)"
    return (
        f"time t with integral of {rate} dt from 0 to t = printed time; "
        "T = room + (start - room) exp(-t/tau); start = (V jug + W tank)/(V + W)"
    )


def mix_to_of(tankful: PlannedTankful, wish: Wish) -> Why:
    """Why a developer is to be mixed as warm as the plan says."""
    found = timed(tankful, wish)
    if found.jug is None:
        raise refuse("already-mixed", letter=tankful.letter, reads_c=wish.reads_c or 0.0)
    jug, setting = found.jug, found.setting
    time_s = found.known.rate.time_s.value
    start_c = setting.start_c(jug.estimate.value)
    steady = rule(found.known.rate.ref_c, "C", found.known.source)
    return Why(
        "mix-to",
        tankful.letter,
        jug.estimate,
        (
            Length(found.known.source, steady, _row_figures(found, len(found.known.rows))),
            Length(
                "mix",
                jug.estimate,
                (
                    Figure("start_c", start_c, "C", "computed"),
                    Figure("tank_c", setting.tank_c, "C", "assumed"),
                    Figure("mean_c", _mean_c(setting, start_c, time_s), "C", "computed"),
                ),
            ),
        ),
        parts_of_why(jug),
        narrowings("tank-test", "read-room", "read-tank"),
        _inputs(found, tankful.development.jug_c or tankful.development.start_c),
        "start that makes the equivalent time of the drift the printed time; "
        "jug = start + W/V (start - tank)",
        (TEMPER_PAGE, RATE_PAGE, RATE_LAW),
        plot=drift_plot(setting, jug_c=jug.estimate.value, until_s=time_s),
    )


def parts_of_why(found: WithParts) -> tuple[PartOfDoubt, ...]:
    """The parts of a doubt as a why holds them."""
    return tuple(PartOfDoubt(part.code, part.half_width) for part in found.parts)


def drift_plot(setting: Setting, *, jug_c: float, until_s: float) -> Plot:
    """The tank's temperature over its bath, with its band from worth, time constant and the jug's reading.

    Each is moved to its 5 and 95 % points alone; what they do is combined as squares at every moment.
    """
    step_s = max(30.0, to_step(until_s / DRIFT_ROWS, 30.0))
    whole = np.arange(0.0, until_s - step_s / 2, step_s)
    times = np.append(np.concatenate([whole, whole + step_s / 2]), until_s)
    times = np.unique(times[times <= until_s])

    def path(*, jug: float = jug_c, worth: float = 1.0, tau_min: float = setting.tau_min) -> FloatArray:
        start_c = replace(setting, worth_ml=setting.worth_ml * worth).start_c(jug)
        return temp_at(times, start_c=start_c, room_c=setting.room_c, tau_min=tau_min)

    told = path()
    by_k = Z95 * READING_SD_K
    fast, slow = setting.tau_ends_min
    ends = (
        (path(worth=1 - WORTH_SHARE), path(worth=1 + WORTH_SHARE)),
        (path(tau_min=fast), path(tau_min=slow)),
        (path(jug=jug_c - by_k), path(jug=jug_c + by_k)),
    )
    down = np.sqrt(sum(np.maximum(told - np.minimum(one, other), 0.0) ** 2 for one, other in ends))
    up = np.sqrt(sum(np.maximum(np.maximum(one, other) - told, 0.0) ** 2 for one, other in ends))
    return Plot(
        "drift",
        "s",
        "C",
        _floats(times),
        _floats(told - down),
        _floats(told + up),
        _floats(told),
        rows=tuple(number for number, one in enumerate(times) if one in whole or one == until_s),
    )


def _floats(values: FloatArray) -> tuple[float, ...]:
    """An array as plain numbers."""
    return tuple(float(one) for one in values)


def _row_figures(found: TimedTankful, rows: int) -> tuple[Figure, ...]:
    """The row that a time stands on."""
    row = found.known.row
    return (
        Figure("time_s", row.time_s, "s", row.words),
        Figure("temp_c", row.temp_c, "C", row.words),
        Figure("rows", float(rows), "", row.source),
    )


def _warmth_figures(found: TimedTankful, start_c: float, time_s: float) -> tuple[Figure, ...]:
    """What the tank does to a time."""
    return (
        Figure("start_c", start_c, "C", "computed"),
        Figure("mean_c", _mean_c(found.setting, start_c, time_s), "C", "computed"),
        Figure("factor", time_s / found.known.rate.time_s.value, "", "computed"),
        Figure("extra_s", found.end.estimate.value - found.known.rate.time_s.value, "s", "computed"),
    )


def _mean_c(setting: Setting, start_c: float, time_s: float) -> float:
    """Mean temperature of the bath."""
    return mean_temp(time_s, start_c=start_c, room_c=setting.room_c, tau_min=setting.tau_min)


def _inputs(found: TimedTankful, jug_c: float) -> tuple[Figure, ...]:
    """Everything that went into a time or a temperature."""
    setting, rate = found.setting, found.known.rate
    jug_origin = "read" if found.jug is None else "computed"
    return (
        Figure("printed_s", found.known.row.time_s, "s", found.known.row.words),
        Figure("printed_c", found.known.row.temp_c, "C", found.known.row.words),
        Figure("jug_c", jug_c, "C", jug_origin),
        Figure("volume_ml", setting.volume_ml, "mL", "asked"),
        Figure("worth_ml", setting.worth_ml, "mL", "ours, from the tank's volume"),
        Figure("tank_c", setting.tank_c, "C", "assumed"),
        Figure("room_c", setting.room_c, "C", "assumed"),
        Figure("tau_min", setting.tau_min, "min", "ours, from the tank's volume"),
        Figure("q10", rate.q10.value, "per 10 K", rate.q10.source),
    )
