"""Which fills, and how long each: the wash of least water or least time that meets the limit with margin."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import floor, log10
from typing import Literal

from tankside.core.permanence.washing import (
    COLDEST_C,
    FLOOR_G_M2,
    HALF_LIFE_NAMED_S,
    HALF_LIFE_PLANNED_S,
    LIMIT_G_M2,
    Held,
    enough_if_half_life_s,
    residual_after_fills,
)
from tankside.core.refusals import refuse

Least = Literal["water", "time"]

MARGIN = 2.0
"""A planned wash comes to half the limit or less by the slow model (ours)."""

WARMEST_C = 30.0
Q10_WASHING = 2.0
"""Washing per 10 K below 20 C; no gain is taken above. Source: US TM 11-2323, para. 33: double at 50 F."""

CHANGE_S = 45.0
"""Hands of one fill: pour out, drain, pour in (ours)."""

SOAKS_S = tuple(30.0 * step for step in range(2, 21))
"""Soaks to choose from: 1:00 to 10:00 by half minutes."""

LEAST_FILLS = 3
"""Fewer satisfy the model with long soaks; no manual washes with fewer (ours)."""

MOST_FILLS = 12


@dataclass(frozen=True, slots=True)
class Washing:
    """What is washed and in what: `fill_ml` of water of `temp_c`; a spent fixer makes every answer void."""

    fill_ml: float
    temp_c: float = 20.0
    held: Held = field(default_factory=Held)
    fixer_spent: bool = False

    @property
    def slow_s(self) -> float:
        """The half-life planned on, longer in water colder than 20 C."""
        return HALF_LIFE_PLANNED_S * float(Q10_WASHING ** (max(0.0, 20.0 - self.temp_c) / 10))


@dataclass(frozen=True, slots=True)
class WashAnswer:
    """What fills come to by the slow and the quick half-life (None is 'well below'), and the other way round.

    `enough_if_s`: enough if half leaves in that many seconds or less. `confirmed` by the slow model; where it
    is not, `one_more_s` is the further soak that would make it so. A plan; a residual test settles it.
    """

    soaks_s: tuple[float, ...]
    fill_ml: float
    slow_g_m2: float | None
    quick_g_m2: float | None
    enough_if_s: float
    slow_half_life_s: float
    one_more_s: float | None = None

    @property
    def confirmed(self) -> bool:
        """Whether the slow model stays under the limit."""
        return self.slow_g_m2 is None or self.slow_g_m2 <= LIMIT_G_M2

    @property
    def water_ml(self) -> float:
        """Water of all fills."""
        return self.fill_ml * len(self.soaks_s)

    @property
    def time_s(self) -> float:
        """Soaks and the hands between them."""
        return sum(self.soaks_s) + CHANGE_S * len(self.soaks_s)


def told_residual(residual_g_m2: float) -> float | None:
    """A residual as it may be told: two figures, to 0.001 g/m2 at most; None ('well below') under 0.002.

    Own model: docs/science/washing: real films give up their last traces more slowly. Doubt: severalfold.

    >>> told_residual(0.00854), told_residual(1.197), told_residual(0.0003)
    (0.009, 1.2, None)
    """
    if residual_g_m2 < FLOOR_G_M2:
        return None
    return round(residual_g_m2, min(3, 1 - floor(log10(residual_g_m2))))


def judge_wash(soaks_s: Sequence[float], washing: Washing) -> WashAnswer:
    """What these fills come to, asked the other way round as well; refused where no number would be honest.

    Arguments: `soaks_s` contact of each fill in s; water of 10 to 30 C.
    Own model: docs/science/washing. Doubt: half-lives of 15 and 60 s between sources, never averaged.

    >>> answer = judge_wash((180, 180, 180), Washing(fill_ml=300))
    >>> round(answer.enough_if_s), answer.confirmed
    (61, True)
    """
    _check(washing)
    slow, quick = (_residual(soaks_s, washing, s) for s in (washing.slow_s, HALF_LIFE_NAMED_S))
    enough_s = enough_if_half_life_s(soaks_s=soaks_s, fill_ml=washing.fill_ml, held=washing.held)
    return WashAnswer(
        tuple(soaks_s),
        washing.fill_ml,
        told_residual(slow),
        told_residual(quick),
        enough_s,
        washing.slow_s,
        None if slow <= LIMIT_G_M2 else _one_more(soaks_s, washing),
    )


def plan_wash(washing: Washing, *, least: Least = "water") -> WashAnswer:
    """The equal fills of least water, or of least time with the hands counted, that meet half the limit.

    Own model: docs/science/washing: planned on 60 s (longer below 20 C), a margin of two.
    Doubt: as `judge_wash`; the last traces are not in the model.

    >>> plan_wash(Washing(fill_ml=300)).soaks_s
    (210.0, 210.0, 210.0)
    """
    _check(washing)
    plans = [
        soaks
        for fills in range(LEAST_FILLS, MOST_FILLS + 1)
        if (soaks := _shortest(fills, washing)) is not None
    ]
    if not plans:
        raise refuse("no-wash-reaches", ways_on=("larger-fill",), volume_ml=washing.fill_ml, fills=MOST_FILLS)
    best = plans[0] if least == "water" else min(plans, key=lambda one: sum(one) + CHANGE_S * len(one))
    return judge_wash(best, washing)


def _shortest(fills: int, washing: Washing) -> tuple[float, ...] | None:
    """The shortest equal soaks of so many fills that meet the limit with margin."""
    for soak_s in SOAKS_S:
        soaks = (soak_s,) * fills
        if _residual(soaks, washing, washing.slow_s) <= LIMIT_G_M2 / MARGIN:
            return soaks
    return None


def _one_more(soaks_s: Sequence[float], washing: Washing) -> float | None:
    """The shortest further soak that brings the slow model under the limit; None if none of 10:00 does."""
    for soak_s in SOAKS_S:
        if _residual((*soaks_s, soak_s), washing, washing.slow_s) <= LIMIT_G_M2:
            return soak_s
    return None


def _residual(soaks_s: Sequence[float], washing: Washing, half_life_s: float) -> float:
    """The model's last residual; never told as it is."""
    return residual_after_fills(
        soaks_s=soaks_s, fill_ml=washing.fill_ml, half_life_s=half_life_s, held=washing.held
    )[-1]


def _check(washing: Washing) -> None:
    """No answer after a spent fixer, nor in water that is too cold or too warm."""
    if washing.fixer_spent:
        raise refuse("wash-void-fixer-spent", ways_on=("fix-again-in-fresh",))
    if washing.temp_c < COLDEST_C:
        raise refuse("wash-too-cold", at="temp_c", ways_on=("temper-the-wash",), temp_c=washing.temp_c)
    if washing.temp_c > WARMEST_C:
        raise refuse("wash-too-warm", at="temp_c", ways_on=("temper-the-wash",), temp_c=washing.temp_c)
