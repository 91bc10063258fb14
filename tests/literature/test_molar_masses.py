"""Molar masses and hydrates against two libraries (outside) and printed substitution factors (outside)."""

from __future__ import annotations

import re

import periodictable
import pytest
from literature.tables import rows_of
from molmass import Formula as LibraryFormula

from tankside.core.solutions.hydrates import Form, substituted_g
from tankside.core.solutions.molar_mass import atoms_in, molar_mass

ROWS = rows_of("hydrates.csv")
WITHIN = 2e-4
"""molmass takes isotope averages, the other libraries conventional weights: up to 97 ppm apart."""


def active_in(formula: str) -> int:
    """How many formula units of the salt one formula with its water holds: 2 in (K2CO3)2 . 3H2O."""
    found = re.fullmatch(r"\(.+\)(\d+)", formula.split(" . ", maxsplit=1)[0])
    return int(found[1]) if found and " . " in formula else 1


def form(row: dict[str, str]) -> Form:
    """The form of one row."""
    return Form(row["substance"], row["form"], row["formula"], active_in(row["formula"]))


def plain(formula: str) -> str:
    """A formula as one word, without the water's dot: both libraries read that alike."""
    salt, _, water = formula.partition(" . ")
    found = re.fullmatch(r"(\d+)H2O", water)
    return f"{salt}(H2O){found[1]}" if found else salt


@pytest.mark.checks(of=molar_mass)
@pytest.mark.parametrize("row", [pytest.param(row, id=f"{row['substance']}, {row['form']}") for row in ROWS])
def test_molar_mass_against_two_libraries(row: dict[str, str]) -> None:
    """molmass and periodictable weigh every form of the table alike, today as when it was made."""
    weighed = molar_mass(row["formula"])

    assert LibraryFormula(plain(row["formula"])).mass == pytest.approx(weighed, rel=WITHIN)
    assert periodictable.formula(plain(row["formula"])).mass == pytest.approx(weighed, rel=WITHIN)
    assert float(row["molar_mass_g_mol_molmass"]) == pytest.approx(weighed, rel=WITHIN)
    assert float(row["molar_mass_g_mol_periodictable"]) == pytest.approx(weighed, rel=WITHIN)


@pytest.mark.checks(of=atoms_in)
@pytest.mark.parametrize("formula", sorted({row["formula"] for row in ROWS}))
def test_atoms_against_a_library(formula: str) -> None:
    """Brackets, numbers and the water's dot are counted as periodictable counts them."""
    counted = {str(atom): many for atom, many in periodictable.formula(plain(formula)).atoms.items()}

    assert counted == dict(atoms_in(formula))


ANHYDROUS = {row["substance"]: form(row) for row in ROWS if row["form"] == "anhydrous"}
OF_WATER = [row for row in ROWS if row["g_per_g_anhydrous"] and row["substance"] in ANHYDROUS]


@pytest.mark.checks(of=substituted_g)
@pytest.mark.parametrize("row", [pytest.param(r, id=f"{r['substance']}, {r['form']}") for r in OF_WATER])
def test_hydrate_factors(row: dict[str, str]) -> None:
    """Grams for one gram of the anhydrous salt, and back, from the libraries' masses."""
    dry = ANHYDROUS[row["substance"]]

    assert float(row["g_per_g_anhydrous"]) == pytest.approx(
        substituted_g(1, called_for=dry, have=form(row)), rel=WITHIN
    )
    assert float(row["g_anhydrous_per_g"]) == pytest.approx(
        substituted_g(1, called_for=form(row), have=dry), rel=WITHIN
    )


def salt(works_as: str, formula: str, active: int = 1) -> Form:
    """A salt by what it does."""
    return Form(works_as, formula, formula, active)


PRINTED = {
    "borax, ten waters called for, have five": (0.76, "Na2B4O7 . 10H2O", "Na2B4O7 . 5H2O"),
    "potassium carbonate for sodium carbonate monohydrate": (1.12, "Na2CO3 . 1H2O", "K2CO3"),
    "and back": (0.90, "K2CO3", "Na2CO3 . 1H2O"),
    "thiosulfate crystals for dry": (1.57, "Na2S2O3", "Na2S2O3 . 5H2O"),
    "dry for crystals": (0.64, "Na2S2O3 . 5H2O", "Na2S2O3"),
    "potassium bromide for sodium bromide": (1.16, "NaBr", "KBr"),
    "sodium bromide for potassium bromide": (0.86, "KBr", "NaBr"),
    "sulfate crystals for dry": (2.27, "Na2SO4", "Na2SO4 . 10H2O"),
    "ascorbic acid for sodium ascorbate": (0.889, "NaC6H7O6", "C6H8O6"),
    "sulfite crystals for dry": (2.0, "Na2SO3", "Na2SO3 . 7H2O"),
    "carbonate monohydrate for dry": (1.2, "Na2CO3", "Na2CO3 . 1H2O"),
    "carbonate decahydrate for dry": (2.7, "Na2CO3", "Na2CO3 . 10H2O"),
}


@pytest.mark.checks(of=substituted_g)
@pytest.mark.parametrize(("factor", "called_for", "have"), PRINTED.values(), ids=PRINTED)
def test_printed_factors(factor: float, called_for: str, have: str) -> None:
    """Published: Anchell (2008) pp. 329-330 and Langford, appendix D, to one of the last printed digit."""
    digits = len(str(factor).split(".")[1])
    found = substituted_g(1, called_for=salt("it", called_for), have=salt("it", have))

    assert factor == pytest.approx(found, abs=1.001 * 10**-digits)


@pytest.mark.checks(of=substituted_g)
def test_two_pairs_are_printed_the_wrong_way_round() -> None:
    """Anchell p. 329-330 prints 1.40 for sodium hydroxide in place of potassium hydroxide, and 0.855 for
    potassium in place of sodium metabisulfite; the molar masses say the inverse of both."""
    hydroxide = substituted_g(1, called_for=salt("alkali", "KOH"), have=salt("alkali", "NaOH"))
    sulfite = substituted_g(1, called_for=salt("acid", "Na2S2O5", 2), have=salt("acid", "K2S2O5", 2))

    assert 1 / 1.40 == pytest.approx(hydroxide, rel=0.003)
    assert 1 / 0.855 == pytest.approx(sulfite, rel=0.003)


@pytest.mark.checks(of=substituted_g)
def test_one_printed_factor_was_made_from_a_rounded_one() -> None:
    """Anchell p. 329 prints 1.32 for borax with ten waters in place of five: 1 over its own 0.76, and 0.8 %
    above what the molar masses say."""
    found = substituted_g(
        1, called_for=salt("alkali", "Na2B4O7 . 5H2O"), have=salt("alkali", "Na2B4O7 . 10H2O")
    )

    assert 1.32 == pytest.approx(1 / 0.76, abs=0.005)
    assert 1.32 == pytest.approx(found, rel=0.009)
