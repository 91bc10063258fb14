"""`--why` of every calculation: the working in the words of its page, and the whole of it as JSON."""

from __future__ import annotations

import json
from typing import Any

import pytest
from click.testing import CliRunner, Result

from tankside.cli.command import command

STRIP = tuple(word for i in range(21) for word in ("--pair", f"{0.15 * i:.2f}", f"{0.3 + 0.09 * i:.2f}"))
CALCULATIONS = {
    "temper": ("temper", "--ml", "500", "--to", "20.8", "--hot", "52", "--cold", "14"),
    "time": ("time", "--time", "9:30", "--at", "20", "--tank-ml", "500", "--reads", "21"),
    "wash": ("wash", "--fill-ml", "300"),
    "capacity": ("capacity", "--ml", "1000", "--rolls", "15", "--fresh", "0:45", "--clears", "0:50"),
    "mix": ("mix", "D-76", "--ml", "600"),
    "curve": ("curve", *STRIP, "--base-fog", "0.3"),
}
EVERY = pytest.mark.parametrize("noun", CALCULATIONS)


def run(noun: str, *more: str) -> Result:
    """What one calculation answers."""
    return CliRunner().invoke(command, [*CALCULATIONS[noun], *more])


def whys(noun: str) -> list[dict[str, Any]]:
    """Its workings as JSON."""
    told: list[dict[str, Any]] = json.loads(run(noun, "--why", "--json").stdout)["why"]
    return told


@EVERY
def test_the_answer_stands_first_and_its_working_after(noun: str) -> None:
    """Nothing of the answer changes; the working says sources, inputs and formula."""
    plain, asked = run(noun).stdout, run(noun, "--why").stdout

    assert asked.startswith(plain)
    for words in ("\nWhy ", "Worked out from:", "Formula:", "Sources:", "docs/science/"):
        assert words in asked.removeprefix(plain)
    assert "\nWhy " not in plain


@EVERY
def test_json_carries_the_whole_working(noun: str) -> None:
    """Each has an answer in its interval with a source, inputs with origin, a formula and references."""
    for one in whys(noun):
        low, high = one["answer"]["interval"]
        assert low <= one["answer"]["value"] <= high
        assert one["answer"]["source"]
        assert all(each["source"] and each["interval"] for each in one["sources"])
        assert all(each["source"] for each in one["inputs"])
        assert one["formula"]
        assert one["references"]
        assert one["says"].endswith(".")
    assert "why" not in json.loads(run(noun, "--json").stdout)


def test_two_sources_of_a_wash_stay_two() -> None:
    """15 and 60 s; the plot has no middle, and 'well below' is null."""
    (wash,) = whys("wash")

    assert "two sources" == wash["interval_is"]
    assert [15, 60] == [one["value"] for one in wash["sources"][:2]]
    assert wash["plot"]["middle"] is None
    assert wash["plot"]["low"][-1] is None
    assert all(one is None or one >= 0.002 for one in wash["plot"]["low"] + wash["plot"]["high"])


def test_a_time_tells_its_contrast_too() -> None:
    """9:30 at 20 C makes the usual 0.56, and the next strip is named in both."""
    time, contrast = whys("time")

    assert ("time", "contrast") == (time["about"], contrast["about"])
    assert pytest.approx(0.56, abs=0.015) == contrast["answer"]["value"]
    assert any("step strip developed for" in one for one in time["narrows"])


def test_hot_and_cold_water_have_an_interval() -> None:
    """What is measured out, at its mark, with what the readings leave of doubt."""
    told = json.loads(run("temper", "--json").stdout)

    for water in ("hot_water", "cold_water"):
        low, high = told[water]["interval"]
        assert low < told[water]["value"] < high


def test_the_part_that_the_scale_knows_least() -> None:
    """1.2 g of metol and of borax on a scale of 0.1 g: 4 %, as docs/science/formulas works out."""
    assert "Why 600 mL of D-76?" in run("mix", "--why").stdout
    assert "Metol: 2.0 g/L as published, ±4 %." in run("mix", "--why").stdout


def test_a_strip_too_short_for_its_index_is_refused() -> None:
    """What cannot be told has no working; exit code 2."""
    short = [word for i in range(6) for word in ("--pair", f"{0.15 * i:.2f}", f"{0.3 + 0.01 * i:.2f}")]
    told = CliRunner().invoke(command, ["curve", *short, "--base-fog", "0.3", "--why"])

    assert 2 == told.exit_code


def test_works_are_named_by_title_number_and_date() -> None:
    """A key means nothing to a reader: the manual behind a wash is named as a library would find it."""
    told = run("wash", "--why").stdout
    assert "Photography (Basic), NAVEDTRA 14209" in told
    assert "navedtra-14209" not in told.partition("Sources:")[2]
