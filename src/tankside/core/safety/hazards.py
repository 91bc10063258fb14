"""Cautions for one substance at one strength, from its hazard codes."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from tankside.core.refusals import refuse
from tankside.core.safety.cautions import SHEET, Caution, CautionCode, How

_CODE = re.compile(r"\b(EUH\d{3}|H\d{3})")

MEANS: dict[str, CautionCode] = {
    "H226": "flammable", "H300": "poison", "H301": "poison", "H302": "harmful", "H311": "through-skin",
    "H312": "through-skin", "H314": "burns", "H315": "irritates", "H317": "skin-allergy",
    "H318": "glasses-developer", "H319": "irritates-eyes", "H331": "poison", "H332": "harmful",
    "H335": "airways", "H341": "long-harm", "H350": "long-harm", "H351": "long-harm", "H360": "unborn-child",
    "H373": "long-harm", "H400": "water-life", "H410": "water-life", "H411": "water-life",
    "H412": "water-life", "EUH031": "sulfur-dioxide", "EUH032": "never-with-acid",
}  # fmt: skip
"""What a hazard statement of the EU CLP Regulation asks of the hands; H290 (corrodes metals) asks nothing."""

OF_SUBSTANCE: dict[str, tuple[CautionCode, ...]] = {
    "metol": ("change-the-agent",),
    "pyrogallol": ("through-skin",),
    "catechol": ("through-skin",),
    "sodium sulfite": ("sulfite-and-asthma",),
    "sodium hydroxide": ("hydroxide-spits",),
    "potassium ferricyanide": ("own-gate",),
    "sodium selenite": ("own-gate",),
}
"""What the trade adds (common practice)."""

SAID_BY: dict[CautionCode, CautionCode] = {
    "skin-allergy": "gloves-developer",
    "burns": "acid-concentrate",
    "sulfite-and-asthma": "sulfur-dioxide",
}
"""What need not be said where the other is said already."""

GLACIAL_PERCENT = 90.0


@dataclass(frozen=True, slots=True)
class Hazard:
    """Hazard `codes` of a substance from a strength up to another (percent by weight), and their source."""

    substance: str
    codes: str
    from_percent: float = 0.0
    below_percent: float = 101.0
    how: How = "from memory"
    source: str = ""

    def holds_at(self, percent: float) -> bool:
        """Whether the row is for this strength."""
        return self.from_percent <= percent < self.below_percent


def cautions_at(hazards: Sequence[Hazard], *, percent: float = 100.0) -> tuple[Caution, ...]:
    """What to say of one substance at `percent` by weight (above 0 to 100; 100 as it comes from the jar).

    Each caution once, published before from memory; the maker's sheet last.
    Source: hazard rows as named on each. Doubt: rows from memory are marked so; the maker's sheet decides.

    >>> strong = Hazard("acetic acid", "H314 (Skin Corr. 1B)", 25, 90)
    >>> weak = Hazard("acetic acid", "not classified", 0, 10)
    >>> [[one.code for one in cautions_at((strong, weak), percent=p)] for p in (28.0, 2.0)]
    [['burns', 'makers-sheet'], ['makers-sheet']]
    """
    if not 0 < percent <= 100:
        raise refuse("percent-out-of-range", value=percent, kind="w/w")
    holding = [one for one in hazards if one.holds_at(percent)]
    found: dict[CautionCode, Caution] = {}
    for hazard in sorted(holding, key=lambda one: one.how != "published"):
        for code in _CODE.findall(hazard.codes):
            if code in MEANS:
                found.setdefault(MEANS[code], Caution(MEANS[code], hazard.how, hazard.source))
    for added in _of_the_trade(holding, percent):
        found.setdefault(added, Caution(added))
    return (*found.values(), SHEET)


def said_once(told: Sequence[Caution]) -> tuple[Caution, ...]:
    """The cautions of one bench, each once, the maker's sheet last; what one says another need not.

    Own model: docs/science/cautions. Doubt: none.

    >>> sheet, acid = Caution("makers-sheet"), Caution("acid-concentrate")
    >>> [one.code for one in said_once([acid, sheet, Caution("burns"), acid, sheet])]
    ['acid-concentrate', 'makers-sheet']
    """
    codes = {one.code for one in told}
    once: dict[CautionCode, Caution] = {}
    for one in told:
        if one.code != SHEET.code and SAID_BY.get(one.code) not in codes:
            once.setdefault(one.code, one)
    return (*once.values(), SHEET)


def _of_the_trade(holding: Sequence[Hazard], percent: float) -> tuple[CautionCode, ...]:
    """What practice adds to the codes of a substance."""
    names = dict.fromkeys(one.substance for one in holding)
    added = tuple(code for name in names for code in OF_SUBSTANCE.get(name, ()))
    if "acetic acid" in names and percent >= GLACIAL_PERCENT:
        return (*added, "glacial-freezes")
    return added
