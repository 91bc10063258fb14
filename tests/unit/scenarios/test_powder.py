"""Scenario S2: a formula for 600 mL with the other borax, a coarse scale, and part of a packet."""

from __future__ import annotations

import pytest

from tankside.catalogue.formulas import formula
from tankside.catalogue.substances import form_of
from tankside.core.refusals import Refused
from tankside.core.solutions.dissolving import steps_for
from tankside.core.solutions.formulas import Recipe, recipe_for
from tankside.core.solutions.weighing import (
    check_packet,
    least_volume_ml,
    shown_step,
    weighing_error_percent,
)
from tankside.wording.refusals import say


def made(volume_ml: float = 600.0, *, borax: str | None = "pentahydrate") -> Recipe:
    """The metol-hydroquinone borax formula with the borax that one has."""
    have = {"borax": form_of("borax", borax)} if borax else {}
    return recipe_for(formula("D-76"), volume_ml=volume_ml, have=have)


def amounts(recipe: Recipe) -> dict[str, float]:
    """Grams by substance, to 0.01."""
    return {part.substance: round(part.amount, 2) for part in recipe.parts}


def test_six_hundred_millilitres() -> None:
    """Start with 450 mL; metol 1.2 g, sulfite 60, hydroquinone 3, borax 0.92."""
    recipe = made()

    assert 450.0 == recipe.start_ml
    assert {"metol": 1.2, "sodium sulfite": 60.0, "hydroquinone": 3.0, "borax": 0.92} == amounts(recipe)
    assert ["borax"] == [part.substance for part in recipe.parts if part.substituted]


def test_the_borax_called_for_is_weighed_as_printed() -> None:
    """With the decahydrate it is 1.2 g."""
    assert 1.2 == amounts(made(borax=None))["borax"]


def test_a_tenth_of_a_gram_is_too_coarse() -> None:
    """+-0.05 g is 4 % of the metol and 5 % of the borax: mix 1 L."""
    parts = {part.substance: part for part in made().parts}

    assert [4, 5] == [
        round(weighing_error_percent(parts[one].amount, mark=0.1)) for one in ("metol", "borax")
    ]
    assert 1000.0 == least_volume_ml(list(parts.values()), volume_ml=600, mark=0.1)


def test_a_finer_scale_or_the_other_borax_will_do() -> None:
    """With 0.01 g nothing is off; the decahydrate is just heavy enough; a litre is."""
    assert least_volume_ml(made().parts, volume_ml=600, mark=0.01) is None
    assert least_volume_ml(made(borax=None).parts, volume_ml=600, mark=0.1) is None
    assert least_volume_ml(made(1000).parts, volume_ml=1000, mark=0.1) is None
    assert 0.01 == shown_step(0.1)


def test_metol_goes_first_after_a_pinch_of_sulfite() -> None:
    """The order of the formula, with the pinch before."""
    steps = steps_for([part.substance for part in made().parts])

    assert ["water-first", "pinch-of-sulfite", *["dissolve"] * 4, "fill-up"] == [one.code for one in steps]
    assert ["metol", "sodium sulfite"] == [one.substance for one in steps[2:4]]


def test_part_of_a_packet() -> None:
    """A 1 L packet for 600 mL: no, mix it whole."""
    with pytest.raises(Refused) as no:
        check_packet(packet_ml=1000, wanted_ml=600)

    assert "packet-is-mixed-whole" == no.value.refusal.code
    assert say(no.value.refusal).startswith("A packet for 1000 mL cannot make 600 mL")
    assert "mix-the-packet-whole" in no.value.refusal.ways_on


def test_a_whole_packet() -> None:
    """A litre of it goes."""
    check_packet(packet_ml=1000, wanted_ml=1000)
