"""Text as typed, made plain: the same sign for the same thing, whatever keyboard it came from."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

from tankside.core.refusals import Refused, refuse

NUMBER = r"\d+(?:[.,]\d+)?"
MIXED = r"(?:\d+ )?\d+ ?/ ?\d+"
"""Halves and thirds as people write them: '9 1/2', '1/2'."""

LONGEST = 40
_SAME = str.maketrans(
    {"º": "°", "⁄": "/", "∕": "/", "−": "-", "–": "-", "′": "'", "’": "'", "″": '"', "”": '"', "∶": ":"}
)


@dataclass(frozen=True, slots=True)
class Candidate:
    """One reading of what was typed: `entry` is the text that says it without doubt."""

    entry: str
    value: float


def plain(text: str) -> str:
    """`text` trimmed, NFKC-normalised, in small letters, with single spaces.

    Own model: docs/how-to/amounts. Doubt: none.

    >>> plain("  9½\\u00a0Min ")
    '9 1/2 min'
    """
    apart = "".join(
        f" {one}" if unicodedata.decomposition(one).startswith("<fraction>") else one for one in text
    )
    signs = unicodedata.normalize("NFKC", apart.translate(_SAME)).translate(_SAME)
    return " ".join(signs.casefold().replace("''", '"').split())


def number(text: str) -> float:
    """A number that `NUMBER` or `MIXED` matched, with a decimal comma or dot.

    Own model: docs/how-to/amounts. Doubt: none.

    >>> number("20,5"), number("9 1/2")
    (20.5, 9.5)
    """
    if "/" not in text:
        return float(text.replace(",", "."))
    whole, above, below = re.fullmatch(r"(?:(\d+) )?(\d+) ?/ ?(\d+)", text).groups()  # type: ignore[union-attr]
    if int(below) == 0:
        raise unreadable("number-unreadable", text)
    return float(whole or 0) + int(above) / int(below)


def unreadable(code: str, text: str) -> Refused:
    """The refusal of something that is no amount at all."""
    return refuse(code, ways_on=("type-again",), typed=" ".join(text.split())[:LONGEST])


def one_of(candidates: Sequence[Candidate], *, code: str, typed: str) -> float:
    """The value of the only candidate; two that differ are asked back, each as a way on."""
    entries = {one.entry: one for one in candidates}
    if len(entries) == 1:
        return candidates[0].value
    first, second, *_ = entries.values()
    raise refuse(
        code,
        ways_on=("read-as-first", "read-as-second"),
        typed=" ".join(typed.split())[:LONGEST],
        first=first.entry,
        second=second.entry,
    )
