"""Water at ordinary pressure: density and enthalpy."""

from __future__ import annotations

import numpy as np

from tankside.core.doubt.distributions import FloatArray, Values

LEAST_C, MOST_C = 0.0, 65.0
"""Where the two formulas hold."""

ENTHALPY = (0.0, 4.2183569, -1.5444572e-3, 2.9690544e-5, -2.8726751e-7, 1.2269195e-9)


def density_kg_m3(temp_c: Values) -> FloatArray:
    """Density of air-free water at 101.325 kPa; `temp_c` 0-40 C, usable to 65 C; result in kg/m3.

    Source: Tanaka et al., Metrologia 38 (2001) 301 (coefficients from memory; agree with IAPWS-95).
    Doubt: 0.0012 kg/m3 to 40 C, 0.02 kg/m3 to 65 C.

    >>> round(float(density_kg_m3(20.0)), 2)
    998.21
    """
    t = np.asarray(temp_c)
    return np.asarray(999.97495 * (1 - (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881))))


def enthalpy_kj_kg(temp_c: Values) -> FloatArray:
    """Enthalpy of water above that at 0 C; `temp_c` 0-65 C; result in kJ/kg.

    Source: own fit to IAPWS-95 (docs/science/mixing). Doubt: 0.0003 K between 0.5 and 65 C.

    >>> round(float(enthalpy_kj_kg(20.0)), 2)
    83.94
    """
    return np.asarray(np.polynomial.polynomial.polyval(np.asarray(temp_c), ENTHALPY))


def temp_of_enthalpy(h_kj_kg: Values) -> FloatArray:
    """Temperature in C of water with enthalpy `h_kj_kg` (0-275 kJ/kg): the inverse by Newton's steps.

    Source: inverse of `enthalpy_kj_kg`. Doubt: 0.0003 K.

    >>> round(float(temp_of_enthalpy(enthalpy_kj_kg(37.5))), 9)
    37.5
    """
    slope = np.polynomial.polynomial.polyder(ENTHALPY)
    t = np.asarray(h_kj_kg) / 4.19
    for _ in range(6):
        t = t - (enthalpy_kj_kg(t) - h_kj_kg) / np.polynomial.polynomial.polyval(t, slope)
    return np.asarray(t)
