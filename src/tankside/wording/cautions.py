"""Cautions as they stand at the liquid they belong to."""

from __future__ import annotations

from tankside.core.safety import Caution, CautionCode

SENTENCES: dict[CautionCode, str] = {
    "label-first": "Label the bottle before you fill it; never one that held a drink.",
    "gloves-developer": "Gloves: developer can make skin allergic to it for good.",
    "glasses-developer": "Glasses: developer in the eye does harm. Rinse with water at once.",
    "powder-dust": "Powder: dust mask on, fan off, wipe up wet.",
    "sheet-and-doctor": "Pregnant or unwell: ask the safety sheet and a doctor before mixing developer.",
    "acid-concentrate": "Concentrated acid burns: gloves and glasses.",
    "acid-into-water": "Water first, then the acid.",
    "sulfur-dioxide": "It can give off sulfur dioxide: fan on; with asthma, keep away from the open jug.",
    "vent-acid-on-carbonate": (
        "Stop bath on a carbonate developer makes gas: open the lid after the first inversion, glasses on."
    ),
    "fixer-and-bleach": "Never let fixer meet household bleach.",
    "fixer-and-alkali": "Keep fixer from strong alkali and strong acid.",
    "fixer-waste": "Never heat or dry used fixer. Where it may go is said by your local code.",
    "scald": "Water this hot scalds.",
    "mains": "Kettle, charger and dryer away from the sink, on a residual-current device.",
    "makers-sheet": "The maker's safety sheet goes before all of this.",
}
FROM_MEMORY = "from memory, check the sheet"


def caution_sentence(caution: Caution) -> str:
    """One caution in one or two short sentences.

    >>> caution_sentence(Caution("acid-into-water"))
    'Water first, then the acid.'
    """
    return SENTENCES[caution.code]


def caution_origin(caution: Caution) -> str:
    """Where a caution comes from, for those who ask.

    >>> caution_origin(Caution("scald"))
    'common practice'
    """
    if caution.how == "from memory":
        return f"{caution.source} ({FROM_MEMORY})"
    return caution.source or caution.how
