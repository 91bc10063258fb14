"""Cautions by substance and strength."""

from __future__ import annotations

import re
from typing import get_args

import pytest
from literature.tables import rows_of

from tankside.catalogue.substances import substance, substances
from tankside.core.refusals import Refused
from tankside.core.safety.cautions import STANDING, CautionCode
from tankside.core.safety.hazards import MEANS, cautions_at
from tankside.wording.cautions import SENTENCES, caution_origin


def codes(name: str, percent: float = 100.0) -> list[str]:
    """The codes of the cautions of one substance."""
    return [one.code for one in cautions_at(substance(name).hazards, percent=percent)]


@pytest.mark.parametrize(
    ("percent", "expected"),
    [
        (99.8, ["flammable", "burns", "glacial-freezes", "makers-sheet"]),
        (28.0, ["burns", "makers-sheet"]),
        (15.0, ["irritates", "irritates-eyes", "makers-sheet"]),
        (1.5, ["makers-sheet"]),
    ],
)
def test_acetic_acid_by_strength(percent: float, expected: list[str]) -> None:
    """Glacial, stock, strong and working stop bath."""
    assert expected == codes("acetic acid", percent)


@pytest.mark.parametrize(("percent", "held"), [(0.2, False), (0.3, True)])
def test_borates_from_three_tenths_of_a_percent(percent: float, held: bool) -> None:
    """Published: 0.3 % since December 2022; 2 g/L of borax lies below."""
    assert held == ("unborn-child" in codes("borax", percent))


def test_the_trade_adds_its_own() -> None:
    """Metol's allergy lasts; hydroxide spits; toners and bleaches have their own gate."""
    assert {"skin-allergy", "change-the-agent"} <= set(codes("metol"))
    assert "hydroxide-spits" in codes("sodium hydroxide")
    assert "own-gate" in codes("sodium selenite")


def test_every_code_of_the_table_is_understood() -> None:
    """But H290, which asks nothing of the hands, and H280 of a gas in a bottle."""
    told = {
        code for row in rows_of("hazards.csv") for code in re.findall(r"EUH\d{3}|H\d{3}", row["ghs_h_codes"])
    }

    assert {"H290", "H280"} == told - set(MEANS)


def test_rows_from_memory_say_so() -> None:
    """And a published one names its source."""
    from_memory = cautions_at(substance("hydroquinone").hazards)[0]
    published = next(one for one in cautions_at(substance("boric acid").hazards) if one.how == "published")

    assert caution_origin(from_memory).endswith("check the sheet)")
    assert "CLP" in published.source


def test_every_caution_has_its_words() -> None:
    """Those at any time too."""
    assert set(get_args(CautionCode)) == set(SENTENCES)
    assert {one.code for one in STANDING} <= set(SENTENCES)
    assert all(cautions_at(one.hazards)[-1].code == "makers-sheet" for one in substances().values())


def test_no_strength_at_all_is_refused() -> None:
    """Nor more than all."""
    with pytest.raises(Refused):
        cautions_at(substance("borax").hazards, percent=0.0)
