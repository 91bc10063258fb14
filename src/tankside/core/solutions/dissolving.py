"""In which order a formula is dissolved, and why: each into what stands before it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

StepCode = Literal["water-first", "pinch-of-sulfite", "dissolve", "acid-slowly", "alkali-slowly", "fill-up"]

METOL = "metol"
SULFITE = "sodium sulfite"
_SPITTING = ("sodium hydroxide", "potassium hydroxide")
_RANKS = (
    ("sodium thiosulfate", 0), (METOL, 1), (SULFITE, 2), ("hydroquinone", 3), ("phenidone", 4),
    ("borax", 5), ("sodium metaborate", 5), ("sodium carbonate", 5), ("potassium carbonate", 5),
    ("acetic acid", 6), ("citric acid", 6), ("boric acid", 7), ("alum", 8), ("bromide", 9),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do while mixing; `substance` is empty for water."""

    code: StepCode
    substance: str = ""


def steps_for(substances: Sequence[str], *, filled_up: bool = True) -> tuple[Step, ...]:
    """The steps of dissolving, in the order given unless that would spoil the bath.

    Metol dissolves badly in sulfite, so it goes first, with a pinch of the sulfite against the air; acid
    goes into water and only after the sulfite that keeps thiosulfate from falling apart; alum last.
    Own model: docs/science/formulas (common practice). Doubt: none.

    >>> [one.code for one in steps_for(["metol", "sodium sulfite"])]
    ['water-first', 'pinch-of-sulfite', 'dissolve', 'dissolve', 'fill-up']
    """
    ordered = list(substances) if not spoils(substances) else sorted(substances, key=_rank)
    steps = [Step("water-first")]
    if METOL in ordered and SULFITE in ordered:
        steps.append(Step("pinch-of-sulfite", SULFITE))
    steps += [Step(_how(one), one) for one in ordered]
    return (*steps, Step("fill-up")) if filled_up else tuple(steps)


def spoils(substances: Sequence[str]) -> bool:
    """Whether dissolving in this order would spoil the bath: sulfite before metol, acid before sulfite,
    alum before acid.

    Own model: docs/science/formulas (common practice). Doubt: none.

    >>> spoils(["sodium sulfite", "metol"]), spoils(["metol", "sodium sulfite"])
    (True, False)
    """
    place = {_family(name): at for at, name in reversed(list(enumerate(substances)))}
    wrong = ((SULFITE, METOL), ("acetic acid", SULFITE), ("alum", "acetic acid"))
    return any(place[early] < place[late] for early, late in wrong if early in place and late in place)


def _family(name: str) -> str:
    """What a name is for these rules: every alum, every acetic acid alike."""
    return next((word for word in ("alum", "acetic acid") if word in name), name)


def _rank(name: str) -> int:
    """Where a substance usually stands; what is not known comes after the alkalis."""
    return next((rank for word, rank in _RANKS if word in name), 5)


def _how(name: str) -> StepCode:
    """Acid and strong alkali go in slowly, into plenty of water."""
    if "acetic acid" in name:
        return "acid-slowly"
    return "alkali-slowly" if name in _SPITTING else "dissolve"
