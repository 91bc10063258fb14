"""Times as people write them."""

from __future__ import annotations

import re

from tankside.core.quantities.display import time_text
from tankside.core.quantities.limits import TIME_S, check_time
from tankside.core.quantities.typed import MIXED, NUMBER, Candidate, number, one_of, plain, unreadable

PLAINLY_MINUTES = 15
"""A bare whole number below this is minutes; from here on it may be seconds and is asked back."""

_CLOCK = re.compile(r"(?:(\d{1,2}) ?: ?)?(\d{1,4}) ?: ?(\d{1,2})(?: ?(?:m|min|minutes?))?")
_UNITS = re.compile(
    rf"(?:(?P<h>{MIXED}|{NUMBER}) ?(?:h|hrs?|hours?))? ?"
    rf"(?:(?P<m>{MIXED}|{NUMBER}) ?(?:m|mins?|minutes?|'))? ?"
    rf"(?:(?P<s>{MIXED}|{NUMBER}) ?(?:s|secs?|seconds?|\"))?"
)
_LAST_UNIT_LEFT_OUT = re.compile(r"(\d+) ?(h|m|min|') ?(\d{1,2})")
_BARE_DECIMAL = re.compile(r"(\d+)[.,](\d+)(?: ?(?P<unit>m|mins?|minutes?))?")


def read_time(text: str) -> float:
    """Seconds of a time as typed: '9:30', '9 1/2', '9½', '9m30s', '9 min', '570 s', '1:02:30'.

    '9.30' and '9,5' can mean two times and are asked back, each reading a way on.
    Result: s, 1 to 86,400. Own model: docs/how-to/amounts. Doubt: none.

    >>> read_time("9:30"), read_time("9½"), read_time("9m30s"), read_time("570 s")
    (570.0, 570.0, 570.0, 570.0)
    """
    typed = plain(text)
    for reader in (_of_clock, _of_bare_decimal, _of_fraction, _of_units, _of_bare_number):
        time_s = reader(typed)
        if time_s is not None:
            return check_time(time_s)
    raise unreadable("time-unreadable", text)


def _of_clock(typed: str) -> float | None:
    """'9:30', '1:02:30'; '9:5' may be 9:05 or 9:50."""
    found = _CLOCK.fullmatch(typed)
    if found is None:
        return None
    hours, minutes, seconds = found.groups()
    if int(seconds) >= 60 or (hours is not None and int(minutes) >= 60):
        raise unreadable("time-past-59", typed)
    whole = 3600 * int(hours or 0) + 60 * int(minutes)
    after = [int(seconds)] if len(seconds) == 2 else [int(seconds), 10 * int(seconds)]
    return _chosen([float(whole + one) for one in after if one < 60], typed)


def _of_bare_decimal(typed: str) -> float | None:
    """'9.30' may be 9:30 or 9:18, '9.3' the same with a nought lost; 'min' behind one decimal settles it."""
    found = _BARE_DECIMAL.fullmatch(typed)
    if found is None:
        return None
    minutes, decimals = 60.0 * int(found[1]), found[2]
    decimal = 60 * number(f"{found[1]}.{decimals}")
    if len(decimals) > 2 or int(decimals) >= 60 or (found["unit"] and len(decimals) == 1):
        return decimal
    tens = len(decimals) == 1 and int(decimals) < 6
    clock = minutes + int(decimals) * (10 if tens else 1)
    return _chosen([decimal, clock] if len(decimals) == 1 else [clock, decimal], typed)


def _of_fraction(typed: str) -> float | None:
    """'9 1/2' is minutes."""
    return 60 * number(typed) if re.fullmatch(MIXED, typed) else None


def _of_units(typed: str) -> float | None:
    """'9m30s', '9 min', '570 s', '1 h 5 min', and '9m30' with its last unit left out."""
    shortened = _LAST_UNIT_LEFT_OUT.fullmatch(typed)
    if shortened is not None:
        larger, smaller = (3600, 60) if shortened[2] == "h" else (60, 1)
        return float(larger * int(shortened[1]) + smaller * int(shortened[3]))
    found = _UNITS.fullmatch(typed)
    if found is None or not typed:
        return None
    parts = (found["h"], found["m"], found["s"])
    return sum(each * number(part) for each, part in zip((3600, 60, 1), parts, strict=True) if part)


def _of_bare_number(typed: str) -> float | None:
    """'9' is minutes, '570' may be seconds or minutes."""
    if not re.fullmatch(r"\d+", typed):
        return None
    told = float(typed)
    return 60 * told if told < PLAINLY_MINUTES else _chosen([told, 60 * told], typed)


def _chosen(readings: list[float], typed: str) -> float:
    """The only readable one of `readings`, or both asked back."""
    fit = [Candidate(time_text(one), one) for one in readings if TIME_S.hold(one)]
    return one_of(fit, code="time-two-readings", typed=typed) if fit else readings[0]
