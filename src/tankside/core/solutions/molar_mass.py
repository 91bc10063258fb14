"""Molar masses from formulas as chemists write them: 'Na2SO3 . 7H2O'."""

from __future__ import annotations

import re
from collections import Counter

from tankside.core.refusals import refuse

ATOMIC_WEIGHTS = {
    "H": 1.008, "B": 10.81, "C": 12.011, "N": 14.007, "O": 15.999, "Na": 22.98977, "Mg": 24.305,
    "Al": 26.98154, "P": 30.97376, "S": 32.06, "Cl": 35.45, "K": 39.0983, "Cr": 51.9961, "Br": 79.904,
    "Ag": 107.8682, "I": 126.90447,
}  # fmt: skip
"""g/mol of the elements that darkroom chemicals are made of.

Source: IUPAC conventional atomic weights (quoted from memory; the tests hold them against two libraries).
"""

_PIECE = re.compile(r"([A-Z][a-z]?)(\d*)|(\()|(\))(\d*)")
_WITH_NUMBER = re.compile(r"(\d*)(.+)")


def atoms_in(formula: str) -> Counter[str]:
    """How many atoms of each element `formula` holds; '.' joins water of crystals, brackets may nest.

    Source: notation of chemical formulas (definition). Doubt: none.

    >>> sorted(atoms_in("(K2CO3)2 . 3H2O").items())
    [('C', 2), ('H', 6), ('K', 4), ('O', 9)]
    """
    total: Counter[str] = Counter()
    for part in formula.replace(" ", "").split("."):
        found = _WITH_NUMBER.fullmatch(part)
        if found is None:
            raise refuse("formula-unreadable", typed=formula, ways_on=("type-again",))
        for element, many in _atoms_of_part(found[2], formula).items():
            total[element] += many * int(found[1] or 1)
    return total


def molar_mass(formula: str) -> float:
    """Mass of one mole of `formula` in g/mol.

    Source: sum of IUPAC conventional atomic weights, `ATOMIC_WEIGHTS`.
    Doubt: under 0.02 % (natural sulfur lies between 32.059 and 32.076).

    >>> round(molar_mass("Na2S2O3 . 5H2O"), 2)
    248.17
    """
    atoms = atoms_in(formula)
    unknown = sorted(set(atoms) - set(ATOMIC_WEIGHTS))
    if unknown:
        raise refuse("element-not-weighed", typed=formula, element=unknown[0])
    return sum(ATOMIC_WEIGHTS[element] * many for element, many in atoms.items())


def _atoms_of_part(part: str, formula: str) -> Counter[str]:
    """Atoms of one part without a dot; brackets open a count of their own."""
    open_counts: list[Counter[str]] = [Counter()]
    at = 0
    while at < len(part):
        found = _PIECE.match(part, at)
        if found is None or (found[4] and len(open_counts) == 1):
            raise refuse("formula-unreadable", typed=formula, ways_on=("type-again",))
        at = found.end()
        if found[1]:
            open_counts[-1][found[1]] += int(found[2] or 1)
        elif found[3]:
            open_counts.append(Counter())
        else:
            closed = open_counts.pop()
            for element, many in closed.items():
                open_counts[-1][element] += many * int(found[5] or 1)
    if len(open_counts) > 1:
        raise refuse("formula-unreadable", typed=formula, ways_on=("type-again",))
    return open_counts[0]
