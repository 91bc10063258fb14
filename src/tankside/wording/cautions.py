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
    "harmful": "Harmful if swallowed or breathed in as dust.",
    "poison": "Poisonous: not to be handled without its safety sheet, gloves, glasses and a fan.",
    "through-skin": "It goes through the skin: gloves, and wash off splashes at once.",
    "skin-allergy": "It can make skin allergic to it for good: gloves.",
    "irritates": "It irritates skin and eyes: gloves and glasses.",
    "irritates-eyes": "It irritates the eyes: glasses.",
    "burns": "It burns skin and eyes: gloves and glasses, and water within reach.",
    "flammable": "It can catch fire: no flame near it.",
    "long-harm": "It is suspected of lasting harm: ask the safety sheet, and keep dust and skin apart.",
    "unborn-child": "It may harm fertility and an unborn child: ask the safety sheet and a doctor.",
    "water-life": "It harms life in water: your local code says where it may go.",
    "airways": "Its dust or vapour irritates the airways: dust mask, no draught over the scale.",
    "never-with-acid": "Never let it meet strong acid: a very poisonous gas comes off.",
    "glacial-freezes": "Glacial acid freezes at 16.7 °C and can split its bottle: keep it warmer.",
    "hydroxide-spits": "Hydroxide slowly into cold water, never water onto it: it spits.",
    "change-the-agent": "Once skin has become allergic to metol it stays so: change to another agent.",
    "own-gate": "This belongs to a process that is not begun without its own sheet and preparations.",
    "poison-centre": "Write the number of your poison centre on every bottle.",
    "septic-tank": "With a septic tank nothing of this goes down the drain.",
    "nitrate-film": "Very old film may be nitrate, which burns fiercely: ask an archive before you store it.",
    "ammonia-and-bleach": "Never let ammonia or fixer meet household bleach.",
    "sulfite-and-asthma": "Sulfite can bring on severe asthma: fan on, and keep away if you are sensitive.",
    "silver-waste-can": (
        "Used fixer holds silver: into its own labelled can, for whoever takes it where you live."
    ),
    "silver-and-ammonia": "Never keep, heat or dry silver in ammonia or used fixer: it can explode.",
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
