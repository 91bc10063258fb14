"""Why a time, and why a temperature to mix to."""

from __future__ import annotations

from tankside.core.planning.why import Length, Narrowing
from tankside.core.quantities.display import temperature_text, time_text, to_step
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.words import PlotWords, WhyWords


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


def _next_strip(told: Narrowing, _: Preferences) -> str:
    """The step strip that tells most, with what it would leave."""
    now, left = (time_text(to_step(told.figure(one), 5.0)) for one in ("now_s", "left_s"))
    at = time_text(told.figure("strip_s"))
    return (
        f"A step strip developed for {at} tells more of whether the printed time suits you: "
        f"± {left} in place of ± {now}."
    )


WORDS = WhyWords(
    means={
        "time": "the time that does what the printed time does at its own temperature",
        "mix-to": "the temperature that makes the printed time right",
    },
    lengths={
        "leaflet": _row, "own": _row, "accepted": _row, "temperature": _temperature, "own-time": _own_time,
        "mix": _mix,
    },
    parts={
        "factor": "rate with temperature",
        "thermometer": "thermometer",
        "rows": "spread of the leaflet's rows",
        "push": "how far this film can be pushed",
        "agitation": "another agitation than printed for",
        "worth": "what the tank takes",
        "drift": "how fast it drifts",
    },
    narrows={
        "read-tank": "Read the tank at one minute.",
        "leaflet-rows": "Add the leaflet's other temperatures.",
        "step-strip": "Develop a step strip with a roll: it says whether this time suits you.",
        "next-strip": _next_strip,
        "tank-test": "Test the tank with warm water, two minutes.",
        "read-room": "Read the room.",
    },
    names={
        "printed_s": "time as printed", "printed_c": "temperature as printed",
        "jug_c": "developer in the jug", "volume_ml": "developer", "worth_ml": "tank, as water",
        "tank_c": "empty tank", "room_c": "room", "tau_min": "time constant of the tank",
        "q10": "factor of the rate",
    },
    leaves_out={
        "suits-your-hands": "Whether the printed time suits your own film, tank and hands is not in this "
        "doubt; step strips tell that.",
    },
    plots={
        "drift": PlotWords(
            "The tank over its bath", "after the pour", "in the tank", "at least", "at most", "expected"
        ),
    },
)  # fmt: skip
