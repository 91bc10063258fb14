"""The acts of a session in words, as they stand on the marks of its clock."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import assert_never

from tankside.core.methods.baths import BathKind
from tankside.core.planning.acts import AGITATING, Act

LIQUIDS: dict[BathKind, str] = {
    "presoak": "water",
    "develop": "developer",
    "stop": "stop bath",
    "fix": "fixer",
    "aid": "washing aid",
    "wash": "water",
    "wetting": "wetting bath",
}
PLAIN_ACTS = {
    "drain": "drain",
    "hang": "hang",
    "load": "load",
    "mix": "mix and temper the developer",
    "dry reels": "dry tank and reels",
}
NUMBERS = (
    "none",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)


@dataclass(frozen=True, slots=True)
class Line:
    """One thing the hands do, as it is said: drained and poured at once is one line."""

    start_s: float
    end_s: float
    tankful: str
    words: str


def number_word(count: int) -> str:
    """A small count in letters, as in a sentence.

    >>> number_word(4), number_word(17)
    ('four', '17')
    """
    return NUMBERS[count] if 0 <= count < len(NUMBERS) else str(count)


def lines_of(acts: Sequence[Act]) -> tuple[Line, ...]:
    """What the hands do, in order; inversions and the later fills of a wash are marks without words."""
    return tuple(_lines([act for act in acts if act.kind not in AGITATING], _fills(acts)))


def _lines(acts: Sequence[Act], fills: dict[str, int]) -> Iterator[Line]:
    """Each act, a drain together with the pour that follows it."""
    drained: dict[str, Act] = {}
    for act in acts:
        if act.fill > 1 and act.kind in ("pour", "drain") and not _last_drain(act, fills):
            continue
        if act.kind == "drain" and act.fill == 1:
            continue
        if act.kind == "drain":
            drained[act.tankful] = act
            continue
        before = drained.pop(act.tankful, None)
        words = act_words(act, fills.get(act.tankful, 1))
        if before is not None:
            words = f"drain{';' if act.bath == 'wash' else ','} {words}"
        yield Line(before.start_s if before else act.start_s, act.end_s, act.tankful, words)


def act_words(act: Act, fills: int = 1) -> str:
    """One act in words; `fills` is how many its tankful's wash has.

    >>> act_words(Act("A", "fix", "pour", 0, 15, 0, 0))
    'pour fixer'
    >>> act_words(Act("A", "wash", "pour", 0, 15, 0, 0, 1), 4)
    'wash, first of 4 fills'
    """
    match act.kind:
        case "pour":
            return _pour_words(act, fills)
        case "measure":
            return f"measure {LIQUIDS[act.bath]}" if act.bath else "measure"
        case "invert" | "rotate":
            return f"{act.kind}, {act.for_s:.0f} s"
        case "drain" | "hang" | "load" | "mix" | "dry reels":
            return PLAIN_ACTS[act.kind]
        case _:
            assert_never(act.kind)


def _pour_words(act: Act, fills: int) -> str:
    """A pour by what goes in."""
    if act.bath == "wash":
        return f"wash, first of {fills} fills" if fills > 1 else "wash"
    if act.bath == "wetting":
        return "wetting bath"
    return f"pour {LIQUIDS[act.bath]}" if act.bath else "pour"


def _fills(acts: Sequence[Act]) -> dict[str, int]:
    """How many fills each tankful's wash has."""
    fills: dict[str, int] = {}
    for act in acts:
        fills[act.tankful] = max(fills.get(act.tankful, 1), act.fill)
    return fills


def _last_drain(act: Act, fills: dict[str, int]) -> bool:
    """Whether this pours out the last fill of a wash, after which another bath or the hanging comes."""
    return act.kind == "drain" and act.fill == fills.get(act.tankful)
