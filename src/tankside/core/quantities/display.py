"""Amounts as a person reads them, with no more digits than their doubt allows."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, log10
from typing import Protocol

from tankside.core.quantities.convert import ml_each, step_in, temp_in
from tankside.core.quantities.preferences import Preferences

GLASS_MARK = 0.5
"""Mark of a glass thermometer in the degrees shown; one with digits is read to 0.1."""

DIGITAL_MARK = 0.1
FACTOR_STEP = 0.1
"""To what a factor of the rate per 10 K is told."""

ROLLS_STEP = 0.25
"""Film area is counted in rolls to a quarter, which is one sheet of 4x5."""

_FL_OZ_STEPS = (0.01, 0.05, 0.1, 0.25, 0.5, 1.0)
_UNIT = {"C": "°C", "F": "°F", "ml": "mL", "us_fl_oz": "fl oz", "imperial_fl_oz": "fl oz"}
_FINE = 3
"""Ends of a band are first taken to a third of a step (5 s of 15 s), because they are not known better."""


class Spread(Protocol):
    """A value with its interval; an `Estimate` is one."""

    @property
    def value(self) -> float: ...

    @property
    def low(self) -> float: ...

    @property
    def high(self) -> float: ...


@dataclass(frozen=True, slots=True)
class _Ends:
    """A spread in another unit."""

    value: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Shown:
    """What is shown of a spread: all three are whole multiples of `step`."""

    value: float
    low: float
    high: float
    step: float


def to_step(value: float, step: float) -> float:
    """`value` at the nearest multiple of `step` (above 0), halves upwards.

    Own model: docs/how-to/amounts. Doubt: half a step.

    >>> to_step(534.4, 15.0), to_step(20.84, 0.1)
    (540.0, 20.8)
    """
    return round(floor(value / step + 0.5 + 1e-9) * step, 9)


def shown(spread: Spread, step: float) -> Shown:
    """The spread at multiples of `step` (above 0): the value nearest, the band outwards.

    Own model: docs/how-to/amounts; ends are first taken to a third of the step, because they are not known
    better. What has no width is given none. Doubt: none added.

    >>> from types import SimpleNamespace as Any
    >>> shown(Any(value=534.4, low=522.9, high=552.0), 15.0)
    Shown(value=540.0, low=525.0, high=555.0, step=15.0)
    """
    value = to_step(spread.value, step)
    if spread.low == spread.high:
        return Shown(value, value, value, step)
    low = round(floor(to_step(spread.low, step / _FINE) / step + 1e-9) * step, 9)
    high = round(ceil(to_step(spread.high, step / _FINE) / step - 1e-9) * step, 9)
    return Shown(value, min(low, value), max(high, value), step)


def time_step_s(doubt_s: float) -> float:
    """The step in s that a planned time is shown to, for a doubt (width of its interval) in s.

    Own model: docs/how-to/amounts: 15 s where the doubt exceeds 20 s, 5 s above 5 s, else 1 s.

    >>> time_step_s(30.0), time_step_s(12.0), time_step_s(0.0)
    (15.0, 5.0, 1.0)
    """
    if doubt_s > 20:
        return 15.0
    return 5.0 if doubt_s > 5 else 1.0


def time_text(time_s: float) -> str:
    """Minutes and seconds of `time_s` (0 or more) to the whole second; an hour is '60:00'.

    Own model: docs/how-to/amounts. Doubt: half a second.

    >>> time_text(570.0), time_text(59.6), time_text(3600.0)
    ('9:30', '1:00', '60:00')
    """
    minutes, seconds = divmod(int(to_step(abs(time_s), 1.0)), 60)
    return f"{'-' if time_s < 0 else ''}{minutes}:{seconds:02d}"


def band_text(of: Shown) -> str:
    """A time with its band: '9:30 (9:15 to 9:45)'; the band is left out where it has no width.

    Own model: docs/how-to/amounts. Doubt: that shown.

    >>> band_text(Shown(570.0, 555.0, 585.0, 15.0))
    '9:30 (9:15 to 9:45)'
    """
    if of.low == of.high:
        return time_text(of.value)
    return f"{time_text(of.value)} ({time_text(of.low)} to {time_text(of.high)})"


def planned_time(spread: Spread) -> str:
    """A planned time in s with its band, to the step that its doubt allows.

    Own model: docs/how-to/amounts. Doubt: that shown.

    >>> from types import SimpleNamespace as Any
    >>> planned_time(Any(value=534.4, low=524.3, high=552.0))
    '9:00 (8:45 to 9:15)'
    """
    return band_text(planned(spread))


def planned(spread: Spread) -> Shown:
    """A planned time in s at the step that its doubt allows.

    Own model: docs/how-to/amounts. Doubt: none added.

    >>> from types import SimpleNamespace as Any
    >>> planned(Any(value=570.36, low=554.0, high=586.0))
    Shown(value=570.0, low=555.0, high=585.0, step=15.0)
    """
    return shown(spread, time_step_s(spread.high - spread.low))


def told_end(spread: Spread) -> str:
    """An end that a reading moved, in s: kept to 1 s, shown to 5 s.

    Own model: docs/how-to/amounts. Doubt: that shown.

    >>> from types import SimpleNamespace as Any
    >>> told_end(Any(value=613.0, low=592.0, high=629.0))
    '10:15 (9:50 to 10:30)'
    """
    return band_text(shown(spread, 5.0))


def time_and_doubt(time_s: float, *, doubt_s: float) -> str:
    """A time and half its interval, both in s and shown to 5 s: '9:20 ± 0:25'.

    Own model: docs/how-to/amounts. Doubt: that shown.

    >>> time_and_doubt(559.0, doubt_s=24.0)
    '9:20 ± 0:25'
    """
    outwards_s = ceil(to_step(doubt_s, 5.0 / _FINE) / 5 - 1e-9) * 5.0
    return f"{time_text(to_step(time_s, 5.0))} ± {time_text(outwards_s)}"


def temperature_text(temp_c: float, preferences: Preferences, *, mark: float = DIGITAL_MARK) -> str:
    """`temp_c` in the person's degrees, to the `mark` of the thermometer in those degrees.

    Own model: docs/how-to/amounts. Doubt: half a mark.

    >>> temperature_text(20.84, Preferences()), temperature_text(20.0, Preferences("F"))
    ('20.8 °C', '68.0 °F')
    >>> temperature_text(20.84, Preferences(), mark=GLASS_MARK)
    '21.0 °C'
    """
    unit = preferences.temperature
    return f"{plain_number(temp_in(temp_c, unit), mark)} {_UNIT[unit]}"


def temperature_and_band(spread: Spread, preferences: Preferences, *, mark: float = DIGITAL_MARK) -> str:
    """A spread of temperatures in C, told in the person's degrees to `mark`: '20.8 °C (20.7 to 20.9)'.

    Own model: docs/how-to/amounts. Doubt: that shown.

    >>> from types import SimpleNamespace as Any
    >>> temperature_and_band(Any(value=20.84, low=20.77, high=20.91), Preferences())
    '20.8 °C (20.7 to 20.9)'
    """
    unit = preferences.temperature
    ends = _Ends(*(temp_in(one, unit) for one in (spread.value, spread.low, spread.high)))
    return number_and_band(ends, mark, unit=f" {_UNIT[unit]}")


def number_and_band(spread: Spread, step: float, *, unit: str = "") -> str:
    """A spread at multiples of `step` (above 0) with its `unit`; the band is left out where it has no width.

    Own model: docs/how-to/amounts. Doubt: that shown.

    >>> from types import SimpleNamespace as Any
    >>> number_and_band(Any(value=2.24, low=1.5, high=2.9), 0.1)
    '2.2 (1.5 to 2.9)'
    """
    of = shown(spread, step)
    told = f"{plain_number(of.value, step)}{unit}"
    if of.low == of.high:
        return told
    return f"{told} ({plain_number(of.low, step)} to {plain_number(of.high, step)})"


def step_text(step_k: float, preferences: Preferences) -> str:
    """A difference of temperature in the person's degrees, to 0.1.

    Own model: docs/how-to/amounts. Doubt: 0.05 degrees.

    >>> step_text(5.0, Preferences("F"))
    '9.0 °F'
    """
    unit = preferences.temperature
    return f"{plain_number(step_in(step_k, unit), DIGITAL_MARK)} {_UNIT[unit]}"


def volume_text(volume_ml: float, preferences: Preferences, *, mark_ml: float = 1.0) -> str:
    """`volume_ml` (0 or more) in the person's unit, to the mark of the measure that it is read on.

    Own model: docs/how-to/amounts. Doubt: half a mark; fluid ounces to the next coarser usual step.

    >>> volume_text(71.3, Preferences()), volume_text(500.0, Preferences(volume="us_fl_oz"))
    ('71 mL', '16.90 fl oz')
    """
    unit = preferences.volume
    return f"{plain_number(volume_ml / ml_each(unit), volume_step(mark_ml, preferences))} {_UNIT[unit]}"


def volume_step(mark_ml: float, preferences: Preferences) -> float:
    """The step in the person's unit that `mark_ml` (above 0) allows.

    Own model: docs/how-to/amounts. Doubt: none.

    >>> volume_step(1.0, Preferences(volume="us_fl_oz"))
    0.05
    """
    if preferences.volume == "ml":
        return mark_ml
    mark = mark_ml / ml_each(preferences.volume)
    return next((step for step in _FL_OZ_STEPS if step >= mark), _FL_OZ_STEPS[-1])


def plain_number(value: float, step: float) -> str:
    """`value` at a multiple of `step`, with the decimals that the step needs.

    Own model: docs/how-to/amounts. Doubt: half a step.

    >>> plain_number(9.84, 0.25), plain_number(1234.0, 5.0)
    ('9.75', '1235')
    """
    decimals = 0 if step == int(step) else max(1, -floor(log10(step)))
    while round(step, decimals) != round(step, 6):
        decimals += 1
    text = f"{to_step(value, step):.{decimals}f}"
    return text.removeprefix("-") if float(text) == 0 else text


def index_text(index: float) -> str:
    """An exposure index as written on the sticker.

    Own model: docs/how-to/amounts. Doubt: none.

    >>> index_text(200.0)
    'EI 200'
    """
    return f"EI {index:.12g}"


def temperature_sign(preferences: Preferences) -> str:
    """The sign of the unit in which this person reads temperatures.

    Own model: docs/how-to/preferences. Doubt: none.

    >>> temperature_sign(Preferences("F"))
    '°F'
    """
    return _UNIT[preferences.temperature]


def volume_sign(preferences: Preferences) -> str:
    """The sign of the unit in which this person reads volumes.

    Own model: docs/how-to/preferences. Doubt: none.

    >>> volume_sign(Preferences())
    'mL'
    """
    return _UNIT[preferences.volume]
