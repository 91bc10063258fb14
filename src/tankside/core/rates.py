"""How a rate changes with temperature: a factor per 10 K, an activation energy, or a table read between."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray, LogNormal, Values
from tankside.core.doubt.estimate import Estimate

GAS_CONSTANT = 8.314462618e-3
"""kJ/(mol K), CODATA 2018."""

ZERO_C = 273.15

_LEVEL_K, _FLAT = 1e-6, 1e-9
_CENTRAL = 0.9
"""Share of a rounding's width that its 5-95 % interval takes."""

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


@dataclass(frozen=True, slots=True, eq=False)
class RateTable:
    """A rate read between knots, its logarithm straight from one to the next.

    `log_factors` (over the rate at `ref_c`) is (knots) or (draws, knots); temperatures then are
    (draws or 1, ...). Beyond the outer knots the last slope goes on: nothing is known there.
    """

    temps_c: FloatArray
    log_factors: FloatArray
    ref_c: float = 20.0

    def factor(self, temp_c: Values) -> FloatArray:
        """Rate at `temp_c` (0-60 C) over the rate at `ref_c`.

        Own model: docs/science/rate-and-equivalent-time. Doubt: that of the printed rows.

        >>> two = RateTable(np.array([20.0, 22.0, 24.0]), np.log([1.0, 1.25, 1.3]))
        >>> [round(float(two.factor(temp_c)), 3) for temp_c in (21.0, 22.0, 23.0)]
        [1.118, 1.25, 1.275]
        """
        first_c, first, slope, _ = self._piece(np.asarray(temp_c))
        return np.asarray(np.exp(first + slope * (np.asarray(temp_c) - first_c)))

    def mean_factors(self, temps_c: FloatArray) -> FloatArray:
        """Mean factor of each straight piece between temperatures (..., times), exact across knots."""
        first_c, first, slope, before = self._piece(temps_c)
        up_k = temps_c - first_c
        summed = before + np.exp(first) * up_k * _grown(slope * up_k)
        steps = np.diff(temps_c, axis=-1)
        level = np.abs(steps) < _LEVEL_K
        middle = self.factor(temps_c[..., :-1] + steps / 2)
        return np.asarray(np.where(level, middle, np.diff(summed, axis=-1) / np.where(level, 1.0, steps)))

    def _piece(self, temps_c: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray]:
        """Where the piece of each temperature begins: C, log factor, slope, and what was summed before."""
        lengths = np.diff(self.temps_c)
        slopes = np.diff(self.log_factors, axis=-1) / lengths
        pieces = np.exp(self.log_factors[..., :-1]) * lengths * _grown(slopes * lengths)
        summed = np.concatenate([np.zeros_like(pieces[..., :1]), np.cumsum(pieces, axis=-1)], axis=-1)
        at = np.clip(np.searchsorted(self.temps_c, temps_c, side="right") - 1, 0, len(lengths) - 1)
        if self.log_factors.ndim == 1:
            return self.temps_c[at], self.log_factors[at], slopes[at], summed[at]
        rows = np.arange(len(self.log_factors)).reshape(-1, *[1] * (np.ndim(temps_c) - 1))
        return self.temps_c[at], self.log_factors[rows, at], slopes[rows, at], summed[rows, at]


RateLaw = Q10 | Arrhenius | RateTable


@dataclass(frozen=True, slots=True)
class Knot:
    """One temperature of a table: the rate there is `factor` times that at the reference.

    `spread` is half of the 5-95 % interval of its logarithm.
    """

    temp_c: float
    factor: float
    spread: float


@dataclass(frozen=True, slots=True)
class BelievedRate:
    """How a rate is believed to go with temperature: worked out once, carried by the plan, asked everywhere.

    One factor `q10` for every 10 K; where `knots` stand no one slope holds, and the rate is read between them
    (`q10` then only tells how steep they are as a whole). Outside `least_c` to `most_c` nothing is known.
    """

    q10: Estimate = DEFAULT_Q10
    ref_c: float = 20.0
    least_c: float = 18.0
    most_c: float = 24.0
    knots: tuple[Knot, ...] = ()

    @property
    def law(self) -> RateLaw:
        """The law that numbers are told by."""
        return self._between(np.zeros(())) if self.knots else Q10(self.q10.value, self.ref_c)

    @property
    def ends(self) -> tuple[RateLaw, RateLaw]:
        """The shallow and the steep law, at 5 and 95 % of the belief."""
        if self.knots:
            return self._between(np.array(-1.0)), self._between(np.array(1.0))
        return Q10(self.q10.low, self.ref_c), Q10(self.q10.high, self.ref_c)

    def drawn(self, uniforms: FloatArray) -> RateLaw:
        """One law for each of `uniforms` (draws, between 0 and 1), from shallow to steep.

        Own model: docs/science/rate-and-equivalent-time: a factor is log-normal; knots are off all one way,
        each within the rounding of its row.

        >>> law = BelievedRate().drawn(np.array([0.05, 0.95]))
        >>> [round(float(one), 2) for one in law.factor(np.array([30.0, 30.0]))]
        [1.5, 2.9]
        """
        if self.knots:
            return self._between((2 * uniforms - 1) / _CENTRAL)
        if self.q10.low < self.q10.high:
            return Q10(LogNormal(self.q10.low, self.q10.high).at(uniforms), self.ref_c)
        return Q10(np.full(len(uniforms), self.q10.value), self.ref_c)

    def knows(self, temp_c: float) -> bool:
        """Whether anything is known at `temp_c`."""
        return self.least_c <= temp_c <= self.most_c

    def _between(self, steeper: FloatArray) -> RateTable:
        """The table, its knots off by `steeper` of their spread, away from the reference on both sides."""
        temps = np.array([one.temp_c for one in self.knots])
        told = np.log([one.factor for one in self.knots])
        away = np.sign(temps - self.ref_c) * np.array([one.spread for one in self.knots])
        return RateTable(temps, told + steeper[..., None] * away, self.ref_c)


DEFAULT_RATE = BelievedRate()
"""What is believed of any developer with one printed time at 20 C."""


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


def _grown(exponent: FloatArray) -> FloatArray:
    """(e^x - 1)/x, which is 1 where x is 0: the mean of an exponential over its piece, by its first value."""
    flat = np.abs(exponent) < _FLAT
    return np.asarray(np.where(flat, 1.0, np.expm1(exponent) / np.where(flat, 1.0, exponent)))
