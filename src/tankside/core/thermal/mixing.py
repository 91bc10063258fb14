"""Waters that mix: what comes out, and how much of each makes what is wanted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tankside.core.refusals import Refused, refuse
from tankside.core.thermal.water import LEAST_C, MOST_C, density_kg_m3, enthalpy_kj_kg, temp_of_enthalpy

ICE_MELTING_KJ_KG = 333.5
"""Heat that melts a kilogram of ice at 0 C (from memory)."""

ICE_KJ_KG_K = 2.1
"""Heat capacity of ice (from memory)."""

ICE_STEP_G = 5.0
"""Ice is weighed or guessed no finer than this."""


@dataclass(frozen=True, slots=True)
class Water:
    """`volume_ml` of water or a solution at `temp_c`; `heat_ratio` is its heat for each mL against water's.

    Salts lower it: 10 % w/w potassium carbonate 0.965, 10 % sodium chloride 0.954, 20 % carbonate 0.943.
    """

    volume_ml: float
    temp_c: float
    heat_ratio: float = 1.0

    def __post_init__(self) -> None:
        if not LEAST_C <= self.temp_c <= MOST_C:
            raise refuse("water-temperature-out-of-range", at="temp_c", temp_c=self.temp_c)
        if self.volume_ml < 0:
            raise refuse("volume-below-zero", at="volume_ml", volume_ml=self.volume_ml)

    @property
    def mass_g(self) -> float:
        """Mass in grams, as water."""
        return float(density_kg_m3(self.temp_c)) * self.volume_ml / 1000

    @property
    def heat_g(self) -> float:
        """Grams of water that hold as much heat."""
        return self.mass_g * self.heat_ratio

    @property
    def heat_j(self) -> float:
        """Heat in joules, counted from 0 C."""
        return self.heat_g * float(enthalpy_kj_kg(self.temp_c))


@dataclass(frozen=True, slots=True)
class Jug:
    """What one mixes in: worth `worth_ml` of water in heat, at `temp_c`."""

    worth_ml: float
    temp_c: float


@dataclass(frozen=True, slots=True)
class HotAndCold:
    """How much hot and cold water to measure, each at its own temperature, and what the two give together."""

    hot_ml: float
    cold_ml: float
    water_c: float

    @property
    def water_ml(self) -> float:
        """Both together, as measured."""
        return self.hot_ml + self.cold_ml


def mix(waters: Sequence[Water], *, jug: Jug | None = None, ice_g: float = 0.0, ice_c: float = 0.0) -> Water:
    """What several waters give together, in a jug, with ice that melts whole.

    Arguments: waters 0-65 C; jug worth 0 mL or more; ice in grams at `ice_c` (-25 to 0 C).
    Result: volume at the temperature reached; ice in it counts as water.
    Source: enthalpy balance, checked against IAPWS-95. Doubt: 0.01 K for pure water; dissolved salts hold
    3.5 to 6 % less heat, at most 0.1 K where the two differ by 8 K.

    >>> out = mix([Water(500, 60), Water(500, 10)])
    >>> round(out.temp_c, 2), round(out.volume_ml, 1)
    (34.78, 997.3)
    """
    mass_g = sum(water.mass_g for water in waters) + ice_g
    if mass_g <= 0:
        raise refuse("nothing-to-mix", at="volume_ml", volume_ml=0.0)
    bodies = [*waters, Water(jug.worth_ml, jug.temp_c)] if jug is not None else [*waters]
    heat_j = sum(body.heat_j for body in bodies) + ice_g * (ICE_KJ_KG_K * ice_c - ICE_MELTING_KJ_KG)
    if heat_j < 0:
        raise refuse("too-much-ice", at="ice_g", ice_g=ice_g, ways_on=("less-ice",))
    temp_c = float(temp_of_enthalpy(heat_j / (sum(body.heat_g for body in bodies) + ice_g)))
    return Water(mass_g / float(density_kg_m3(temp_c)) * 1000, temp_c)


def hot_and_cold(
    *,
    volume_ml: float,
    target_c: float,
    hot_c: float,
    cold_c: float,
    already: Sequence[Water] = (),
    jug: Jug | None = None,
) -> HotAndCold:
    """How much hot and cold water make `volume_ml` at `target_c`, with what is already measured out.

    Arguments: `volume_ml` of the whole at `target_c`; waters 0-65 C, hot above cold; `already` the stock, or
    what is in the jug; `jug` its worth in mL of water and its temperature before.
    Result: mL of each as measured at its own temperature. Refused when the two cannot reach it.
    Source: enthalpy balance, solved in closed form. Doubt: 0.01 K beside that of the temperatures read.

    >>> out = hot_and_cold(volume_ml=1000, target_c=20, hot_c=45, cold_c=12)
    >>> round(out.hot_ml, 1), round(out.cold_ml, 1)
    (244.7, 756.3)
    """
    _hot_above_cold(hot_c, cold_c)
    whole = Water(volume_ml, target_c)
    water_g = whole.mass_g - sum(one.mass_g for one in already)
    if water_g <= 0:
        raise refuse("no-room-for-water", at="volume_ml", volume_ml=volume_ml, ways_on=("larger-volume",))
    needed = _heat_needed_j(target_c, water_g, already, jug) / water_g
    hot_h, cold_h = float(enthalpy_kj_kg(hot_c)), float(enthalpy_kj_kg(cold_c))
    share = (needed - cold_h) / (hot_h - cold_h)
    if not -1e-9 <= share <= 1 + 1e-9:
        raise _out_of_reach(whole, already, jug, needed_kj_kg=needed, hot_c=hot_c, cold_c=cold_c)
    share = min(max(share, 0.0), 1.0)
    return HotAndCold(
        hot_ml=share * water_g / float(density_kg_m3(hot_c)) * 1000,
        cold_ml=(1 - share) * water_g / float(density_kg_m3(cold_c)) * 1000,
        water_c=float(temp_of_enthalpy(needed)),
    )


def rounded_to_marks(wanted: HotAndCold, *, mark_ml: float, hot_c: float, cold_c: float) -> HotAndCold:
    """The hot water rounded to the marks of the measure, cold water making up the rest to a whole mark.

    Arguments: `mark_ml` the finest mark, above 0. Result: amounts one can measure, and what they then give.
    Own model: docs/science/mixing. Doubt: half a mark of hot water.

    >>> out = hot_and_cold(volume_ml=500, target_c=20.8, hot_c=52, cold_c=14, already=[Water(250, 17)])
    >>> rounded_to_marks(out, mark_ml=1, hot_c=52, cold_c=14).hot_ml
    71.0
    """
    total_ml = round(wanted.water_ml / mark_ml) * mark_ml
    hot_ml = min(float(round(wanted.hot_ml / mark_ml) * mark_ml), total_ml)
    cold_ml = float(total_ml - hot_ml)
    if total_ml <= 0:
        return HotAndCold(0.0, 0.0, wanted.water_c)
    return HotAndCold(hot_ml, cold_ml, mix([Water(hot_ml, hot_c), Water(cold_ml, cold_c)]).temp_c)


def ice_to_cool(water: Water, *, target_c: float, ice_c: float = 0.0) -> float:
    """Grams of ice that bring `water` down to `target_c` (0-65 C, below its temperature).

    Ice melted into the water counts as mixing water, ice in a sealed bag does not; the mass is the same.
    Arguments: `ice_c` -25 to 0 C. Result: grams.
    Source: heat of melting 333.5 kJ/kg (from memory). Doubt: 5 %, mostly from water that clings to the ice.

    >>> round(ice_to_cool(Water(1000, 26), target_c=20))
    60
    """
    if target_c >= water.temp_c:
        return 0.0
    gained = float(enthalpy_kj_kg(target_c)) + ICE_MELTING_KJ_KG - ICE_KJ_KG_K * ice_c
    return water.mass_g * float(enthalpy_kj_kg(water.temp_c) - enthalpy_kj_kg(target_c)) / gained


def _heat_needed_j(target_c: float, water_g: float, already: Sequence[Water], jug: Jug | None) -> float:
    """Heat in joules that the water still to be added must bring, counted from 0 C."""
    bodies = [*already, Water(jug.worth_ml, jug.temp_c)] if jug is not None else [*already]
    target_h = float(enthalpy_kj_kg(target_c))
    return water_g * target_h + sum(body.heat_g * target_h - body.heat_j for body in bodies)


def _hot_above_cold(hot_c: float, cold_c: float) -> None:
    """Refuse two taps that are the wrong way round or alike."""
    for at, temp_c in (("hot_c", hot_c), ("cold_c", cold_c)):
        if not LEAST_C <= temp_c <= MOST_C:
            raise refuse("water-temperature-out-of-range", at=at, temp_c=temp_c)
    if hot_c <= cold_c:
        raise refuse("hot-not-above-cold", at="hot_c", hot_c=hot_c, cold_c=cold_c)


def _out_of_reach(
    whole: Water,
    already: Sequence[Water],
    jug: Jug | None,
    *,
    needed_kj_kg: float,
    hot_c: float,
    cold_c: float,
) -> Refused:
    """The refusal that says what the water would have to be, and what the nearest reachable is."""
    too_cold = needed_kj_kg > float(enthalpy_kj_kg(hot_c))
    nearest_c = hot_c if too_cold else cold_c
    water_g = whole.mass_g - sum(one.mass_g for one in already)
    water_ml = water_g / float(density_kg_m3(nearest_c)) * 1000
    nearest = mix([*already, Water(water_ml, nearest_c)], jug=jug)
    with_jug = Water(nearest.volume_ml + (jug.worth_ml if jug is not None else 0.0), nearest.temp_c)
    ice_g = max(1, round(ice_to_cool(with_jug, target_c=whole.temp_c) / ICE_STEP_G)) * ICE_STEP_G
    return refuse(
        "water-too-cold" if too_cold else "water-too-warm",
        at="hot_c" if too_cold else "cold_c",
        ways_on=_ways_to_reach(too_cold=too_cold, with_stock=bool(already)),
        target_c=whole.temp_c,
        needed_c=round(_temp_for(needed_kj_kg), 1),
        hot_c=hot_c,
        cold_c=cold_c,
        nearest_c=round(nearest.temp_c, 2),
        ice_g=ice_g,
    )


def _ways_to_reach(*, too_cold: bool, with_stock: bool) -> tuple[str, ...]:
    """What else can be warmed or cooled."""
    if too_cold:
        return ("hotter-water", *(("warm-the-stock",) if with_stock else ()))
    return ("ice", "colder-water", *(("cool-the-stock",) if with_stock else ()))


def _temp_for(needed_kj_kg: float) -> float:
    """The temperature that water with this heat would have; beyond the formula 4.2 kJ for each kelvin."""
    within = 0.0 <= needed_kj_kg <= float(enthalpy_kj_kg(MOST_C))
    return float(temp_of_enthalpy(needed_kj_kg)) if within else needed_kj_kg / 4.19
