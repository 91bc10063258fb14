"""What to say before a liquid is mixed or poured, and what holds wherever chemicals stand."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, assert_never

Handled = Literal["developer", "stop bath", "fixer", "washing aid", "wetting agent", "water"]
Moment = Literal["mix", "pour", "test", "discard"]
CautionCode = Literal[
    "label-first", "gloves-developer", "glasses-developer", "powder-dust", "sheet-and-doctor",
    "acid-concentrate", "acid-into-water", "sulfur-dioxide", "vent-acid-on-carbonate", "fixer-and-bleach",
    "fixer-and-alkali", "fixer-waste", "scald", "mains", "makers-sheet",
    "harmful", "poison", "through-skin", "skin-allergy", "irritates", "irritates-eyes", "burns", "flammable",
    "long-harm", "unborn-child", "water-life", "airways", "never-with-acid", "glacial-freezes",
    "hydroxide-spits", "change-the-agent", "own-gate", "poison-centre", "septic-tank", "nitrate-film",
    "ammonia-and-bleach", "sulfite-and-asthma", "silver-and-ammonia", "silver-waste-can",
]  # fmt: skip
How = Literal["published", "common practice", "from memory"]

SCALD_FROM_C = 50.0
"""Water from here on scalds (common practice)."""

THIOSULFATE = "safety page of ammonium thiosulfate, CAS 7783-18-8 (reactivity)"
SODIUM_THIOSULFATE = "NSW Department of Education, chemical sheet 1678: sodium thiosulfate"
CLP = "EU CLP Regulation 1272/2008, Annex VI"


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution: its code, how we come to it, and the source where there is one."""

    code: CautionCode
    how: How = "common practice"
    source: str = ""


LABEL = Caution("label-first")
SHEET = Caution("makers-sheet")
SCALD = Caution("scald")
MAINS = Caution("mains")

MIXING: dict[Handled, tuple[Caution, ...]] = {
    "developer": (
        Caution("gloves-developer", "from memory", f"{CLP}: metol, hydroquinone (H317)"),
        Caution("glasses-developer", "published", "NITE Japan, classification FY2007: hydroquinone (H318)"),
        Caution("powder-dust"),
        Caution("sheet-and-doctor"),
    ),
    "stop bath": (
        Caution("acid-concentrate", "from memory", f"{CLP}: acetic acid 10 to 90 %, citric acid"),
        Caution("acid-into-water"),
        Caution("sulfur-dioxide", "from memory", "EUH031 of sulfites and bisulfites"),
    ),
    "fixer": (
        Caution("fixer-and-bleach", "published", THIOSULFATE),
        Caution("fixer-and-alkali", "published", THIOSULFATE),
        Caution("sulfur-dioxide", "published", SODIUM_THIOSULFATE),
        Caution("fixer-waste"),
    ),
    "washing aid": (Caution("sulfur-dioxide", "from memory", "EUH031 of sulfites"),),
    "wetting agent": (),
    "water": (),
}
POURING: dict[Handled, tuple[Caution, ...]] = {"stop bath": (Caution("vent-acid-on-carbonate"),)}


SEPTIC = Caution("septic-tank")
DISCARDING: dict[Handled, tuple[Caution, ...]] = {
    "fixer": (
        Caution("silver-waste-can"),
        Caution("fixer-waste"),
        Caution("silver-and-ammonia"),
        Caution("fixer-and-bleach", "published", THIOSULFATE),
        SEPTIC,
    ),
}
TESTING: dict[Handled, tuple[Caution, ...]] = {"fixer": (Caution("fixer-waste"),)}


def cautions(handled: Handled, *, moment: Moment, hot_c: float | None = None) -> tuple[Caution, ...]:
    """What to say before a liquid is mixed, poured, tested or poured away; `hot_c` is the hottest water (C).

    Source: reference rows as named on each; rows from memory are marked so. Doubt: the maker's sheet decides.

    >>> [one.code for one in cautions("stop bath", moment="pour")]
    ['vent-acid-on-carbonate']
    """
    match moment:
        case "pour":
            return POURING.get(handled, ())
        case "test":
            return (*TESTING.get(handled, ()), SHEET)
        case "discard":
            return (*DISCARDING.get(handled, (SEPTIC,)), SHEET)
        case "mix":
            return _mixing(handled, hot_c)
        case _:
            assert_never(moment)


def _mixing(handled: Handled, hot_c: float | None) -> tuple[Caution, ...]:
    """What to say before a liquid is mixed."""
    scald = (SCALD,) if hot_c is not None and hot_c >= SCALD_FROM_C else ()
    return (LABEL, *scald, *MIXING[handled], SHEET)


STANDING: tuple[Caution, ...] = (
    Caution("poison-centre"),
    Caution("ammonia-and-bleach"),
    Caution("sulfite-and-asthma", "published", "M. T. Baker, University of Iowa, on sulfite"),
    Caution("silver-and-ammonia"),
    Caution("septic-tank"),
    Caution("nitrate-film"),
    MAINS,
    SHEET,
)
"""What holds at any time, for a page and a leaf at the wall; common practice unless a source stands by."""
