"""Washing by fill and dump: how much thiosulfate a plan of fills leaves in the film.

Two compartments, the liquid held by the gelatin and the water around it, exchange with one half-life.
The model is a plan and points to a residual test; it is too good for a real film's last traces, so nothing
below `FLOOR_G_M2` is ever told. docs/science/washing.md argues it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.refusals import refuse

LIMIT_G_M2 = 0.014
"""Greatest residual thiosulfate for long keeping, g/m2. Source: 36 CFR 1238.14(c), citing ISO 18901."""

FLOOR_G_M2 = 0.002
"""Smallest residual that is ever told. Own model: docs/science/washing.md."""

HALF_LIFE_PLANNED_S = 60.0
"""Half-life planned on, the slow end. Source: NAVEDTRA 14209 (1993): half the hypo leaves in a minute."""

HALF_LIFE_NAMED_S = 15.0
"""Half-life of the quick end, named beside the planned one. Source: US Army subcourse SS0509, lesson 8."""

COLDEST_C = 10.0


@dataclass(frozen=True, slots=True)
class Held:
    """Fixer brought along: `film_ml` in gelatin and `tank_ml` elsewhere at `start_g_l`, over `area_m2`."""

    film_ml: float = 2.0
    tank_ml: float = 8.0
    start_g_l: float = 119.8
    area_m2: float = 0.0516128

    def for_units(self, units: float, *, both_sides: bool = False) -> Held:
        """The same for `units` of film area; gelatin on both sides holds twice as much per side counted."""
        film_ml = self.film_ml * units * (2.0 if both_sides else 1.0)
        return Held(film_ml, self.tank_ml * units, self.start_g_l, self.area_m2 * units)


def residual_after_fills(
    *, soaks_s: Sequence[float], fill_ml: float, half_life_s: float, held: Held | None = None
) -> tuple[float, ...]:
    """Residual thiosulfate in g/m2 of one side after each fill and soak, poured out between.

    `soaks_s` are contact times in s (0 to 3600 each, at most 40), `fill_ml` the water of one fill (50 to
    5000 mL), `half_life_s` the film's half-life against clean water (5 to 600 s).
    Source: two-compartment balance, physics of diffusion between stirred volumes; volumes held from
    Torzynski (2004), see docs/science/washing.md.
    Doubt: half-life 15 to 60 s between sources, never averaged; the result is a plan, not a measurement.

    >>> left = residual_after_fills(
    ...     soaks_s=(60,) * 5, fill_ml=500, half_life_s=60, held=Held(start_g_l=109.0))
    >>> round(left[-1], 3)
    0.135
    """
    _readable(soaks_s, fill_ml, half_life_s)
    return tuple(_fold(soaks_s, fill_ml, half_life_s, held or Held()))


def enough_if_half_life_s(
    *, soaks_s: Sequence[float], fill_ml: float, held: Held | None = None, limit_g_m2: float = LIMIT_G_M2
) -> float:
    """The slowest half-life (s) at which these fills still reach `limit_g_m2`: the wash asked the other way.

    Source: the balance of `residual_after_fills` solved for its half-life (0.5 to 3600 s).
    Doubt: that of the held volumes, about 10 %; sources give film half-lives of 15 to 60 s.

    >>> round(enough_if_half_life_s(soaks_s=(300, 300, 300), fill_ml=300))
    102
    """
    from scipy.optimize import brentq  # noqa: PLC0415 - scipy loads only where it is used

    _readable(soaks_s, fill_ml, 60.0)

    def excess(log_half_life: float) -> float:
        *_, left = _fold(soaks_s, fill_ml, float(np.exp(log_half_life)), held or Held())
        return float(np.log(max(left, 1e-300) / limit_g_m2))

    low, high = np.log(0.5), np.log(3600.0)
    if excess(float(low)) > 0:
        raise refuse("wash-cannot-reach", fills=len(soaks_s), fill_ml=fill_ml, ways_on=("another-fill",))
    return float(np.exp(brentq(excess, low, high))) if excess(float(high)) > 0 else 3600.0


def residual_in_running_water(
    *, time_s: float, flow_ml_min: float, tank_fill_ml: float, half_life_s: float, held: Held | None = None
) -> float:
    """Residual (g/m2) after `time_s` in a stirred tank that takes `flow_ml_min` of running water.

    Arguments: `time_s` to an hour, fill 50 to 5000 mL, half-life above 0.
    Source: two-compartment balance with outflow, solved by matrix exponential.
    Doubt: as `residual_after_fills`; running water in a real tank is never fully stirred.

    >>> flow = {"flow_ml_min": 2000.0, "tank_fill_ml": 300.0, "half_life_s": 60.0}
    >>> [residual_in_running_water(time_s=60.0 * n, **flow) < LIMIT_G_M2 for n in (8, 9)]
    [False, True]
    """
    from scipy.linalg import expm  # noqa: PLC0415 - scipy loads only where it is used

    _readable((time_s,), tank_fill_ml, half_life_s)
    held = held or Held()
    bath_ml = tank_fill_ml + held.tank_ml
    k = np.log(2.0) / half_life_s
    share = held.film_ml / bath_ml
    change = np.array([[-k, k], [k * share, -k * share - flow_ml_min / 60.0 / bath_ml]])
    start = np.array([held.start_g_l, held.tank_ml * held.start_g_l / bath_ml])
    film = float((expm(change * time_s) @ start)[0])
    return film * held.film_ml / 1000.0 / held.area_m2


def equilibrium_reduction(*, retained_ml: float, fill_ml: float, fills: int) -> float:
    """By what factor `fills` complete changes thin what `retained_ml` holds: a lower bound on the residual.

    Source: serial dilution, c_n/c_0 = (v/(V+v))^n.
    Doubt: none in the arithmetic; real soaks never reach equilibrium.

    >>> round(equilibrium_reduction(retained_ml=10, fill_ml=500, fills=2))
    2601
    """
    return ((fill_ml + retained_ml) / retained_ml) ** fills


def _fold(soaks_s: Sequence[float], fill_ml: float, half_life_s: float, held: Held) -> Iterator[float]:
    """Residual in g/m2 after each soak; the water clinging to tank and film is carried into the next fill."""
    bath_ml = fill_ml + held.tank_ml
    rate = np.log(2.0) / half_life_s * (1.0 + held.film_ml / bath_ml)
    film, bath = held.start_g_l, held.start_g_l
    for soak_s in soaks_s:
        bath = held.tank_ml * bath / bath_ml
        level = (held.film_ml * film + bath_ml * bath) / (held.film_ml + bath_ml)
        after = level + (film - level) * float(np.exp(-rate * soak_s))
        bath, film = bath + held.film_ml * (film - after) / bath_ml, after
        yield film * held.film_ml / 1000.0 / held.area_m2


def _readable(soaks_s: Sequence[float], fill_ml: float, half_life_s: float) -> None:
    if not 1 <= len(soaks_s) <= 40 or not all(0 <= soak <= 3600 for soak in soaks_s):
        raise refuse("wash-soaks-out-of-range", fills=len(soaks_s), longest_s=max(soaks_s, default=0.0))
    if not 50 <= fill_ml <= 5000:
        raise refuse("wash-fill-out-of-range", volume_ml=fill_ml)
    if not 5 <= half_life_s <= 600:
        raise refuse("wash-half-life-out-of-range", half_life_s=half_life_s)
