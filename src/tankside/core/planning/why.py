"""Why a number is what it is: one frozen value for each computed number, for the page that shows it.

A family of numbers has one builder (`explain_washing`) and one file of words (`wording/whys/washing`).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.doubt.estimate import Estimate

AboutPlan = Literal[
    "time", "mix-to", "hot", "cold", "end", "second-start", "fix", "wash", "least-stock", "contrast"
]
"""Numbers of a plan, or of one of its tankfuls."""

AboutBottle = Literal["fixer-left", "stop-left", "developer-left", "good-until"]
"""Numbers of a bottle on the shelf."""

AboutStrip = Literal["curve", "speed", "strip-time"]
"""Numbers read off a step strip."""

AboutRecipe = Literal["recipe"]
"""A formula worked out for a volume."""

About = Literal[AboutPlan, AboutBottle, AboutStrip, AboutRecipe]

Spread = Literal["interval", "sources", "rule"]
"""What low and high of the answer are: a 5-95 % interval, two sources, or one value that is a rule."""

LengthCode = Literal[
    "before-strips", "one-strip", "all-strips",
    "leaflet", "own", "accepted", "temperature", "own-time", "mix", "taps", "baths", "before", "order",
    "half-life-named", "half-life-planned", "these-fills", "fix-rule", "fix-own", "fix-allowed", "clearing",
    "stock-held", "stock-needed", "believed", "aimed", "planned-count", "named-count",
    "speed-absolute", "speed-metered", "speed-relative",
    "stop-label", "stop-published", "stop-acid",
    "keeps-full", "keeps-part", "by-volume",
    "strip-index", "strip-gradient", "strip-gamma", "part",
]  # fmt: skip


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
class Narrowing:
    """Something that would narrow the doubt; `figures` are the numbers of its sentence."""

    code: str
    figures: tuple[Figure, ...] = ()

    def figure(self, code: str) -> float:
        """The number called `code` in its sentence."""
        return next(one.value for one in self.figures if one.code == code)


@dataclass(frozen=True, slots=True)
class Mark:
    """One place in a plot with what it stands for: where tonight lies."""

    code: str
    across: float
    up: float


@dataclass(frozen=True, slots=True)
class Plot:
    """Values `up` against values `across`; `low` and `high` are the band, or two sources without a middle.

    A value of None is one that is told no further ('well below'). `level` is a limit or an aim;
    `by_tens` draws `up` on a logarithmic scale. The table beside it has a row for each value across that
    stands in `rows`.
    """

    code: str
    across_unit: str
    up_unit: str
    across: tuple[float, ...]
    low: tuple[float | None, ...]
    high: tuple[float | None, ...]
    middle: tuple[float | None, ...] = ()
    level: float | None = None
    marks: tuple[Mark, ...] = ()
    by_tens: bool = False
    rows: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Why:
    """The answer with its doubt, sources as lengths, parts of the doubt (largest first), and the rest.

    `narrows` is what would narrow it; `references` are keys into the bibliography, or our own pages under
    docs/; `leaves_out` are codes of what the answer does not hold.
    """

    about: About
    tankful: str | None
    answer: Estimate
    lengths: tuple[Length, ...]
    parts: tuple[PartOfDoubt, ...]
    narrows: tuple[Narrowing, ...]
    inputs: tuple[Figure, ...]
    formula: str
    references: tuple[str, ...] = ()
    spread: Spread = "interval"
    leaves_out: tuple[str, ...] = ()
    plot: Plot | None = None

    def input(self, code: str) -> Figure:
        """The input called `code`."""
        return next(one for one in self.inputs if one.code == code)


def narrowings(*codes: str) -> tuple[Narrowing, ...]:
    """Things that would narrow a doubt, said without numbers."""
    return tuple(Narrowing(code) for code in codes)


def rule(value: float, unit: str, source: str) -> Estimate:
    """A value that is a rule, or known without a doubt worth telling."""
    return Estimate(value, value, value, unit, source)
