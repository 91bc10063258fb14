"""Every value of the shipped tables equals its row of the reference tables and carries that row's source."""

from __future__ import annotations

import pytest
from literature.tables import rows_of

from tankside.catalogue.bibliography import bibliography
from tankside.catalogue.capacity import printed, printed_of
from tankside.catalogue.formulas import formula, formulas
from tankside.catalogue.rows import table
from tankside.catalogue.substances import form_of, substance, substances
from tankside.core.refusals import Refused

HOW = {"seen": "published", "memory": "from memory", "derived": "own"}
FORMULA_ROWS = rows_of("formulas.csv")
HYDRATES = {(row["substance"], row["form"]): row for row in rows_of("hydrates.csv")}
HAZARDS = {row["substance"]: row for row in rows_of("hazards.csv")}


@pytest.mark.parametrize("name", list(table("formulas")))
def test_a_formula_equals_its_rows(name: str) -> None:
    """Substance by substance in their order, form, amount, unit, start water, source, and how it came."""
    told = table("formulas")[name]
    rows = [row for row in FORMULA_ROWS if row["formula"] == told["source_row"]]
    parts = [row for row in rows if row["component"] != "water start"]
    start = [row["grams_or_ml_per_litre"] for row in rows if row["component"] == "water start"]

    assert [(row["component"], float(row["grams_or_ml_per_litre"])) for row in parts] == [
        (part["substance"], part["per_litre"]) for part in told["parts"]
    ]
    assert [row["hydrate"] for row in parts] == [
        "mL" if part["unit"] == "mL" else part["form"] for part in told["parts"]
    ]
    assert [one for one in start if "total" not in one] == [str(told[key]) for key in told if key == "start"]
    assert {(row["source"], HOW[row["seen"]]) for row in rows} == {(told["source"], told["how"])}
    assert told["source_key"] in bibliography()


@pytest.mark.parametrize("name", list(formulas()))
def test_a_loaded_formula_is_the_table_of_the_file(name: str) -> None:
    """Amounts as they stand, provenance with its key."""
    loaded, told = formulas()[name], table("formulas")[name]

    assert [part["per_litre"] for part in told["parts"]] == [one.per_litre for one in loaded.constituents]
    assert (told["how"], told["source_key"], told["source"]) == (
        loaded.provenance.how, loaded.provenance.key, loaded.provenance.at,
    )  # fmt: skip


def test_what_has_no_hazard_row_is_in_no_formula() -> None:
    """Thirteen formulas of the reference table are left out, all for that but one that is cut off."""
    names = {alias for one in substances().values() for alias in (one.name, *one.aliases)}
    by_formula: dict[str, set[str]] = {}
    for row in FORMULA_ROWS:
        by_formula.setdefault(row["formula"], set()).add(row["component"])
    complete = {name for name, parts in by_formula.items() if parts - {"water start"} <= names}

    assert {told["source_row"] for told in table("formulas").values()} == complete - {"D-72 (part)"}
    assert all(one.hazards for one in substances().values())


def test_capacity_rows_equal_theirs() -> None:
    """All seventy, in their order."""
    rows = rows_of("capacity.csv")

    assert [
        (row["item"], row["solution"], float(row["value"]), row["unit"], row["condition"],
         HOW[row["seen"]], row["source"])
        for row in rows
    ] == [
        (one.item, one.solution, one.value, one.unit, one.condition,
         one.provenance.how, one.provenance.at)
        for one in printed()
    ]  # fmt: skip
    assert {one.provenance.key for one in printed() if one.provenance.how != "own"} <= set(bibliography())


@pytest.mark.parametrize("name", list(table("substances")))
def test_forms_and_hazards_equal_their_rows(name: str) -> None:
    """CAS number and formula of each form; CAS, codes, source and 'seen' of each hazard."""
    told = table("substances")[name]
    for row in told.get("forms", ()):
        expected = HYDRATES[row["row"], row["name"]]
        assert (expected["cas"], expected["formula"]) == (row["cas"], row["formula"])
    for row in told["hazards"]:
        expected = HAZARDS[row["row"]]
        assert (expected["cas"], expected["ghs_h_codes"], expected["source"], expected["seen"]) == (
            row["cas"], row["codes"], row["source"], row["seen"],
        )  # fmt: skip


def test_names_that_differ_between_tables_meet() -> None:
    """The octahydrate of formulas is the tetrahydrate of the table of salts, '8-mol'."""
    assert form_of("sodium metaborate", "octahydrate") is form_of("sodium metaborate", "tetrahydrate (8-mol)")
    assert substance("acetic acid 28%") is substance("acetic acid")
    assert formula("d-76") is formulas()["D-76"]
    assert [1.0] == [one.value for one in printed_of("life", "D-76 tank")]


def test_what_is_not_there_is_refused() -> None:
    """Each with its own sentence."""
    codes = []
    for ask in (
        lambda: formula("D-0"),
        lambda: substance("moonshine"),
        lambda: form_of("borax", "octahydrate"),
    ):
        with pytest.raises(Refused) as no:
            ask()
        codes.append(no.value.refusal.code)

    assert ["formula-unknown", "substance-unknown", "form-unknown"] == codes
