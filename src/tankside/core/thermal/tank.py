"""Tank and liquid meet: the largest single error of the evening."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from tankside.core.refusals import refuse

PLASTIC_WORTH_ML, PLASTIC_WORTH_PER_ML = 49.0, 0.126
PLASTIC_TAU_MIN, PLASTIC_TAU_PER_ML = 67.0, 0.078
STEEL_WORTH_ML, STEEL_WORTH_PER_ML = 10.3, 0.073
STEEL_TAU_MIN, STEEL_TAU_PER_ML = 115.0, 0.142

Material = Literal["plastic", "steel"]

TAU_BANDS_MIN: Mapping[Material, tuple[float, float]] = MappingProxyType(
    {"plastic": (60.0, 180.0), "steel": (80.0, 300.0)}
)
"""Between which, nine times in ten, the time constant of a tank in air lies before it is measured (ours)."""

BATHED_TAU_MIN: Mapping[Material, float] = MappingProxyType({"plastic": 18.0, "steel": 7.0})
"""Time constant in minutes of a half-litre tank that stands in water to its lid (derived)."""


def plastic_worth_ml(volume_ml: float) -> float:
    """Millilitres of water that a plastic tank for `volume_ml` (250-2000 mL), its reels and film are worth.

    Own model: docs/science/tank-and-liquid, a line through two derived tanks. Doubt: 25 %; measure your own.

    >>> round(plastic_worth_ml(500)), round(plastic_worth_ml(1000))
    (112, 175)
    """
    return PLASTIC_WORTH_ML + PLASTIC_WORTH_PER_ML * volume_ml


def plastic_tau_min(volume_ml: float) -> float:
    """Minutes in which a plastic tank in still air loses 63 % of its difference to the room.

    Arguments: `volume_ml` 250-2000 mL. Own model: docs/science/tank-and-liquid. Doubt: 60 to 180 min.

    >>> plastic_tau_min(500), plastic_tau_min(1000)
    (106.0, 145.0)
    """
    return PLASTIC_TAU_MIN + PLASTIC_TAU_PER_ML * volume_ml


def steel_worth_ml(volume_ml: float) -> float:
    """Millilitres of water that a steel tank for `volume_ml` (250-1000 mL), its reels and film are worth.

    Own model: docs/science/tank-and-liquid, a line through three derived tanks. Doubt: 25 %; test yours.

    >>> round(steel_worth_ml(500)), round(steel_worth_ml(1000))
    (47, 83)
    """
    return STEEL_WORTH_ML + STEEL_WORTH_PER_ML * volume_ml


def steel_tau_min(volume_ml: float) -> float:
    """Minutes in which a dry steel tank in still air loses 63 % of its difference to the room.

    Bright steel hardly radiates, so it is slower than plastic; wet hands and a wet wall undo that.
    Arguments: `volume_ml` 250-1000 mL. Own model: docs/science/tank-and-liquid. Doubt: 80 to 300 min.

    >>> steel_tau_min(500), steel_tau_min(1000)
    (186.0, 257.0)
    """
    return STEEL_TAU_MIN + STEEL_TAU_PER_ML * volume_ml


def worth_by_volume_ml(material: Material, volume_ml: float) -> float:
    """Worth in mL of water of a tank of which only material and volume (250-2000 mL) are known.

    Own model: docs/science/tank-and-liquid. Doubt: 25 %.

    >>> round(worth_by_volume_ml("steel", 500))
    47
    """
    return plastic_worth_ml(volume_ml) if material == "plastic" else steel_worth_ml(volume_ml)


def tau_by_volume_min(material: Material, volume_ml: float) -> float:
    """Time constant in air, in minutes, of a tank of which only material and volume (mL) are known.

    Own model: docs/science/tank-and-liquid. Doubt: `TAU_BANDS_MIN`.

    >>> tau_by_volume_min("plastic", 500)
    106.0
    """
    return plastic_tau_min(volume_ml) if material == "plastic" else steel_tau_min(volume_ml)


def met_c(*, liquid_ml: float, liquid_c: float, worth_ml: float, tank_c: float) -> float:
    """Temperature in C when liquid and tank have become one.

    Arguments: `liquid_ml` above 0; `worth_ml` of the tank in mL of water, 0 or more; both 0-65 C.
    Own model: balance of heat, docs/science/tank-and-liquid. Doubt: a quarter of the step, from the worth;
    in the first minute a fifth of the step of a plastic tank is still to come.

    >>> round(met_c(liquid_ml=500, liquid_c=20, worth_ml=112, tank_c=15), 2)
    19.08
    """
    return (liquid_ml * liquid_c + worth_ml * tank_c) / (liquid_ml + worth_ml)


def liquid_for(*, start_c: float, liquid_ml: float, worth_ml: float, tank_c: float) -> float:
    """Temperature in C that the liquid must have so that tank and liquid meet at `start_c`.

    Arguments as in `met_c`. Own model: its inverse, docs/science/tank-and-liquid. Doubt: as there.

    >>> round(liquid_for(start_c=20.14, liquid_ml=500, worth_ml=112, tank_c=17), 1)
    20.8
    """
    return start_c + worth_ml / liquid_ml * (start_c - tank_c)


def worth_from_test(*, liquid_ml: float, liquid_c: float, tank_c: float, read_c: float) -> float:
    """Worth in mL of water from the two-minute test: warm water into the tank, lid on, turned, read.

    Arguments: `liquid_ml` of water at `liquid_c` poured into the tank at `tank_c`; `read_c` after two
    minutes, between the two and nearer the water. Result: mL of water.
    Own model: docs/science/tank-and-liquid. Doubt: 0.1 K in `read_c` is 3 to 4 mL at 40 C into 17 C.

    >>> round(worth_from_test(liquid_ml=500, liquid_c=40, tank_c=17, read_c=35.8))
    112
    """
    if abs(liquid_c - tank_c) < 5:
        raise refuse(
            "tank-test-too-near", at="liquid_c", ways_on=("warmer-water",), liquid_c=liquid_c, tank_c=tank_c
        )
    if not min(liquid_c, tank_c) < read_c < max(liquid_c, tank_c):
        raise refuse(
            "tank-test-not-between", at="read_c", ways_on=("read-again",),
            read_c=read_c, liquid_c=liquid_c, tank_c=tank_c,
        )  # fmt: skip
    return liquid_ml * (liquid_c - read_c) / (read_c - tank_c)
