"""To how many digits a face may tell a number: steps by unit, and what is written finer than they allow."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from decimal import Decimal
from math import gcd
from typing import Any

STEPS = {
    "°C": "0.1", "°F": "0.1", "K": "0.1", "C": "0.1",
    "s": "1", "min": "1", "minutes": "1", "%": "1", "EI": "0.1",
    "fl oz": "0.01", "MB": "0.1", "rolls": "1", "roll": "1", "times": "0.1",
    "per 10 K": "0.1", "density": "0.01", "standard deviation": "0.001", "": "0.1",
}  # fmt: skip
"""The finest step of a unit on any face; '' is a number without one. Ours: docs/how-to/amounts."""

ENDINGS = {
    "s": "s", "c": "C", "k": "K", "ml": "mL", "percent": "%", "us": "s", "m": "rolls", "g": "g",
    "index": "EI",
}  # fmt: skip
"""What the end of a name in JSON says of its unit; moments in microseconds are whole."""

BY_NAME = {"old": "s", "new": "s", "scatter": "standard deviation"}
"""Units that names in JSON tell as a whole."""

RESIDUALS = {"start", "last", "trace", "high", "floor", "limit"}
"""Names of the wash at the sink whose numbers are g/m2 (of a trace: seconds, then g/m2)."""

FLOOR = Decimal("0.002")
OF_THEIR_INTERVAL = {"", "density", "log H"}
"""Units of what is written as finely as its own interval allows."""

SHARE = 30
"""The width of an interval may hold at most this many of the steps in which it is written."""

_NUMBER = r"[-+\N{MINUS SIGN}]?\d+(?:\.\d+)?"
_TIME = r"\d+:\d\d"
_UNITS = "°C|°F|K|mL|fl oz|g/m²|g|s|min|minutes|%|MB|rolls?|times"
_TOKEN = re.compile(rf"(?<![\w.:/,#-])(\d+\.\d+)(?![\d(.])(?: ?({_UNITS})(?!\w))?")
_TIMES = re.compile(rf"({_TIME}) \(({_TIME}) to ({_TIME})\)")
_HALVES = re.compile(rf"({_TIME}) ± ({_TIME})")
_BANDS = re.compile(rf"(?<![\w./])({_NUMBER})[^()\d:]{{0,20}} \(({_NUMBER}) to ({_NUMBER})\)")


def step_of_time(width_s: float, *, planned: bool) -> int:
    """The step in s of a time with an interval so wide: 15 (planned) or 5 (moved by a reading), 5 or 1."""
    if width_s > 20:
        return 15 if planned else 5
    return 5 if width_s > 5 else 1


def finest(unit: str, value: Decimal) -> Decimal:
    """The finest step in which this value of this unit may be written."""
    if unit == "mL":
        return Decimal("0.1") if abs(value) <= 10 else Decimal(1)
    if unit == "g":
        return Decimal("0.01") if abs(value) < 10 else Decimal("0.1")
    if unit in ("g/m²", "g/m2"):
        return max(Decimal("0.001"), Decimal(10) ** (value.adjusted() - 1)) if value else Decimal(1)
    if unit in ("rolls", "roll") and value % Decimal("0.25") == 0:
        return Decimal(1).scaleb(int(value.normalize().as_tuple().exponent))
    return Decimal(STEPS[unit])


def too_fine(text: str, *, planned: bool = False, bare: str = "") -> list[str]:
    """What is written in `text` finer than allowed; `bare` is the unit of numbers that tell none."""
    found = [match[0] for match in _TOKEN.finditer(text) if _finer(match[1], match[2] or bare)]
    for match in _TIMES.finditer(text):
        value, low, high = (_seconds(match[n]) for n in (1, 2, 3))
        step = step_of_time(high - low, planned=planned)
        found += [match[0]] if any(one % step for one in (value, low, high)) else []
    found += [
        match[0] for match in _HALVES.finditer(text) if _seconds(match[1]) % 5 or _seconds(match[2]) % 5
    ]
    for match in _BANDS.finditer(text):
        value, low, high = (Decimal(match[n].replace("\N{MINUS SIGN}", "-")) for n in (1, 2, 3))
        found += [match[0]] if _written_finer((value, low, high), high - low) else []
    return found


def json_too_fine(text: str, *, planned: bool = False) -> list[str]:
    """What JSON holds finer than allowed, its sentences included; each with the way to it."""
    told = json.loads(text, parse_float=Decimal)
    return [f"{'.'.join(way)}: {what}" for way, what in _walk(told, (), planned=planned)]


def _walk(told: Any, way: tuple[str, ...], *, planned: bool) -> Iterator[tuple[tuple[str, ...], str]]:
    if isinstance(told, dict):
        yield from ((way, what) for what in _interval(told, planned=planned))
        unit = told.get("unit") if "value" in told else None
        for name, one in told.items():
            if name in ("value", "interval") and "interval" in told and unit in OF_THEIR_INTERVAL:
                continue
            named = f"{name}[{unit}]" if unit is not None and name in ("value", "interval") else name
            yield from _walk(one, (*way, named), planned=planned)
    elif isinstance(told, list):
        for number, one in enumerate(told):
            yield from _walk(one, (*way, str(number)), planned=planned)
    elif isinstance(told, str):
        if way[-1:] != ("source",):
            bare = "g/m²" if "residual" in way else ""
            yield from ((way, what) for what in too_fine(told, planned=planned, bare=bare))
    elif isinstance(told, Decimal) and told % finest(_unit(way), told):
        yield way, str(told)
    elif isinstance(told, Decimal) and _unit(way) == "g/m2" and told < FLOOR:
        yield way, f"{told} is under the floor"


def _interval(told: dict[str, Any], *, planned: bool) -> Iterator[str]:
    """A value told with its interval, in steps that its doubt allows."""
    interval = told.get("interval")
    if not isinstance(interval, list):
        return
    value, low, high = (_as_short(Decimal(one)) for one in (told["value"], *interval))
    if told.get("unit") == "s":
        step = step_of_time(float(high - low), planned=planned)
        if any(one % step for one in (value, low, high)):
            yield f"{value} s of {low} to {high}"
    elif _written_finer((value, low, high), high - low):
        yield f"{value} of {low} to {high}"


def _as_short(value: Decimal) -> Decimal:
    """A whole number without the decimal that JSON gives it."""
    return value.to_integral_value() if value == value.to_integral_value() else value


def _unit(way: tuple[str, ...]) -> str:
    """The unit that the names on the way to a number tell."""
    names = [name for name in way if not name.isdigit()]
    last = names[-1] if names else ""
    if last.endswith("]"):
        return last[last.index("[") + 1 : -1]
    if "residual" in names and last in RESIDUALS:
        return "s" if last == "trace" and way[-1] == "0" else "g/m2"
    if last in BY_NAME:
        return BY_NAME[last]
    return ENDINGS.get(last.rsplit("_", 1)[-1], "")


def _finer(number: str, unit: str) -> bool:
    value = Decimal(number)
    return (unit == "g/m²" and value < FLOOR) or _step(value) < finest(unit, value)


def _written_finer(ends: tuple[Decimal, ...], width: Decimal) -> bool:
    """Whether ends are written in steps too small for the width between them."""
    decimals = min(_step(one) for one in ends)
    step = decimals if decimals < 1 else Decimal(gcd(*(int(one) for one in ends)))
    return width > 0 and step * SHARE < width


def _step(value: Decimal) -> Decimal:
    """The step in which a number is written: 0.1 for 20.8, 1 for any that is whole."""
    exponent = value.as_tuple().exponent
    return Decimal(1).scaleb(int(exponent)) if isinstance(exponent, int) and exponent < 0 else Decimal(1)


def _seconds(time: str) -> int:
    minutes, seconds = time.split(":")
    return 60 * int(minutes) + int(seconds)
