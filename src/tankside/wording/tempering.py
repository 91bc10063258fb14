"""What to measure out, and what to do with it."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.tempering import Taps, Tempered
from tankside.core.planning.ways_to_temper import WaysToTemper
from tankside.core.quantities.display import (
    DIGITAL_MARK,
    temperature_and_band,
    temperature_text,
    time_text,
    volume_text,
)
from tankside.core.quantities.preferences import Preferences
from tankside.core.safety import SCALD_FROM_C

BATH_MARK = 0.5
"""A water bath is not known better."""

Measured = tuple[str, str, str]
"""What, how much, how warm."""


def measured(out: Tempered, taps: Taps, preferences: Preferences, *, mark_ml: float) -> tuple[Measured, ...]:
    """One row for each liquid, in the order in which they go into the jug."""
    told = (
        ("stock", out.stock_ml, taps.stock_c),
        ("hot water", out.hot_ml, taps.hot_c),
        ("cold water", out.cold_ml, taps.cold_c),
    )
    return tuple(
        (what, volume_text(ml, preferences, mark_ml=mark_ml), temperature_text(temp_c, preferences))
        for what, ml, temp_c in told
        if ml > 0
    )


def ways_sentences(ways: WaysToTemper, preferences: Preferences) -> tuple[str, ...]:
    """How to keep a printed time, by jug or by water bath, and how long it takes else; or a plain no."""
    keep = time_text(ways.time_s)
    if ways.cannot:
        return (f"It cannot be made to count as {keep}: jug, water bath and time all leave what is known.",)
    found = []
    if ways.jug is not None:
        verb = "warm" if ways.jug.value > ways.reads_c else "cool"
        found.append(f"{verb} the jug to {temperature_text(ways.jug.value, preferences)}")
    if ways.bath is not None:
        water = temperature_and_band(ways.bath, preferences, mark=BATH_MARK)
        found.append(f"stand the tank in water of {water} from the pour on")
    how = f"To keep {keep}, {', or '.join(found)}." if found else f"Neither jug nor water keeps {keep}."
    return (how,) if ways.time is None else (how, f"Or leave it as it is: {time_text(ways.time.value)}.")


def tempering_sentences(
    out: Tempered,
    taps: Taps,
    preferences: Preferences,
    *,
    jug: Estimate,
    mark_ml: float,
    mark: float = DIGITAL_MARK,
) -> tuple[str, ...]:
    """What the mixture gives, to the `mark` of the thermometer, and how to come to it safely."""
    held = volume_text(out.hold_back_ml, preferences, mark_ml=mark_ml)
    both = out.hot_ml > 0 and out.cold_ml > 0
    return (
        *(
            (f"Hot and cold together: {temperature_text(out.water_c, preferences, mark=mark)}.",)
            if both
            else ()
        ),
        f"The jug will read {temperature_and_band(jug, preferences, mark=mark)}.",
        f"Hold back the last {held} of water, stir, read, then top up hot or cold.",
        *(("Water this hot scalds: cold water first, then the hot.",) if taps.hot_c >= SCALD_FROM_C else ()),
    )
