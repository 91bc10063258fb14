"""Twenty non-linear sets of NIST's Statistical Reference Datasets, from both starts (*published*, certified).

data/strd/NAME.dat: as NIST/ITL gives them (StRD, nonlinear regression), header and citation kept.
Correct digits are -log10 of the relative error of the worst parameter, at most the 11 that are certified.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

import numpy as np
import pytest
from literature.apart import Apart
from literature.tables import DATA
from numpy.typing import NDArray

from tankside.core.fits.exponential import rise_through
from tankside.core.fits.nonlinear import Fitted, fit

CERTIFIED_DIGITS = 11.0
Array = NDArray[np.float64]


def gauss(b, x):
    """A falling exponential under two bells."""
    bells = b[2] * np.exp(-(((x - b[3]) / b[4]) ** 2)) + b[5] * np.exp(-(((x - b[6]) / b[7]) ** 2))
    return b[0] * np.exp(-b[1] * x) + bells


def lanczos(b, x):
    """Three exponentials."""
    return b[0] * np.exp(-b[1] * x) + b[2] * np.exp(-b[3] * x) + b[4] * np.exp(-b[5] * x)


def enso(b, x):
    """A level and three periods."""
    year = b[1] * np.cos(2 * np.pi * x / 12) + b[2] * np.sin(2 * np.pi * x / 12)
    longer = b[4] * np.cos(2 * np.pi * x / b[3]) + b[5] * np.sin(2 * np.pi * x / b[3])
    third = b[7] * np.cos(2 * np.pi * x / b[6]) + b[8] * np.sin(2 * np.pi * x / b[6])
    return b[0] + year + longer + third


def hahn(b, x):
    """A cubic over a cubic."""
    return (b[0] + b[1] * x + b[2] * x**2 + b[3] * x**3) / (1 + b[4] * x + b[5] * x**2 + b[6] * x**3)


def rise(b, x):
    """A rise that levels off."""
    return b[0] * (1 - np.exp(-b[1] * x))


MODELS = {
    "Bennett5": lambda b, x: b[0] * (b[1] + x) ** (-1 / b[2]),
    "BoxBOD": rise,
    "Chwirut2": lambda b, x: np.exp(-b[0] * x) / (b[1] + b[2] * x),
    "ENSO": enso,
    "Eckerle4": lambda b, x: b[0] / b[1] * np.exp(-0.5 * ((x - b[2]) / b[1]) ** 2),
    "Gauss1": gauss,
    "Gauss2": gauss,
    "Gauss3": gauss,
    "Hahn1": hahn,
    "Kirby2": lambda b, x: (b[0] + b[1] * x + b[2] * x**2) / (1 + b[3] * x + b[4] * x**2),
    "Lanczos1": lanczos,
    "Lanczos2": lanczos,
    "Lanczos3": lanczos,
    "MGH09": lambda b, x: b[0] * (x**2 + x * b[1]) / (x**2 + x * b[2] + b[3]),
    "MGH10": lambda b, x: b[0] * np.exp(b[1] / (x + b[2])),
    "MGH17": lambda b, x: b[0] + b[1] * np.exp(-x * b[3]) + b[2] * np.exp(-x * b[4]),
    "Misra1a": rise,
    "Misra1c": lambda b, x: b[0] * (1 - (1 + 2 * b[1] * x) ** -0.5),
    "Nelson": lambda b, x: b[0] - b[1] * x[0] * np.exp(-b[2] * x[1]),
    "Roszman1": lambda b, x: b[0] - b[1] * x - np.arctan(b[2] / (x - b[3])) / np.pi,
}


@dataclass(frozen=True)
class ReferenceSet:
    """One file: readings, both starts, and what NIST certifies."""

    x: Array
    y: Array
    starts: tuple[Array, Array]
    parameters: Array
    sds: Array
    sum_of_squares: float


@cache
def reference_set(name: str) -> ReferenceSet:
    """A file as its own header describes it."""
    text = (DATA / "strd" / f"{name}.dat").read_text(encoding="ascii")
    told = np.array([line.split("=")[1].split() for line in re.findall(r"^\s*b\d+ = .*$", text, re.M)], float)
    left = float(re.findall(r"Residual Sum of Squares:\s+(\S+)", text)[0])
    after = text[text.rindex("Data:") :].splitlines()[1:]
    columns = np.array([line.split() for line in after if line.strip()], float).T
    y = np.log(columns[0]) if name == "Nelson" else columns[0]
    x = columns[1:] if name == "Nelson" else columns[1]
    return ReferenceSet(x, y, (told[:, 0], told[:, 1]), told[:, 2], told[:, 3], left)


@cache
def fitted(name: str, start: int) -> Fitted:
    """What we find for a set from its first or second start."""
    given = reference_set(name)
    return fit(lambda b: MODELS[name](b, given.x), given.y, list(given.starts[start]))


def correct_digits(certified: Array, found: Array) -> float:
    """Digits that agree, of the worst."""
    worst = np.max(np.abs(found - certified) / np.abs(certified))
    return float(min(CERTIFIED_DIGITS, -np.log10(max(worst, 1e-16))))


@pytest.mark.checks(of=fit)
@pytest.mark.parametrize("start", [0, 1])
@pytest.mark.parametrize("name", sorted(MODELS))
def test_parameters_of_a_reference_set(name: str, start: int) -> None:
    """Six correct digits or more in every parameter, and four or more in its standard deviation."""
    given, found = reference_set(name), fitted(name, start)

    assert correct_digits(given.parameters, found.parameters) >= 6
    if name != "Lanczos1":  # what is left over there is below the rounding of the data
        assert correct_digits(given.sds, found.sds) >= 4
        assert pytest.approx(given.sum_of_squares, rel=1e-6) == found.sum_of_squares


@pytest.mark.checks(of=fit)
@pytest.mark.parametrize("start", [0, 1])
def test_eighteen_of_twenty_to_eight_digits(start: int, apart: Apart) -> None:
    """Eight correct digits or more in 18 of the sets; `pytest -s` prints the table."""
    for name in MODELS:
        apart.note(reference_set(name).parameters, fitted(name, start).parameters)
    digits = {
        name: correct_digits(reference_set(name).parameters, fitted(name, start).parameters)
        for name in sorted(MODELS)
    }
    print(f"\nset        start {start + 1}: correct digits of the worst parameter")
    for name, found in digits.items():
        print(f"{name:<10} {found:5.1f}")

    assert sum(found >= 8 for found in digits.values()) >= 18


@pytest.mark.checks(of=rise_through)
@pytest.mark.parametrize("name", ["Misra1a", "BoxBOD"])
def test_a_rise_needs_no_start_value(name: str, apart: Apart) -> None:
    """The two sets of the law of development, without any start: nine correct digits."""
    given = reference_set(name)
    found = rise_through(given.x, given.y)
    apart.note(given.parameters, [found.top, found.rate])

    assert correct_digits(given.parameters, np.array([found.top, found.rate])) >= 9
    assert correct_digits(given.sds[:1], found.fitted.sds[:1]) >= 6
    assert correct_digits(given.sds[1:], found.fitted.sds[1:] * found.rate) >= 6
