"""What the negatives say: three-way answers, two densities, or contrasts measured on step strips."""

from __future__ import annotations

from dataclasses import dataclass
from math import log10, sqrt
from typing import Literal

from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import refuse

Shadows = Literal["thin", "right", "heavy"]
Contrast = Literal["flat", "right", "harsh"]

ANSWER_STANDS_FOR_PERCENT = 10.0
"""What 'flat' or 'harsh' is worth in contrast, with the same again as its doubt. Own model: docs/science."""

FRAME_PAIR_PERCENT = 9.0
"""Doubt of contrast from one pair of densities on ordinary frames (5-95 %). Own model: docs/science."""

YOUR_ANSWER = "your answer on contrast"

STOP_LOG_H = log10(2.0)

ANSWER_STANDS_FOR_STOPS = 0.5
"""What 'thin' or 'heavy' is worth in exposure. Own model: docs/science."""


@dataclass(frozen=True, slots=True)
class NextMorning:
    """The two three-way answers of the next morning."""

    shadows: Shadows
    contrast: Contrast

    @property
    def contrast_percent(self) -> Estimate:
        """Contrast against the aim in percent; an answer is worth ten with ten of doubt.

        >>> NextMorning("right", "harsh").contrast_percent.value
        10.0
        """
        value = {"flat": -1.0, "right": 0.0, "harsh": 1.0}[self.contrast] * ANSWER_STANDS_FOR_PERCENT
        half = ANSWER_STANDS_FOR_PERCENT
        return Estimate(value, value - half, value + half, "%", YOUR_ANSWER)

    @property
    def stops_over(self) -> float:
        """Exposure in stops above the aim as the shadows tell it; thin is below."""
        return {"thin": -1.0, "right": 0.0, "heavy": 1.0}[self.shadows] * ANSWER_STANDS_FOR_STOPS


@dataclass(frozen=True, slots=True)
class NotAsked:
    """The person does not wish to be asked about this tankful again."""


@dataclass(frozen=True, slots=True)
class TwoDensities:
    """A shadow and a highlight read above base and fog, what was aimed at, and the slope between them.

    Densities 0 to 4 above base and fog; `slope` (0.1 to 2) is density per log exposure near the shadow.
    """

    shadow_d: float
    highlight_d: float
    shadow_aim_d: float
    highlight_aim_d: float
    slope: float

    def __post_init__(self) -> None:
        for name in ("shadow_d", "highlight_d", "shadow_aim_d", "highlight_aim_d"):
            value = getattr(self, name)
            if not 0 <= value <= 4:
                raise refuse("density-out-of-range", at=name, density=value)
        if not self.shadow_d < self.highlight_d or not self.shadow_aim_d < self.highlight_aim_d:
            raise refuse(
                "shadow-above-highlight", at="shadow_d", shadow=self.shadow_d, highlight=self.highlight_d
            )
        if not 0.1 <= self.slope <= 2:
            raise refuse("slope-out-of-range", at="slope", slope=self.slope)

    @property
    def log_h_over(self) -> float:
        """Exposure above the aim in log units, told by the shadow alone.

        Source: definition of the characteristic curve, local slope. Doubt: that of the slope.

        >>> round(TwoDensities(0.18, 1.03, 0.35, 1.20, 0.5).log_h_over, 2)
        -0.34
        """
        return (self.shadow_d - self.shadow_aim_d) / self.slope

    @property
    def stops_over(self) -> float:
        """Exposure above the aim in stops."""
        return self.log_h_over / STOP_LOG_H

    @property
    def contrast_percent(self) -> Estimate:
        """Contrast against the aim in percent: the range of densities beside the range aimed at."""
        range_d = self.highlight_d - self.shadow_d
        percent = 100 * (range_d / (self.highlight_aim_d - self.shadow_aim_d) - 1)
        return Estimate(
            percent, percent - FRAME_PAIR_PERCENT, percent + FRAME_PAIR_PERCENT, "%", "two densities"
        )


@dataclass(frozen=True, slots=True)
class Strips:
    """Contrast indices (0.2 to 1.5) of step strips developed with the rolls, and the one aimed at.

    `sd_one` is the standard deviation of one of them by its reading error.
    """

    measured: tuple[float, ...]
    aim: float
    sd_one: float = 0.01

    @property
    def contrast_percent(self) -> Estimate:
        """Contrast against the aim in percent, as in `contrast_of_strips`."""
        return contrast_of_strips(self.measured, aim=self.aim, sd_one=self.sd_one)

    @property
    def stops_over(self) -> float:
        """A step strip has its own exposure and says nothing of the camera's."""
        return 0.0


Evidence = NextMorning | TwoDensities | Strips
"""What a proposal can be made from."""


def contrast_of_strips(measured: tuple[float, ...], *, aim: float, sd_one: float = 0.01) -> Estimate:
    """Contrast of several step strips against the aim, in percent, with the doubt of their mean.

    `measured` and `aim` are contrast indices 0.2 to 1.5; `sd_one` is the sd of one strip's reading.
    Source: mean and its standard error. Doubt: the interval; 5-95 % is 1.645 standard errors.

    >>> found = contrast_of_strips((0.590, 0.585, 0.595), aim=0.56)
    >>> round(found.value, 1)
    5.4
    """
    if not measured or not all(0.2 <= one <= 1.5 for one in (*measured, aim)):
        raise refuse("contrast-out-of-range", at="measured", least=0.2, most=1.5)
    percent = 100 * (sum(measured) / len(measured) / aim - 1)
    half = 1.645 * 100 * sd_one / aim / sqrt(len(measured))
    return Estimate(percent, percent - half, percent + half, "%", strips_told(len(measured)))


def strips_told(count: int) -> str:
    """What the source of so many step strips (1 or more) is called.

    Own model: the words of the house. Doubt: none.

    >>> strips_told(1), strips_told(3)
    ('your step strip', 'your 3 step strips')
    """
    return "your step strip" if count == 1 else f"your {count} step strips"
