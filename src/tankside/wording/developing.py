"""How long to develop, and what that rests on."""

from __future__ import annotations

from collections.abc import Sequence

from tankside.core.development.one_tank import Together
from tankside.core.development.push import Pushed
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


def push_sentences(came_to: Pushed) -> tuple[str, ...]:
    """What a push comes to at the printed temperature: mid-tones return, shadows do not.

    >>> from tankside.core.development.push import push
    >>> push_sentences(push(1, time_s=570))[1]
    'Mid-tones return; shadows stay 0.6 (0.5 to 0.8) stops short.'
    """
    short = came_to.shadows_short_stops
    ahead = number_and_band(_size(short), 0.1)
    stay = f"shadows stay {ahead} stops {'short' if short.value > 0 else 'ahead'}"
    reached = () if came_to.sure else ("This film may not reach that contrast at all.",)
    return (
        f"{'Pushed' if came_to.stops > 0 else 'Pulled'} by {_stops(came_to.stops)}: "
        f"{planned_time(came_to.time)} at the printed temperature, contrast "
        f"{number_and_band(came_to.contrast, 0.01)}.",
        f"Mid-tones return; {stay}.",
        *reached,
    )


def _stops(stops: float) -> str:
    """How many, as typed, without their sign."""
    return f"{abs(stops):g} stop{'' if abs(stops) == 1 else 's'}"


def _size(of: Estimate) -> Estimate:
    """A difference without its sign; one whose band passes through nothing begins there."""
    low, high = sorted((abs(of.low), abs(of.high)))
    return Estimate(abs(of.value), 0.0 if of.low < 0 < of.high else low, high, of.unit, of.source)


def together_sentences(came_to: Together, own_s: Sequence[float]) -> tuple[str, ...]:
    """What each film of a tank gets out of the time they share.

    >>> from tankside.core.development.one_tank import Due, fairest_together
    >>> together_sentences(fairest_together([Due(570.0), Due(480.0)]), (570.0, 480.0))[0]
    'The film for 9:30: contrast 6 % (4 to 7) too low.'
    """
    return tuple(_miss(one, time_s) for one, time_s in zip(came_to.deviations, own_s, strict=True))


def _miss(off: Estimate, time_s: float) -> str:
    """By how much one film's contrast misses."""
    size = _size(off)
    if round(size.value) == 0:
        return f"The film for {time_text(time_s)}: contrast as it should be."
    way = "high" if off.value > 0 else "low"
    return f"The film for {time_text(time_s)}: contrast {number_and_band(size, 1, unit=' %')} too {way}."


def setting_sentence(setting: Setting, preferences: Preferences, *, q10: Estimate) -> str:
    """What the time rests on, assumed or told."""
    tank, room = (temperature_text(one, preferences) for one in (setting.tank_c, setting.room_c))
    worth = volume_text(setting.worth_ml, preferences)
    return (
        f"Tank {tank}, worth {worth} of water; room {room}; "
        f"rate {number_and_band(q10, FACTOR_STEP, unit=' times per 10 K')}, {q10.source}."
    )
