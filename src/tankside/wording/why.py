"""Why a number is what it is, in words."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor
from typing import assert_never

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.why import Figure, Length, LengthCode, PartOfDoubt, Why
from tankside.core.quantities.display import (
    plain_number,
    planned_time,
    shown,
    temperature_text,
    time_step_s,
    time_text,
    to_step,
    volume_text,
)
from tankside.core.quantities.preferences import Preferences
from tankside.wording.plan_changes import BATHS

PARTS = {
    "factor": "rate with temperature",
    "thermometer": "thermometer",
    "rows": "spread of the leaflet's rows",
    "worth": "what the tank takes",
    "drift": "how fast it drifts",
    "hot-reading": "reading of the hot water",
    "cold-reading": "reading of the cold water",
    "stock-reading": "warmth of the stock",
    "jug": "what the jug takes",
    "development": "end of development",
}
NARROWS = {
    "read-tank": "Read the tank at one minute.",
    "leaflet-rows": "Add the leaflet's other temperatures.",
    "step-strip": "Develop a step strip with a roll: it says whether this time suits you.",
    "tank-test": "Test the tank with warm water, two minutes.",
    "read-room": "Read the room.",
    "read-taps": "Read both taps again just before mixing.",
    "weigh-jug": "Say what the jug weighs.",
    "hold-back": "Hold back the last 50 mL and read.",
    "second-tank": "A second tank lets it begin sooner.",
}
NAMES = {
    "printed_s": "time as printed", "printed_c": "temperature as printed", "jug_c": "developer in the jug",
    "volume_ml": "developer", "worth_ml": "tank, as water", "tank_c": "empty tank", "room_c": "room",
    "tau_min": "time constant of the tank", "q10": "factor of the rate", "hot_c": "hot water",
    "cold_c": "cold water", "stock_c": "stock", "stock_ml": "stock", "jug_ml": "jug, as water",
    "pour_s": "pouring", "drain_s": "draining", "starts_s": "start after the first pour",
    "soft_s": "an inversion may slip by", "between_s": "between two tankfuls", "step_s": "step of the start",
}  # fmt: skip


STEPS = {"C": 0.1, "mL": 1.0}
"""To what an answer is shown that is no time."""

Say = Callable[[float], str]
"""How a value is said where its unit alone does not tell: an end by the clock."""


def title(why: Why, preferences: Preferences, *, say: Say | None = None) -> str:
    """The heading of the page."""
    said = say or _in_unit(why, preferences)
    return f"Why {said(shown_answer(why)[0])}?"


def answer_sentence(why: Why, preferences: Preferences, *, say: Say | None = None) -> str:
    """The answer in frequencies, with what it holds for."""
    answer = why.answer
    if answer.low == answer.high:
        return "It is a rule, not an estimate."
    said = say or _in_unit(why, preferences)
    low, high = (said(one) for one in shown_answer(why)[1:])
    if low == high:
        return "Its doubt is smaller than the finest mark one could read."
    match why.about:
        case "time":
            about = "the time that does what the printed time does at its own temperature"
        case "mix-to":
            about = "the temperature that makes the printed time right"
        case "hot" | "cold":
            about = "the right amount"
        case "end":
            about = "the end"
        case "second-start":
            about = "the start"
        case _:
            assert_never(why.about)
    return f"Nine times in ten {about} lies between {low} and {high}."


def shown_answer(why: Why) -> tuple[float, float, float]:
    """Value, low and high as they are shown: times to the step that their doubt allows, outwards.

    The end of an evening is said by the clock, so it goes up to whole minutes.
    """
    answer = why.answer
    if why.about == "end":
        up = [60.0 * ceil(one / 60 - 1e-9) for one in (answer.value, answer.high)]
        return up[0], 60.0 * floor(answer.low / 60 + 1e-9), up[1]
    if answer.low == answer.high:
        return answer.value, answer.low, answer.high
    step = _step(why)
    told = shown(answer, step)
    return told.value if answer.unit != "s" else answer.value, told.low, told.high


def _step(why: Why) -> float:
    """To what the answer and the parts of its doubt are shown."""
    answer = why.answer
    return time_step_s(answer.high - answer.low) if answer.unit == "s" else STEPS.get(answer.unit, 1.0)


def doubt_text(why: Why, preferences: Preferences) -> str:
    """The larger half of the interval: '0:15', '0.3 °C', of an end '1 min'; empty where there is none."""
    value, low, high = shown_answer(why)
    half = max(high - value, value - low)
    if why.answer.low == why.answer.high:
        return ""
    if half <= 0:
        return f"less than {difference_text(STEPS.get(why.answer.unit, 1.0), why.answer.unit, preferences)}"
    if why.about == "end":
        return f"{half / 60:.0f} min"
    return difference_text(half, why.answer.unit, preferences)


def _in_unit(why: Why, preferences: Preferences) -> Say:
    """A value in the answer's unit."""
    return lambda value: value_text(value, why.answer.unit, preferences)


