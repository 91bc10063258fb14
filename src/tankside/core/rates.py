"""How a rate changes with temperature: a factor per 10 K, or an activation energy."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray, LogNormal, Values
from tankside.core.doubt.estimate import Estimate

GAS_CONSTANT = 8.314462618e-3
"""kJ/(mol K), CODATA 2018."""

ZERO_C = 273.15

DEFAULT_Q10 = Estimate(2.2, 1.5, 2.9, "per 10 K", "ours, for any developer, 18-24 C")
Q10_BELIEF = LogNormal(1.5, 2.9)
"""What is believed of a factor per 10 K before any table: ln Q10 normal, 5-95 % 1.5 to 2.9."""


@dataclass(frozen=True, slots=True)
class Q10:
    """A rate that grows by `factor_per_10k` every 10 K; one where the reference `ref_c` holds.

    `factor_per_10k` may be an array of draws; it then broadcasts against the leading axes of temperatures.
    """

    factor_per_10k: Values = 2.2
    ref_c: float = 20.0

    def factor(self, temp_c: Values) -> FloatArray:
        """Rate at `temp_c` (0-60 C) over the rate at `ref_c`.

        Source: reference law of Ferguson and Howard 1905, as quoted by Sheppard and Mees.
        Doubt: that of the factor per 10 K; 10 % of it are 1 % a kelvin.

        >>> round(float(Q10(2.5).factor(22.0) * 8), 6)
        9.608995
        """
        return np.asarray(np.exp(np.log(self.factor_per_10k) * (np.asarray(temp_c) - self.ref_c) / 10))


@dataclass(frozen=True, slots=True)
class Arrhenius:
    """A rate with activation energy `energy_kj_mol`; one at `ref_c`."""

    energy_kj_mol: Values
    ref_c: float = 20.0

    def factor(self, temp_c: Values) -> FloatArray:
        """Rate at `temp_c` (0-60 C) over the rate at `ref_c`.

        Source: Arrhenius 1889; R from CODATA 2018. Doubt: that of the energy.

        >>> round(float(Arrhenius(60.0).factor(24.0)), 6)
        1.392873
        """
        step = 1 / (np.asarray(temp_c) + ZERO_C) - 1 / (self.ref_c + ZERO_C)
        return np.asarray(np.exp(-np.asarray(self.energy_kj_mol) / GAS_CONSTANT * step))


RateLaw = Q10 | Arrhenius


def energy_of_q10(q10: float, *, from_c: float = 20.0, to_c: float = 30.0) -> float:
    """Activation energy in kJ/mol of a factor `q10` (1-5) per 10 K, matched between two temperatures.

    Source: Ea = R ln(Q10) T1 T2 / (T2 - T1) x (T2 - T1) / 10. Doubt: none; the two laws part by 3 % at 30 C.

    >>> round(energy_of_q10(2.5), 3)
    67.704
    """
    first, second = from_c + ZERO_C, to_c + ZERO_C
    return float(GAS_CONSTANT * np.log(q10) / 10 * first * second)


def q10_of_energy(energy_kj_mol: float, *, from_c: float = 20.0, to_c: float = 30.0) -> float:
    """Factor per 10 K of an activation energy (5-150 kJ/mol), matched between two temperatures.

    Source: the inverse of `energy_of_q10`. Doubt: none.

    >>> round(q10_of_energy(67.704), 3)
    2.5
    """
    first, second = from_c + ZERO_C, to_c + ZERO_C
    return float(np.exp(10 * energy_kj_mol / (GAS_CONSTANT * first * second)))
