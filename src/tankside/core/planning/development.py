"""How long to develop, and how warm to mix: where a combination meets a tank, a room and a reading."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from tankside.core.development.equivalent_time import start_that_makes_it_right, time_needed
from tankside.core.development.printed_rows import Row, as_printed
from tankside.core.development.rate import HYDROQUINONE_LEAST_C, check_temperature
from tankside.core.doubt.distributions import Z95, FloatArray
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.known_time import KnownTime
from tankside.core.quantities.display import shown, time_step_s, to_step
from tankside.core.rates import RateLaw
from tankside.core.thermal.drift import READING_SD_K, temp_at
from tankside.core.thermal.tank import TAU_BANDS_MIN, Material, liquid_for, met_c

MODEL = "development/1"
WORTH_SHARE = 0.25
"""What a tank is worth is known to a quarter (docs/science/tank-and-liquid)."""

OTHER_AGITATION_SHARE = 0.10
"""How far a time may be off for another agitation than it was printed for (common practice)."""

FINE_S = 5.0
"""No end of a band is known better."""


@dataclass(frozen=True, slots=True)
class Setting:
    """What a developer is poured into: `volume_ml` into a tank at `tank_c` worth `worth_ml`, in a room."""

    volume_ml: float
    worth_ml: float
    tank_c: float
    room_c: float
    tau_min: float
    material: Material = "plastic"

    @property
    def tau_ends_min(self) -> tuple[float, float]:
        """Between which the tank's time constant is believed, 5-95 %."""
        low_min, high_min = TAU_BANDS_MIN[self.material]
        return min(low_min, self.tau_min), max(high_min, self.tau_min)

    def start_c(self, jug_c: float) -> float:
        """What the tank comes to when a jug at `jug_c` is poured in."""
        return met_c(liquid_ml=self.volume_ml, liquid_c=jug_c, worth_ml=self.worth_ml, tank_c=self.tank_c)

    def jug_c(self, start_c: float) -> float:
        """What the jug must be so that the tank comes to `start_c`."""
        return liquid_for(
            start_c=start_c, liquid_ml=self.volume_ml, worth_ml=self.worth_ml, tank_c=self.tank_c
        )

    def path(self, start_c: float, until_s: float) -> tuple[FloatArray, FloatArray]:
        """Times and temperatures of the drift from `start_c`, in pieces of 15 s at most."""
        times = np.linspace(0.0, until_s, max(2, int(until_s / 15) + 1))
        return times, temp_at(times, start_c=start_c, room_c=self.room_c, tau_min=self.tau_min)


@dataclass(frozen=True, slots=True)
class DoubtPart:
    """One cause: how far it alone moves the answer down and up, at its 5 and 95 % points."""

    code: str
    down: float
    up: float

    @property
    def half_width(self) -> float:
        """Half of its own interval."""
        return (self.down + self.up) / 2


@dataclass(frozen=True, slots=True)
class WithParts:
    """An answer with the parts of its doubt, largest first, combined as squares."""

    estimate: Estimate
    parts: tuple[DoubtPart, ...]


def time_for(
    known: KnownTime,
    setting: Setting,
    jug_c: float,
    *,
    thermometer_step_c: float,
    other_agitation: bool = False,
) -> WithParts:
    """When to pour out a developer that reads `jug_c` in the jug, in s after the pour, with its doubt.

    Arguments: `jug_c` inside the rate's range once the tank has taken its heat, else refused with a way on;
    `thermometer_step_c` its finest mark (K); `other_agitation` where it was printed for another: then a first
    guess, 10 % either way. Result: s, 5-95 %, given what is assumed of tank and room; a time that follows no
    rate is told as printed, with no part of doubt.
    Own model: docs/science/rate-and-equivalent-time. Doubt: factor, thermometer, and the rows where several
    make a line, combined as squares. Whether the row suits one's own hands is not in it.
    """
    if known.rule != "rate":
        return _by_rule(known, setting.start_c(jug_c))
    rate = known.rate
    check_temperature(rate, setting.start_c(jug_c), hydroquinone=known.hydroquinone)
    believed = rate.believed

    def at(*, jug: float = jug_c, law: RateLaw = believed.law, needed_s: float = rate.time_s.value) -> float:
        return _end(setting, jug, law=law, needed_s=needed_s)

    told_s = at()
    _check_path(known, setting.path(setting.start_c(jug_c), told_s)[1])
    shallow, steep = believed.ends
    by_k = Z95 * max(READING_SD_K, thermometer_step_c / 12**0.5)
    guess_s = OTHER_AGITATION_SHARE * told_s if other_agitation else 0.0
    return combined(
        told_s,
        (
            part("factor", told_s, at(law=shallow), at(law=steep)),
            part("thermometer", told_s, at(jug=jug_c - by_k), at(jug=jug_c + by_k)),
            part("rows", told_s, at(needed_s=rate.time_s.low), at(needed_s=rate.time_s.high)),
            DoubtPart("agitation", guess_s, guess_s),
        ),
        unit="s",
        source=known.source,
    )


