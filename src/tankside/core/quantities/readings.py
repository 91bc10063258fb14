"""Densities as a person types or pastes them: a plain list, or a table with named columns."""

from __future__ import annotations

import re
from collections.abc import Iterator
from csv import DictReader
from dataclasses import dataclass
from math import isfinite

from tankside.core.quantities.typed import LONGEST
from tankside.core.refusals import Refused, refuse

NOT_READ = "-"
"""Stands for a step that was left out, so that those after it keep their place."""

MOST_READINGS = 400


@dataclass(frozen=True, slots=True)
class TypedReadings:
    """Densities in the order they were typed, None where a step was left out.

    A table may bring `log_h`, the exposures themselves, or `steps`, their numbers; a plain list neither.
    """

    densities: tuple[float | None, ...]
    log_h: tuple[float, ...] | None = None
    steps: tuple[float, ...] | None = None


def read_readings(text: str) -> TypedReadings:
    """What was typed: numbers apart by spaces, lines, semicolons or commas, or a table with its first line.

    Arguments: `text` of at most 400 readings; '-' for a step that was not read. A comma between two digits is
    a decimal one where no number has a point.
    Own model: docs/how-to/step-strips. Doubt: none.

    >>> read_readings("0,25 0,31 - 0,44").densities
    (0.25, 0.31, None, 0.44)
    >>> read_readings("step,density\\n1,0.25\\n3,0.44").steps
    (1.0, 3.0)
    """
    counting = "\n".join(_lines(text))
    if re.search(r"[^\W\d_]", counting):
        return read_table(text)
    plain = counting.replace("−", "-").replace("–", "-")
    if "." in plain:
        plain = plain.replace(",", " ")
    words = re.sub(r",(?!\d)", " ", plain.replace(";", " ")).split()
    if len(words) > MOST_READINGS:
        raise refuse("too-many-readings", count=len(words), most=MOST_READINGS)
    return TypedReadings(tuple(_density(word, number) for number, word in enumerate(words, 1)))


def read_table(text: str) -> TypedReadings:
    """A table with the columns density and log_h or step, apart by commas, semicolons or tabs.

    Arguments: `text` whose first line names the columns; lines that begin with '#' are left out.
    Own model: docs/how-to/step-strips. Doubt: none.

    >>> read_table("# invented\\nlog_h,density\\n-3.0,0.25\\n-2.85,0.26").log_h
    (-3.0, -2.85)
    """
    lines = list(_lines(text))
    apart = next((sign for sign in "\t;" if lines and sign in lines[0]), ",")
    rows = DictReader(lines, delimiter=apart)
    names = {name.strip(): name for name in rows.fieldnames or ()}
    along = "log_h" if "log_h" in names else "step"
    if "density" not in names or along not in names:
        raise refuse("no-readings-in-file", typed=(", ".join(sorted(names)) or "nothing")[:LONGEST])
    pairs = [
        (_table_number(row[names[along]], number), _table_number(row[names["density"]], number))
        for number, row in enumerate(rows, start=1)
    ]
    if len(pairs) > MOST_READINGS:
        raise refuse("too-many-readings", count=len(pairs), most=MOST_READINGS)
    first, densities = tuple(one for one, _ in pairs), tuple(one for _, one in pairs)
    return (
        TypedReadings(densities, log_h=first) if along == "log_h" else TypedReadings(densities, steps=first)
    )


def _lines(text: str) -> Iterator[str]:
    """The lines that count."""
    return (line for line in text.lstrip("\ufeff").splitlines() if line.strip() and not line.startswith("#"))


def _density(word: str, number: int) -> float | None:
    """One density of a list."""
    if word == NOT_READ:
        return None
    try:
        return _finite(float(word.replace(",", ".")))
    except ValueError:
        raise _unreadable(word, number) from None


def _table_number(word: str | None, number: int) -> float:
    """One number of a table."""
    try:
        return _finite(float((word or "").strip().replace(",", ".")))
    except ValueError:
        raise refuse("reading-unreadable", row=number) from None


def _finite(value: float) -> float:
    if not isfinite(value):
        raise ValueError(value)
    return value


def _unreadable(word: str, number: int) -> Refused:
    return refuse("density-unreadable", ways_on=("type-again",), number=number, typed=word[:LONGEST])
