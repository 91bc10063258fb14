"""How far apart expected and found are in each literature test, as `pytest.approx` compares them."""

from __future__ import annotations

import math
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from literature.tables import rows_of

REAL_APPROX = pytest.approx
NOISE = 1e-9
"""Differences below this are the machine's, not the model's."""

LEAST_SHOWN = 0.0001

HEAD = "| science: what. *Against what* | worst |"

STEADY = 0.25
"""Other machines may differ from the kept worst by this share of it."""


@dataclass(frozen=True)
class Line:
    """One line of agreement.toml: what is compared with what, and by which tests."""

    number: int
    page: str
    kind: str
    what: str
    against: str
    unit: str
    tests: tuple[str, ...]


def lines() -> list[Line]:
    """agreement.toml, in its order; tests as 'file.name'."""
    told = tomllib.loads(Path(__file__).with_name("agreement.toml").read_text(encoding="utf-8"))["line"]
    return [
        Line(
            number, one["page"], one["kind"], one["what"], one["with"], one["in"], tuple(_tests(one["tests"]))
        )
        for number, one in enumerate(told)
    ]


def line_of(nodeid: str, of: Mapping[str, Line]) -> Line | None:
    """The line that a test belongs to."""
    file, _, name = nodeid.partition("::")
    return of.get(f"{Path(file).stem.removeprefix('test_')}.{name.partition('[')[0].removeprefix('test_')}")


@dataclass
class Apart:
    """Every pair that one test compared, as numbers."""

    pairs: list[tuple[float, float]] = field(default_factory=list)

    def note(self, expected: Any, found: Any) -> None:
        """Keep a pair, or each pair of two rows of numbers."""
        if isinstance(expected, Mapping):
            for name in expected:
                self.note(expected[name], found[name])
            return
        told, seen = (np.asarray(one, dtype=float).ravel() for one in (expected, found))
        if told.shape == seen.shape:
            self.pairs += zip(told.tolist(), seen.tolist(), strict=True)

    def approx(self, expected: Any, *args: Any, **within: Any) -> Watched:
        """`pytest.approx` that notes what it is compared with."""
        return Watched(self, expected, REAL_APPROX(expected, *args, **within))

    def worst(self, unit: str) -> float:
        """The largest difference, or the largest relative one where neither number is nought."""
        if unit in ("%", "digits"):
            return max((abs(a - b) / max(abs(a), abs(b)) for a, b in self.pairs if a and b), default=0.0)
        return max((abs(a - b) for a, b in self.pairs), default=0.0)


class Watched:
    """What `pytest.approx` gives, with an eye on the other side."""

    __array_ufunc__ = None
    __array_priority__ = 100
    __hash__ = None  # type: ignore[assignment]

    def __init__(self, apart: Apart, expected: Any, real: Any) -> None:
        self.apart, self.expected, self.real = apart, expected, real

    def __eq__(self, found: object) -> bool:
        self.apart.note(self.expected, found)
        return bool(self.real == found)

    def __repr__(self) -> str:
        return repr(self.real)


@dataclass(frozen=True)
class Kept:
    """The worst of a line as it was last measured, and the test that it was met in."""

    worst: float
    at: str


def kept() -> dict[int, Kept]:
    """data/agreement.csv by number of line."""
    return {int(row["line"]): Kept(float(row["worst"]), row["at"]) for row in rows_of("agreement.csv")}


def stale(worst: float, told: Kept, *, nodeid: str) -> bool:
    """Whether a test is further apart than its line says, or the line's own worst is no more."""
    slack = STEADY * told.worst + NOISE
    return worst > told.worst + slack or (nodeid == told.at and worst < told.worst - slack)


def said(told: Kept, unit: str) -> str:
    """A worst as a page says it, upwards to one digit; 'holds' where nothing but yes or no was asked."""
    if not told.at:
        return "holds"
    if unit == "digits":
        return f"{math.floor(-math.log10(max(told.worst, 1e-11)))} digits"
    if told.worst <= NOISE:
        return "none"
    shown = 100 * told.worst if unit == "%" else told.worst
    if shown < LEAST_SHOWN:
        return f"under {LEAST_SHOWN} {unit}"
    step = 10.0 ** math.floor(math.log10(shown))
    return f"{math.ceil(round(shown / step, 6)) * step:.12g} {unit}"


def table(kind: str) -> str:
    """The lines of a kind, as a table of Markdown."""
    worst = kept()
    rows = [
        f"| [{one.page}]({one.page}.md): {one.what}. *{one.against}* | {said(worst[one.number], one.unit)} |"
        for one in lines()
        if one.kind == kind
    ]
    return "\n".join([HEAD, "|---|---|", *rows])


def _tests(told: list[str]) -> list[str]:
    """'file: one, two' as 'file.one' and 'file.two'."""
    parted = [one.split(": ") for one in told]
    return [f"{file}.{name.strip()}" for file, names in parted for name in names.split(",")]
