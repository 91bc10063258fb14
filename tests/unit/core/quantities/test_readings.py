"""Densities as they are typed or pasted: lists, decimal commas, tables, and what is none of them."""

from __future__ import annotations

import pytest

from tankside.core.quantities.readings import read_readings, read_table
from tankside.core.refusals import Refused


@pytest.mark.parametrize(
    "text",
    ["0.25 0.31 1.20", "0,25 0,31 1,20", "0.25, 0.31, 1.20", "0.25;0.31;1.20", "0,25; 0,31; 1,20",
     "0.25\n0.31\n\n1.20", "0.25,0.31,1.20", "# invented\n0.25 0.31\n1.20", "0,25, 0,31, 1,20"],
)  # fmt: skip
def test_a_list_in_any_hand(text: str) -> None:
    """Points or commas, apart by spaces, lines, commas or semicolons: the same three densities."""
    assert (0.25, 0.31, 1.20) == read_readings(text).densities


def test_a_step_left_out_keeps_its_place() -> None:
    """A dash of any kind stands for it."""
    assert (0.25, None, 0.4, None) == read_readings("0.25 - 0.4 −").densities


@pytest.mark.parametrize(
    "table",
    [
        "log_h,density\n-3,0.25\n-1.5,0.9",
        "density;log_h\n0,25;-3\n0,9;-1,5",
        "log_h\tdensity\n-3\t0.25\n-1.5\t0.9",
    ],
)
def test_a_table_brings_its_exposures(table: str) -> None:
    """Whatever the order of its columns and what stands between them."""
    told = read_readings(table)

    assert ((-3.0, -1.5), (0.25, 0.9)) == (told.log_h, told.densities)


@pytest.mark.parametrize(
    ("text", "code", "numbers"),
    [
        ("0.25 0..3", "density-unreadable", {"number": 2, "typed": "0..3"}),
        ("0.25 inf", "no-readings-in-file", {"typed": "0.25 inf"}),
        ("step,reading\n1,0.2", "no-readings-in-file", {"typed": "reading, step"}),
        ("step,density\n1,0.2\n2,", "reading-unreadable", {"row": 2}),
        (" ".join(["0.2"] * 401), "too-many-readings", {"count": 401, "most": 400}),
    ],
)
def test_what_is_no_reading(text: str, code: str, numbers: dict[str, object]) -> None:
    """It says which, and what was typed."""
    with pytest.raises(Refused) as caught:
        read_readings(text)

    assert (code, numbers) == (caught.value.refusal.code, dict(caught.value.refusal.numbers))


def test_a_table_is_asked_for_by_its_first_line() -> None:
    """A list alone is no table."""
    with pytest.raises(Refused) as caught:
        read_table("0.25 0.31")

    assert "no-readings-in-file" == caught.value.refusal.code