def length_words(length: Length, preferences: Preferences) -> tuple[str, str]:
    """Heading and sentence of one source on the scale."""
    return LENGTHS[length.code](length, preferences)


def part_words(part: PartOfDoubt, why: Why, preferences: Preferences) -> str:
    """One part of the doubt, to the same step as the whole: a part never looks larger than the sum."""
    unit = why.answer.unit
    step = _step(why)
    width = to_step(part.half_width, step)
    said = difference_text(width or step, unit, preferences)
    return f"{said if width else f'under {said}'} {PARTS[part.code]}"


def figure_words(figure: Figure, preferences: Preferences) -> str:
    """One input with its unit and its origin."""
    return f"{NAMES[figure.code]}: {value_text(figure.value, figure.unit, preferences)} ({figure.origin})"


def narrows_sentences(why: Why) -> tuple[str, ...]:
    """What would narrow the doubt."""
    return tuple(NARROWS[one] for one in why.narrows)


def value_text(value: float, unit: str, preferences: Preferences) -> str:
    """A number with its unit as a person reads it.

    >>> value_text(540.0, "s", Preferences()), value_text(20.84, "C", Preferences())
    ('9:00', '20.8 °C')
    """
    match unit:
        case "s":
            return time_text(value)
        case "C":
            return temperature_text(value, preferences)
        case "mL":
            return volume_text(value, preferences)
        case "min":
            return f"{value:.0f} min"
        case _:
            return f"{plain_number(value, 0.1)} {unit}".strip()


def difference_text(value: float, unit: str, preferences: Preferences) -> str:
    """A difference with its unit: a time as minutes and seconds, a temperature in the person's degrees."""
    if unit == "C":
        from_c = 1.8 if preferences.temperature == "F" else 1.0
        told = value * from_c
        return f"{plain_number(told, 0.1 if told >= 0.095 else 0.01)} °{preferences.temperature}"
    return value_text(value, unit, preferences)


def estimate_text(estimate: Estimate, preferences: Preferences) -> str:
    """An estimate with its band."""
    if estimate.unit == "s":
        return planned_time(estimate)
    ends = (estimate.value, estimate.low, estimate.high)
    told, low, high = (value_text(one, estimate.unit, preferences) for one in ends)
    return told if low == high else f"{told} ({low} to {high})"


def _row(length: Length, preferences: Preferences) -> tuple[str, str]:
    """A row that gives the time."""
    heads = {"leaflet": "From the leaflet", "own": "Your own time", "accepted": "Your accepted time"}
    rows = length.figure("rows")
    more = f", one of {rows:g} rows" if rows > 1 else ""
    warm = temperature_text(length.figure("temp_c"), preferences)
    return heads[length.code], f"{time_text(length.figure('time_s'))} at {warm}{more}."


def _temperature(length: Length, preferences: Preferences) -> tuple[str, str]:
    """What the tank's temperature does to the time."""
    extra_s = length.figure("extra_s")
    start, mean = (temperature_text(length.figure(one), preferences) for one in ("start_c", "mean_c"))
    if abs(extra_s) < 1:
        return "The tank is right", f"{start} once filled, {mean} on average: nothing to add."
    head, more = ("The tank is cooler", "+") if extra_s > 0 else ("The tank is warmer", "\N{MINUS SIGN}")
    return head, f"{start} once filled, {mean} on average, so {more}{time_text(abs(extra_s))}."


def _own_time(length: Length, _: Preferences) -> tuple[str, str]:
    """A time that was set by hand."""
    return "Your own time", f"{time_text(length.estimate.value)}, taken as it is."


def _mix(length: Length, preferences: Preferences) -> tuple[str, str]:
    """What the tank does to what is mixed."""
    start, tank = (temperature_text(length.figure(one), preferences) for one in ("start_c", "tank_c"))
    return "The tank takes heat", f"The empty tank is at {tank}; filled it comes to {start}, then drifts."


def _taps(length: Length, preferences: Preferences) -> tuple[str, str]:
    """What the waters are for."""
    target = temperature_text(length.figure("target_c"), preferences)
    return "From the taps", f"What brings stock and jug to {target}."


def _bath(length: Length, _: Preferences) -> tuple[str, str]:
    """One bath of the last tankful."""
    return BATHS[length.figures[0].code], f"{time_text(length.figures[0].value)}."


def _before(length: Length, _: Preferences) -> tuple[str, str]:
    """The tankful that was there first."""
    return "The tankful before", f"Hung {time_text(length.estimate.value)} after the first pour."


def _order(length: Length, _: Preferences) -> tuple[str, str]:
    """What decides the start."""
    if length.figure("same_tank") > 0:
        return "The same tank", "Hung, reels dried, loaded again."
    return "One pair of hands", "From here on no two acts want the hands at once."


LENGTHS: dict[LengthCode, Callable[[Length, Preferences], tuple[str, str]]] = {
    "leaflet": _row, "own": _row, "accepted": _row, "temperature": _temperature, "own-time": _own_time,
    "mix": _mix, "taps": _taps, "baths": _bath, "before": _before, "order": _order,
}  # fmt: skip