def mix_to(known: KnownTime, setting: Setting, time_s: float) -> WithParts:
    """What the jug must read at the pour so that `time_s` on the clock is right, in C, with its doubt.

    Arguments: `time_s` the time meant (s, above 0); the setting. Result: C, 5-95 %.
    Where no rate holds the tank is to start as warm as its row is printed for.
    Own model: temper first, correct second (docs/science/tempering). Doubt: worth of the tank (25 %), its
    time constant, and hardly any from the factor per 10 K.
    """
    rate = known.rate

    def at(where: Setting = setting, law: RateLaw = rate.believed.law) -> float:
        if known.rule != "rate":
            return where.jug_c(known.row.temp_c)
        start_c = start_that_makes_it_right(
            lambda start_c: where.path(start_c, time_s),
            time_s=time_s,
            needed_s=rate.time_s.value,
            law=law,
        )
        return where.jug_c(start_c)

    told_c = at()
    light, heavy = (
        replace(setting, worth_ml=setting.worth_ml * share) for share in (1 - WORTH_SHARE, 1 + WORTH_SHARE)
    )
    fast, slow = (replace(setting, tau_min=tau) for tau in setting.tau_ends_min)
    return combined(
        told_c,
        (
            part("worth", told_c, at(light), at(heavy)),
            part("drift", told_c, at(fast), at(slow)),
            part("factor", told_c, *(at(law=law) for law in rate.believed.ends)),
        ),
        unit="C",
        source=known.source,
    )


def told(end: Estimate) -> Estimate:
    """An end as it is planned: to the step that its interval allows, the band outward.

    The ends of the band are first taken to 5 s, because they are not known better.
    Own model: docs/science/planning. Doubt: that shown.

    >>> out = told(Estimate(535.9, 523.1, 553.1, "s"))
    >>> out.value, out.low, out.high
    (540.0, 525.0, 555.0)
    """
    step_s = time_step_s(end.high - end.low)
    fine_s = min(step_s, FINE_S)
    low_s, high_s = to_step(end.low, fine_s), to_step(end.high, fine_s)
    band = Estimate(end.value, min(low_s, end.value), max(high_s, end.value), "s")
    seen = shown(band, step_s)
    return Estimate(seen.value, seen.low, seen.high, end.unit, end.source)


def _end(setting: Setting, jug_c: float, *, law: RateLaw, needed_s: float) -> float:
    """The end at one set of inputs."""
    times, temps = setting.path(setting.start_c(jug_c), 2 * needed_s)
    return float(time_needed(needed_s, times, temps, law))


def _by_rule(known: KnownTime, start_c: float) -> WithParts:
    """The time of a method that follows no rate: read from its table, or the least that completes it."""
    row = known.row
    rows = known.rate.rows if known.source == "leaflet" else (Row(row.temp_c, row.time_s),)
    if known.rule == "table only":
        return WithParts(as_printed(rows, start_c), ())
    return WithParts(Estimate(row.time_s, row.time_s, row.time_s, "s", known.source), ())


def _check_path(known: KnownTime, temps_c: FloatArray) -> None:
    """Refuse a drift whose mean leaves what is known, or that gets too cold for hydroquinone."""
    check_temperature(known.rate, float(np.mean(temps_c)), hydroquinone=known.hydroquinone)
    coldest_c = float(np.min(temps_c))
    if known.hydroquinone is not False and coldest_c < HYDROQUINONE_LEAST_C:
        check_temperature(known.rate, coldest_c, hydroquinone=known.hydroquinone)


def part(code: str, middle: float, one: float, other: float) -> DoubtPart:
    """A cause from the answers at its two ends, whichever way round they come."""
    return DoubtPart(code, max(0.0, middle - min(one, other)), max(0.0, max(one, other) - middle))


def combined(middle: float, parts: tuple[DoubtPart, ...], *, unit: str, source: str) -> WithParts:
    """The parts combined as squares, those below a thousandth of the whole left out."""
    down = float(np.sqrt(sum(one.down**2 for one in parts)))
    up = float(np.sqrt(sum(one.up**2 for one in parts)))
    ordered = sorted(
        (one for one in parts if one.half_width > 0.001 * (down + up)), key=lambda one: -one.half_width
    )
    return WithParts(Estimate(middle, middle - down, middle + up, unit, source), tuple(ordered))
