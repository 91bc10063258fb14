"""How much fixer the wash has left in the film, fill by fill, as a plan that only a test can confirm."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.permanence.washing import (
    FLOOR_G_M2,
    HALF_LIFE_NAMED_S,
    HALF_LIFE_PLANNED_S,
    LIMIT_G_M2,
    Held,
    residual_after_fills,
)
from tankside.core.planning.plan import PlannedBath
from tankside.core.run.state import Pass, TankfulState

LONGEST_SOAK_S = 3600.0


@dataclass(frozen=True, slots=True)
class Left:
    """Fixer left in the film after fill `n` in g/m2, at the quick and the slow end; None is 'well below'."""

    n: int
    quick_g_m2: float | None
    slow_g_m2: float | None


@dataclass(frozen=True, slots=True)
class WashAdvice:
    """What the wash has come to: `done` fills poured out again, `now` as it soaks, `last` by plan.

    `start_g_m2` is what it began with, `limit_g_m2` what it is to come under.
    """

    start_g_m2: float
    limit_g_m2: float
    done: tuple[Left, ...]
    now: Left
    last: Left


def advise_wash(one: TankfulState, there: Pass, now_us: int) -> WashAdvice:
    """The residual of a wash in the tank, from its true soaks so far and planned ones to come.

    Own model: docs/science/washing. Doubt: half-lives of 15 and 60 s, the envelope of what sources say.
    """
    bath = one.bath(there.bath)
    starts_us = _starts_us(there)
    soaks = [
        (b - a) / 1e6 for a, b in zip(starts_us, [*starts_us[1:], max(now_us, starts_us[-1])], strict=True)
    ]
    held = _held(one)
    fill_ml = one.plan.tank.volume_ml
    so_far = _left(soaks, fill_ml, held)
    planned = [*soaks[:-1], max(soaks[-1], bath.times.aim_s), *_to_come(bath, len(soaks))]
    return WashAdvice(
        start_g_m2=held.film_ml * held.start_g_l / 1000.0 / held.area_m2,
        limit_g_m2=LIMIT_G_M2,
        done=so_far[:-1],
        now=so_far[-1],
        last=_left(planned, fill_ml, held)[-1],
    )


def _starts_us(there: Pass) -> list[int]:
    """When each fill was poured, each counted once and none before the wash itself."""
    fills = {fill.n: fill.mark.at_us for fill in reversed(there.fills) if fill.n > 1}
    return [there.poured.at_us, *sorted(fills.values())]


def _to_come(bath: PlannedBath, had: int) -> list[float]:
    return [bath.times.aim_s] * max(0, bath.fills - had)


def _held(one: TankfulState) -> Held:
    both_sides = any(roll.both_sides for roll in one.plan.rolls)
    return Held().for_units(one.plan.area_units or 1.0, both_sides=both_sides)


def _left(soaks: list[float], fill_ml: float, held: Held) -> tuple[Left, ...]:
    bounded = [min(max(soak, 0.0), LONGEST_SOAK_S) for soak in soaks][:40]
    quick, slow = (
        residual_after_fills(soaks_s=bounded, fill_ml=fill_ml, half_life_s=half_life_s, held=held)
        for half_life_s in (HALF_LIFE_NAMED_S, HALF_LIFE_PLANNED_S)
    )
    return tuple(
        Left(n, _told(low), _told(high))
        for n, (low, high) in enumerate(zip(quick, slow, strict=True), start=1)
    )


def _told(residual: float) -> float | None:
    """Nothing under 0.002 g/m2 is ever told."""
    return residual if residual >= FLOOR_G_M2 else None
