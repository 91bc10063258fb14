"""Inputs of a question, in groups that are drawn together."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import Distribution, FloatArray, standard_normal


@dataclass(frozen=True, slots=True)
class Input:
    """One uncertain input: `central` is the value that is told, the median unless given."""

    name: str
    distribution: Distribution
    central: float | None = None

    @property
    def told(self) -> float:
        """The value at which the answer is told."""
        return self.distribution.median if self.central is None else self.central


@dataclass(frozen=True, slots=True)
class Group:
    """Inputs that one measurement or one source ties together; `correlation` of their normal scores."""

    name: str
    inputs: tuple[Input, ...]
    correlation: tuple[tuple[float, ...], ...] | None = None

    def at(self, uniforms: FloatArray) -> dict[str, FloatArray]:
        """Values of the inputs at `uniforms` (draws by inputs), correlated by a normal copula."""
        columns = uniforms
        if self.correlation is not None:
            from scipy.special import ndtr  # noqa: PLC0415 - scipy is loaded only where it is used

            lower = np.linalg.cholesky(np.asarray(self.correlation))
            columns = np.asarray(ndtr(standard_normal(uniforms) @ lower.T))
        return {one.name: one.distribution.at(columns[:, i]) for i, one in enumerate(self.inputs)}


def alone(name: str, distribution: Distribution, central: float | None = None) -> Group:
    """A group of one input, called as the input is.

    Own model: docs/science/doubt. Doubt: none.

    >>> from tankside.core.doubt.distributions import Normal
    >>> alone("room", Normal(20.0, 1.0)).inputs[0].name
    'room'
    """
    return Group(name, (Input(name, distribution, central),))


def width(groups: Sequence[Group]) -> int:
    """How many columns of draws these groups need.

    Own model: docs/science/doubt. Doubt: none.

    >>> from tankside.core.doubt.distributions import Normal
    >>> width([alone("room", Normal(20.0, 1.0)), alone("tank", Normal(17.0, 1.0))])
    2
    """
    return sum(len(group.inputs) for group in groups)


def seed_of(*question: object) -> int:
    """A whole number made of the question alone: the same question gives the same digits.

    Arguments: plain values (numbers, texts, frozen dataclasses). Result: 64-bit whole number.
    Own model: docs/science/doubt. Doubt: none.

    >>> seed_of("end", 570.0) == seed_of("end", 570.0) != seed_of("end", 571.0)
    True
    """
    return int.from_bytes(hashlib.blake2b(repr(question).encode(), digest_size=8).digest(), "big")


def uniform_draws(seed: int, *, count: int, columns: int) -> FloatArray:
    """Draws between 0 and 1, one from each of `count` equal strata in every column (Latin hypercube).

    Arguments: `count` 1 to a million draws, `columns` inputs. Result: array `count` by `columns`.
    Source: McKay, Beckman, Conover, Technometrics 21 (1979) 239 (from memory). Doubt: none.

    >>> draws = uniform_draws(1, count=4, columns=2)
    >>> sorted(int(4 * u) for u in draws[:, 0])
    [0, 1, 2, 3]
    """
    generator = np.random.default_rng(seed)
    strata = np.argsort(generator.random((count, columns)), axis=0)
    within = generator.uniform(1e-12, 1 - 1e-12, (count, columns))
    return np.asarray((strata + within) / count)


def draws_for(groups: Sequence[Group], *, seed: int, count: int = 10_000) -> FloatArray:
    """Uniform draws shaped for `groups`.

    Own model: docs/science/doubt: drawn by `uniform_draws`. Doubt: none.

    >>> from tankside.core.doubt.distributions import Normal
    >>> draws_for([alone("room", Normal(20.0, 1.0))], seed=1, count=500).shape
    (500, 1)
    """
    return uniform_draws(seed, count=count, columns=width(groups))
