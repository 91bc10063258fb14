"""How long to develop, and what that rests on."""

from __future__ import annotations

from tankside.core.development.rate import uneven_if_short
from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.development import Setting
from tankside.core.quantities.display import (
    DIGITAL_MARK,
    FACTOR_STEP,
    number_and_band,
    planned_time,
    temperature_text,
    time_text,
    volume_text,
)
from tankside.core.quantities.preferences import Preferences


def time_sentences(
    end: Estimate,
    mix_to: Estimate,
    setting: Setting,
    preferences: Preferences,
    *,
    reads_c: float,
    time_s: float,
    mark: float = DIGITAL_MARK,
) -> tuple[str, ...]:
    """The time first, then where the temperature goes, what settles it, and how to keep the printed time.

    Temperatures that are computed are told to the `mark` of the thermometer that is to read them.
    """
    start_c = setting.start_c(reads_c)
    last_c = float(setting.path(start_c, end.value)[1][-1])
    start, last, mixed = (
        temperature_text(one, preferences, mark=mark) for one in (start_c, last_c, mix_to.value)
    )
    reads = temperature_text(reads_c, preferences)
    goes = f" and goes to {last}" if last != start else " and stays there"
    return (
        f"{planned_time(end)}, from the start of pouring in to the start of pouring out.",
        f"The developer reads {reads}; in the tank it starts at {start}{goes}.",
        "Read the tank at one minute: that settles the time.",
        *(("Under 5:00 the film may come out uneven.",) if uneven_if_short(end.value) else ()),
        f"To keep {time_text(time_s)}, let the developer read {mixed} at the pour.",
    )


def setting_sentence(setting: Setting, preferences: Preferences, *, q10: Estimate) -> str:
    """What the time rests on, assumed or told."""
    tank, room = (temperature_text(one, preferences) for one in (setting.tank_c, setting.room_c))
    worth = volume_text(setting.worth_ml, preferences)
    return (
        f"Tank {tank}, worth {worth} of water; room {room}; "
        f"rate {number_and_band(q10, FACTOR_STEP, unit=' times per 10 K')}, {q10.source}."
    )
