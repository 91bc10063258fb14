"""Step tablets, and step strips as they were read: what a person typed, never what was worked out of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

import numpy as np

from tankside.core.quantities.readings import TypedReadings, read_readings
from tankside.core.refusals import refuse
from tankside.core.sensitometry.curve import MOST_DENSITY, READING_SD, Strip

FIRST_PATCH = 0.05
"""Density of the clearest patch of a common tablet of 21 steps that ends at 3.05 (derived)."""

USUAL_STEPS, USUAL_STEP = 21, 0.15
LEAST_STEPS, MOST_STEPS = 5, 60
FALLS_BY_SDS = 3.0
"""A step may read below the one before it by three standard deviations of a difference of two (ours)."""


@dataclass(frozen=True, slots=True)
class Tablet:
    """A step tablet of one's own: densities of its patches, the clearest first."""

    key: UUID
    name: str
    densities: tuple[float, ...]

    def __post_init__(self) -> None:
        if not LEAST_STEPS <= len(self.densities) <= MOST_STEPS:
            raise refuse("tablet-steps-out-of-range", at="steps", count=len(self.densities),
                         least=LEAST_STEPS, most=MOST_STEPS)  # fmt: skip
        if any(later <= one for one, later in zip(self.densities, self.densities[1:], strict=False)):
            raise refuse("tablet-not-rising", at="patches")
        if not self.densities[0] >= 0 or self.densities[-1] > MOST_DENSITY + 1:
            raise refuse("step-density-out-of-range", at="patches", density=self.densities[-1],
                         most=MOST_DENSITY + 1)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Exposed:
    """How a strip was exposed: relative only, in lux-seconds through clear, or by a meter at an index.

    `log_h0` is log10 lux-seconds where the tablet has no density; `stated_light` whether light and time were
    those of the standard; `metered_index` the index at which a meter told the exposure through clear.
    """

    log_h0: float | None = None
    stated_light: bool = False
    metered_index: float | None = None


@dataclass(frozen=True, slots=True)
class StepStrip:
    """One step strip as it was read: what was `typed`, the tablet it was read through, how it was exposed.

    With a `run` the log of that tankful says how long and how warm it was developed; without one `time_s` and
    `temp_c` do. A correction is a new strip that `replaces` the old one, which is kept.
    """

    key: UUID
    noted: datetime
    combination: UUID
    typed: str
    densities: tuple[float | None, ...]
    tablet: str
    patches: tuple[float, ...]
    log_h: tuple[float, ...] | None = None
    base_fog: float | None = None
    reading_sd: float = READING_SD
    instrument: str = ""
    exposed: Exposed = Exposed()
    control: bool = False
    run: UUID | None = None
    tankful: str | None = None
    time_s: float | None = None
    temp_c: float | None = None
    words: str = ""
    replaces: UUID | None = None


def even_tablet(steps: int = USUAL_STEPS, *, step: float = USUAL_STEP) -> tuple[float, ...]:
    """Densities of an even tablet of `steps` (5-60) patches `step` (0.02-0.6) apart, the clearest first.

    Source: 21 steps of 0.15 that end at 3.05 (an owner's note on the maker's data).
    Doubt: 0.05 a patch unless it was read.

    >>> even_tablet(21)[0], even_tablet(21)[-1]
    (0.05, 3.05)
    """
    if not LEAST_STEPS <= steps <= MOST_STEPS:
        raise refuse("tablet-steps-out-of-range", at="steps", count=steps, least=LEAST_STEPS, most=MOST_STEPS)
    if not 0.02 <= step <= 0.6:
        raise refuse("tablet-step-out-of-range", at="step", step=step)
    return tuple(round(FIRST_PATCH + step * n, 4) for n in range(steps))


def read_through(text: str, patches: Sequence[float]) -> TypedReadings:
    """What was typed for a tablet, one density for each patch in order from either end, or a table.

    Arguments: `patches` of the tablet, the clearest first. Result: the clearest patch first, None where it
    was not read; a table with log_h keeps its own exposures. Refused with the numbers: a wrong count, a
    density outside 0-5.
    Own model: docs/how-to/step-strips. Doubt: none.

    >>> read_through("0.30 0.32 0.40 0.61 0.90", even_tablet(5)).densities
    (0.9, 0.61, 0.4, 0.32, 0.3)
    """
    typed = read_readings(text)
    read = [one for one in typed.densities if one is not None]
    strange = next((one for one in read if not 0 <= one <= MOST_DENSITY), None)
    if strange is not None:
        raise refuse("step-density-out-of-range", at="readings", density=strange, most=MOST_DENSITY)
    if typed.log_h is not None:
        return typed
    if typed.steps is not None:
        typed = TypedReadings(_placed(typed, len(patches)))
    if len(typed.densities) != len(patches):
        raise refuse("wrong-count-of-steps", at="readings", ways_on=("other-tablet",),
                     count=len(typed.densities), steps=len(patches))  # fmt: skip
    if read and read[0] < read[-1]:
        return TypedReadings(typed.densities[::-1])
    return typed


def curve_strip(read: StepStrip) -> Strip:
    """The readings as the science of curves takes them, lowest exposure first.

    Result: log exposures in lux-seconds where it was told how the strip was exposed, else relative to clear.
    Refused where a density falls by more than two readings may differ.
    Source: a tablet takes its own density off the log exposure. Doubt: the tablet's own.
    """
    clear = read.exposed.log_h0 or 0.0
    along = read.log_h if read.log_h is not None else [clear - one for one in read.patches]
    pairs = sorted((x, d) for x, d in zip(along, read.densities, strict=True) if d is not None)
    strip = Strip(
        np.array([x for x, _ in pairs]), np.array([d for _, d in pairs]), read.base_fog, read.reading_sd
    )
    _rises([d for _, d in pairs], read.reading_sd)
    return strip


def latest(strips: Sequence[StepStrip]) -> tuple[StepStrip, ...]:
    """The strips that no later one replaces, in the order they were noted."""
    replaced = {one.replaces for one in strips}
    return tuple(one for one in strips if one.key not in replaced)


def _placed(typed: TypedReadings, steps: int) -> tuple[float | None, ...]:
    """The densities of a table at the numbers of their steps."""
    placed: list[float | None] = [None] * steps
    for number, density in zip(typed.steps or (), typed.densities, strict=True):
        if not (1 <= number <= steps and number == int(number)):
            raise refuse("no-such-step", at="readings", step=number, steps=steps)
        placed[int(number) - 1] = density
    return tuple(placed)


def _rises(densities: Sequence[float], reading_sd: float) -> None:
    """Refuse a density that lies below an earlier one by more than the error of two readings."""
    limit = FALLS_BY_SDS * 2**0.5 * reading_sd
    highest = 0.0
    for density in densities:
        if highest - density > limit:
            raise refuse(
                "density-falls", at="readings", ways_on=("read-again-or-widen",),
                density=density, before=highest, by=round(highest - density, 2), limit=round(limit, 2),
            )  # fmt: skip
        highest = max(highest, density)
