"""Heat through the wall of a tank, from what it is made of: where the time constant of drift comes from."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

WATER_J_ML_K = 4.176
"""Heat that a millilitre of developer takes for each kelvin."""

STEFAN_BOLTZMANN = 5.670374419e-8
GRAVITY = 9.80665


@dataclass(frozen=True, slots=True)
class Wall:
    """A cylindrical tank with reels and film: sizes in m, masses in kg, heat capacities in J/(kg K)."""

    volume_ml: float
    diameter_m: float
    height_m: float
    wall_kg: float
    wall_j_kg_k: float
    thickness_m: float
    conductivity_w_m_k: float
    film_kg: float
    film_j_kg_k: float = 1500.0

    @property
    def surface_m2(self) -> float:
        """Whole outer surface."""
        return float(np.pi * self.diameter_m * self.height_m + np.pi * self.diameter_m**2 / 2)

    @property
    def surface_under_water_m2(self) -> float:
        """Outer surface but for the lid, as it stands in a water bath."""
        return self.surface_m2 - float(np.pi * self.diameter_m**2 / 4)

    @property
    def dry_heat_j_k(self) -> float:
        """Heat that wall, reels and film take for each kelvin."""
        return self.wall_kg * self.wall_j_kg_k + self.film_kg * self.film_j_kg_k

    @property
    def worth_ml(self) -> float:
        """The same in millilitres of water."""
        return self.dry_heat_j_k / WATER_J_ML_K

    @property
    def heat_j_k(self) -> float:
        """Heat that the filled tank takes for each kelvin."""
        return self.volume_ml * WATER_J_ML_K + self.dry_heat_j_k


def tau_min(
    wall: Wall, *, outside_w_m2_k: float, inside_w_m2_k: float = 300.0, bathed: bool = False
) -> float:
    """Minutes in which the filled tank loses 63 % of its difference: C / (U A).

    Arguments: film coefficients, outside 2-25 (air) or 50-1000 (water) W/(m2 K); `bathed` leaves out the lid.
    Source: conduction through a plane wall (textbook). Doubt: 30 %, from the outside coefficient.

    >>> tank = Wall(500, 0.1, 0.12, 0.3, 1500, 0.0025, 0.2, 0.012)
    >>> round(tau_min(tank, outside_w_m2_k=10), 1)
    92.4
    """
    resistance = 1 / outside_w_m2_k + wall.thickness_m / wall.conductivity_w_m_k + 1 / inside_w_m2_k
    area = wall.surface_under_water_m2 if bathed else wall.surface_m2
    return wall.heat_j_k * resistance / area / 60


def still_air_w_m2_k(*, height_m: float, wall_c: float, room_c: float, emissivity: float) -> float:
    """Film coefficient of a standing wall in still air, by free convection and radiation.

    Arguments: `height_m` 0.05-0.3; wall and room 5-40 C, not equal; emissivity 0-1. Result: W/(m2 K).
    Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, laminar form (from memory);
    air at the mean temperature by Sutherland's law (from memory). Doubt: 10 %; not for wet walls.

    >>> round(still_air_w_m2_k(height_m=0.12, wall_c=20, room_c=15, emissivity=0.9), 1)
    8.6
    """
    mean_k = (wall_c + room_c) / 2 + 273.15
    viscosity = 1.458e-6 * mean_k**1.5 / (mean_k + 110.4)
    density = 101325 / (287.05 * mean_k)
    conductivity = 2.334e-3 * mean_k**1.5 / (164.54 + mean_k)
    prandtl = viscosity * 1006 / conductivity
    buoyancy = GRAVITY * abs(wall_c - room_c) / mean_k * height_m**3
    rayleigh = buoyancy * (density / viscosity) ** 2 * prandtl
    nusselt = 0.68 + 0.670 * rayleigh**0.25 / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9)
    return float(nusselt * conductivity / height_m + 4 * emissivity * STEFAN_BOLTZMANN * mean_k**3)
