"""Laws that hold whatever the numbers are: mass is kept, readings come back, refusals at the edges."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.refusals import Refused
from tankside.core.solutions.acetic import stock_from_glacial
from tankside.core.solutions.cost import Price, cost_of, shared_out
from tankside.core.solutions.dissolving import spoils, steps_for
from tankside.core.solutions.formulas import Constituent, Formula, recipe_for
from tankside.core.solutions.hydrates import Form, substituted_g
from tankside.core.solutions.molar_mass import atoms_in, molar_mass
from tankside.core.solutions.oxygen import dissolved_oxygen_mg_l, most_lost_g
from tankside.core.solutions.percent import KINDS, Percent, read_percent, strong_g_for, strong_ml_for
from tankside.core.solutions.replenishing import built_up_g_l, original_left
from tankside.core.solutions.reuse import ReuseRow, time_when_reused
from tankside.core.solutions.stop_bath import acid_left_share, acid_taken_mol_l, rolls_per_litre
from tankside.core.solutions.weighing import least_volume_ml, weighing_error_percent
from tankside.core.sources import OWN

FORMS = [
    Form("borax", "ten", "Na2B4O7 . 10H2O"),
    Form("borax", "five", "Na2B4O7 . 5H2O"),
    Form("borax", "dry", "Na2B4O7"),
]
TWO = Formula("two", "fixer", 750, (Constituent("salt", 10.0), Constituent("borax", 2.0, "g", FORMS[0])), OWN)


@given(mass_g=st.floats(0.01, 1000), a=st.sampled_from(FORMS), b=st.sampled_from(FORMS))
def test_substitution_there_and_back(mass_g: float, a: Form, b: Form) -> None:
    """The active part is kept, so the way back leads to the same grams."""
    there = substituted_g(mass_g, called_for=a, have=b)

    assert mass_g == pytest.approx(substituted_g(there, called_for=b, have=a))
    assert mass_g / a.g_per_mol_active == pytest.approx(there / b.g_per_mol_active)


@given(volume_ml=st.floats(50, 10_000))
def test_recipes_are_in_proportion(volume_ml: float) -> None:
    """Twice the volume is twice of everything."""
    one, double = (
        recipe_for(TWO, volume_ml=ml, have={"borax": FORMS[1]}) for ml in (volume_ml, 2 * volume_ml)
    )

    assert [2 * part.amount for part in one.parts] == pytest.approx([part.amount for part in double.parts])
    assert 2 * one.start_ml == pytest.approx(double.start_ml)


@given(value=st.floats(0.1, 100).map(lambda x: round(x, 6)), kind=st.sampled_from(KINDS))
def test_a_percentage_comes_back(value: float, kind: str) -> None:
    """Read as it is written."""
    percent = Percent(value, kind)  # type: ignore[arg-type]

    assert percent == read_percent(str(percent))


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("28 %", "percent-kind-not-said"),
        ("strong", "percent-unreadable"),
        ("120 % w/w", "percent-out-of-range"),
    ],
)
def test_a_percentage_that_says_too_little(text: str, code: str) -> None:
    """Percent of what is asked back."""
    with pytest.raises(Refused) as no:
        read_percent(text)

    assert code == no.value.refusal.code


@given(volume_ml=st.floats(10, 5000))
def test_acid_keeps_its_mass(volume_ml: float) -> None:
    """Acid in is acid out, and both weights make the whole."""
    made = stock_from_glacial(volume_ml)

    assert made.glacial_g * 0.998 == pytest.approx((made.glacial_g + made.water_g) * 0.28)


def test_kinds_of_percent_are_kept_apart() -> None:
    """By weight is weighed, by volume is measured, and neither is compared with the other."""
    heavy, wide = Percent(28, "w/w"), Percent(28, "v/v")
    asks = (
        lambda: strong_ml_for(100, strong=heavy, weak=Percent(1, "w/w")),
        lambda: strong_g_for(100, strong=wide, weak=Percent(1, "v/v")),
        lambda: strong_ml_for(100, strong=heavy, weak=wide),
        lambda: strong_ml_for(100, strong=wide, weak=Percent(50, "v/v")),
    )
    codes = []
    for ask in asks:
        with pytest.raises(Refused) as no:
            ask()
        codes.append(no.value.refusal.code)

    assert [
        "percent-by-weight-is-weighed",
        "percent-by-volume-is-measured",
        "percent-kinds-differ",
        "percent-too-weak",
    ] == codes


@given(minor=st.integers(0, 100_000), shares=st.lists(st.floats(0.1, 8), min_size=1, max_size=12))
def test_no_cent_is_lost(minor: int, shares: list[float]) -> None:
    """What is shared out adds up, and nobody pays a whole unit too much."""
    paid = shared_out(minor, shares)

    assert minor == sum(paid)
    for share, one in zip(shares, paid, strict=True):
        assert abs(one - minor * share / sum(shares)) < 1 + 1e-6


def test_cost_is_rounded_once() -> None:
    """Three thirds of a cent are one."""
    third = Price(1, 3.0)

    assert 1 == cost_of([(1.0, third)] * 3)
    assert 0 == cost_of([(1.0, third)])


@given(rolls=st.integers(1, 100), top_up_ml=st.floats(5, 500))
def test_what_builds_up_never_falls(rolls: int, top_up_ml: float) -> None:
    """More rolls, more by-product; and less of the first filling."""
    bath = {"bath_ml": 1000.0, "top_up_ml": top_up_ml}

    assert built_up_g_l(rolls, given_mg=62, **bath) <= built_up_g_l(rolls + 1, given_mg=62, **bath) + 1e-12
    assert original_left(rolls, **bath) >= original_left(rolls + 1, **bath)


@given(rolls=st.integers(0, 40), carried_ml=st.floats(1, 20))
def test_acid_never_grows(rolls: int, carried_ml: float) -> None:
    """Each roll leaves no more of it, and never less than none."""
    bath = {"volume_ml": 1000.0, "acid_mol_l": 0.155, "taken_mol_l": 0.8, "carried_ml": carried_ml}
    now, later = acid_left_share(rolls, **bath), acid_left_share(rolls + 1, **bath)

    assert 0 <= later <= now <= 1


def test_the_developer_alone_moves_a_stop_bath_fourfold() -> None:
    """Undiluted against 1+3, everything else alike."""
    full = acid_taken_mol_l(sulfite_g_l=100, borax_g_l=2)
    thin = acid_taken_mol_l(sulfite_g_l=25, borax_g_l=0.5)
    counts = [rolls_per_litre(acid_mol_l=0.155, taken_mol_l=one, carried_ml=10) for one in (full, thin)]

    assert 4 == pytest.approx(counts[1] / counts[0])


@given(cold=st.floats(0, 39), step=st.floats(0.1, 1))
def test_warm_water_holds_less_oxygen(cold: float, step: float) -> None:
    """Falling all the way."""
    assert dissolved_oxygen_mg_l(cold) > dissolved_oxygen_mg_l(cold + step)


def test_more_air_takes_more() -> None:
    """In proportion to volume and openings."""
    assert 3 * most_lost_g(air_ml=200, openings=1) == pytest.approx(most_lost_g(air_ml=100, openings=6))


def test_reuse_follows_its_table_or_is_not_offered() -> None:
    """Steps of the leaflet; past them, or without them, no number."""
    table = (ReuseRow(4), ReuseRow(8, times=1.15))
    ask = {"next_units": 1.0, "bath_ml": 1000.0}

    assert 600.0 == time_when_reused(600, used_units=3, table=table, **ask)
    assert 690.0 == pytest.approx(time_when_reused(600, used_units=4, table=table, **ask))
    for used, rows, code in ((8, table, "developer-past-its-table"), (0, (), "reuse-without-a-table")):
        with pytest.raises(Refused) as no:
            time_when_reused(600, used_units=used, table=rows, **ask)
        assert code == no.value.refusal.code


def test_an_order_that_spoils_is_put_right() -> None:
    """Sulfite before metol, alum before acid: sorted as they must be; any other order stays."""
    assert spoils(["potassium alum", "acetic acid 28%"])
    assert ["metol", "sodium sulfite"] == [
        one.substance for one in steps_for(["sodium sulfite", "metol"]) if one.code == "dissolve"
    ]
    printed = ["metol", "hydroquinone", "sodium sulfite", "borax"]
    assert printed == [one.substance for one in steps_for(printed) if one.code == "dissolve"]


def test_acid_goes_slowly_into_what_stands_there() -> None:
    """An acid hardening fixer in its printed order; a stop bath is not filled up."""
    fixer = ["sodium thiosulfate", "sodium sulfite", "acetic acid 28%", "boric acid", "potassium alum"]
    steps = steps_for(fixer)

    assert not spoils(fixer)
    assert "acid-slowly" == next(one.code for one in steps if one.substance == "acetic acid 28%")
    assert "fill-up" not in [one.code for one in steps_for(["acetic acid 28%"], filled_up=False)]
    assert "alkali-slowly" in [one.code for one in steps_for(["sodium hydroxide"])]


@pytest.mark.parametrize("formula", ["", "Na2SO3)", "(Na2SO3", "na", "Na2-SO3", "Na2SO3 . "])
def test_what_is_no_formula(formula: str) -> None:
    """Refused, never weighed as something else."""
    with pytest.raises(Refused) as no:
        atoms_in(formula)

    assert "formula-unreadable" == no.value.refusal.code


def test_an_element_without_weight() -> None:
    """Uranium toner is not weighed out here."""
    with pytest.raises(Refused) as no:
        molar_mass("UO2")

    assert ("element-not-weighed", "U") == (no.value.refusal.code, no.value.refusal.numbers["element"])


def test_a_scale_that_no_volume_makes_good() -> None:
    """A kitchen scale for tenths of a gram."""
    parts = recipe_for(TWO, volume_ml=600).parts
    with pytest.raises(Refused) as no:
        least_volume_ml(parts, volume_ml=600, mark=20)

    assert "scale-too-coarse" == no.value.refusal.code
    assert weighing_error_percent(1.2, mark=0.01) == pytest.approx(weighing_error_percent(1.2, mark=0.1) / 10)


def test_strangers_to_a_formula() -> None:
    """What it does not hold, what has no known form, what does something else, and too little of it."""
    asks = {
        "not-in-the-formula": lambda: recipe_for(TWO, volume_ml=600, have={"sugar": FORMS[0]}),
        "form-not-known": lambda: recipe_for(TWO, volume_ml=600, have={"salt": FORMS[0]}),
        "not-the-same-salt": lambda: recipe_for(
            TWO, volume_ml=600, have={"borax": Form("salt", "dry", "NaCl")}
        ),
        "recipe-volume-out-of-range": lambda: recipe_for(TWO, volume_ml=20),
    }
    for code, ask in asks.items():
        with pytest.raises(Refused) as no:
            ask()
        assert code == no.value.refusal.code
