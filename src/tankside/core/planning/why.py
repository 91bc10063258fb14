"""Why a number is what it is: one frozen value for each computed number, for the page that shows it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.doubt.estimate import Estimate

About = Literal["time", "mix-to", "hot", "cold", "end", "second-start"]
LengthCode = Literal[
    "leaflet", "own", "accepted", "temperature", "own-time", "mix", "taps", "baths", "before", "order"
]


@dataclass(frozen=True, slots=True)
class Figure:
    """One input or result with its unit and where it comes from."""

    code: str
    value: float
    unit: str
    origin: str


@dataclass(frozen=True, slots=True)
class Length:
    """One source as a hatched length on the page's scale; `figures` are the numbers of its sentence."""

    code: LengthCode
    estimate: Estimate
    figures: tuple[Figure, ...] = ()

    def figure(self, code: str) -> float:
        """The number called `code` in its sentence."""
        return next(one.value for one in self.figures if one.code == code)


@dataclass(frozen=True, slots=True)
class PartOfDoubt:
    """One cause of doubt as half its 90 % interval, in the answer's unit."""

    code: str
    half_width: float


@dataclass(frozen=True, slots=True)
class Why:
    """The answer with its doubt, sources as lengths, parts of the doubt (largest first), and the rest.

    `narrows` are codes of what would narrow it; `references` are keys into the bibliography, or our own
    pages under docs/.
    """

    about: About
    tankful: str | None
    answer: Estimate
    lengths: tuple[Length, ...]
    parts: tuple[PartOfDoubt, ...]
    narrows: tuple[str, ...]
    inputs: tuple[Figure, ...]
    formula: str
    references: tuple[str, ...] = ()
