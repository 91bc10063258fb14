"""`tankside wash`, `capacity` and `mix`: as a person reads them and as a script does."""

from __future__ import annotations

import json
from typing import Any

import pytest
from click.testing import CliRunner, Result

from tankside.cli.command import command


def run(*words: str) -> Result:
    """What the command answers."""
    return CliRunner().invoke(command, list(words))


def as_json(*words: str) -> Any:
    """The same for a script."""
    return json.loads(run(*words, "--json").stdout)


def test_a_wash_is_planned() -> None:
    """Fills, the question the other way round, what is left, and that it is a plan."""
    told = run("wash", "--fill-ml", "300").stdout.splitlines()

    assert told[0].startswith("3 fills of 300 mL: ")
    assert "Enough if half leaves in" in told[1]
    assert told[2].endswith("limit 0.014 g/m².")
    assert "A plan, not a test: a residual test settles it." == told[-1]


def test_given_fills_are_asked_the_other_way_round() -> None:
    """Three of three minutes: 61 s; sources say 15 and 60."""
    told = as_json("wash", "--fill-ml", "300", *["--soak", "3:00"] * 3)

    assert 61 == told["enough_if_half_leaves_in"]["value"]
    assert ([15, 60], True) == (told["sources_say_s"], told["confirmed_if_slow"])


def test_what_is_not_confirmed_has_a_way_on() -> None:
    """One more soak costs one fill; nobody fails."""
    told = run("wash", "--fill-ml", "300", *["--soak", "1:00"] * 5).stdout

    assert "The pessimistic model does not confirm it; one more soak of" in told
    assert "fail" not in told


@pytest.mark.parametrize("soaks", [5, 12, 40])
def test_no_residual_under_the_floor_in_json(soaks: int) -> None:
    """However long one washes it is 'well below'."""
    told = as_json("wash", "--fill-ml", "500", *["--soak", "10:00"] * soaks)

    assert "well below" == told["left_if_slow"] == told["left_if_quick"]


@pytest.mark.parametrize(
    ("more", "words"),
    [(["--fixer-spent"], "No wash can be told"), (["--water-at", "9 C"], "washes too badly")],
)
def test_no_wash_where_none_is_honest(more: list[str], words: str) -> None:
    """Refused with exit code 2."""
    told = run("wash", "--fill-ml", "300", *more)

    assert (2, True) == (told.exit_code, words in told.stderr)


def test_cold_water_says_what_it_makes_of_the_slow_end() -> None:
    """In Fahrenheit too."""
    told = run("wash", "--fill-ml", "300", "--water-at", "50", "--degrees", "F").stdout

    assert "sources say 15 and 60, which this cold water makes 120." in told


def test_a_fixer_after_a_season() -> None:
    """S6 by the terminal: 15 units of a litre; 1.2 times fresh at its temperature; fix 2:30 or 3:45."""
    told = run(
        "capacity", "--ml", "1000", "--rolls", "9", "--sheets", "6", "--tabular", "3",
        "--fresh", "0:45", "--clears", "1:15", "--clears-at", "15",
    )  # fmt: skip

    assert [
        "1000 mL have taken 15 rolls.",
        "Left: 5 to 10 by two sources. Offered: 5 ordinary or 3 tabular.",
        "The test piece took 1.2 times its fresh time: good. Fix 2:30; tabular or unknown film 3:45.",
    ] == told.stdout.splitlines()


def test_a_spent_test_piece_goes_before_the_count() -> None:
    """92 s against 45 s: discard, and no fixing time."""
    told = as_json("capacity", "--ml", "1000", "--rolls", "9", "--fresh", "0:45", "--clears", "1:32")

    assert ("discard", False) == (told["test_piece"]["verdict"], "fix" in told)
    assert {"ordinary": 11, "tabular": 7} == told["offered"]


def test_a_thinner_fixer_is_counted_by_its_concentrate() -> None:
    """A litre of 1+9 takes ten rolls by the rule planned on; '1:9' is asked back."""
    assert 10 == as_json("capacity", "--ml", "1000", "--parts", "1+9")["left"]["planned"]["value"]
    assert 2 == run("capacity", "--ml", "1000", "--parts", "1:9").exit_code


def test_half_a_test_piece_is_none() -> None:
    """Both times are needed."""
    assert 2 == run("capacity", "--ml", "1000", "--fresh", "0:45").exit_code


def test_a_formula_for_six_hundred_millilitres() -> None:
    """S2 by the terminal."""
    told = run("mix", "D-76", "--ml", "600", "--have", "borax=pentahydrate").stdout.splitlines()

    assert [
        "water to start with        450 mL",
        "metol                       1.2 g  ±4 %",
        "sodium sulfite, anhydrous    60 g",
        "hydroquinone                  3 g  ±2 %",
        "borax, pentahydrate        0.92 g  ±5 %",
    ] == told[:5]
    assert "2. A pinch of the sulfite first: it keeps the air from the metol." in told
    assert "Your scale is too coarse for this little: mix 1000 mL." in told
    assert "The maker's safety sheet goes before all of this." == told[-2]


def test_a_formula_as_json() -> None:
    """Every amount with its unit and source, cautions with theirs, no digit that the scale cannot tell."""
    told = as_json("mix", "d-76", "--ml", "600", "--have", "borax=pentahydrate")

    assert [1.2, 60.0, 3.0, 0.92] == [part["amount"]["value"] for part in told["parts"]]
    assert ("published", 1000) == (told["how"], told["mix_at_least"]["value"])
    assert {"code", "how", "source"} == set(told["cautions"][0])
    codes = [one["code"] for one in told["cautions"]]
    assert len(codes) == len(set(codes))
    assert "makers-sheet" == codes[-1]


def test_a_formula_from_memory_says_so() -> None:
    """Before its source; a stop bath is not filled up."""
    told = run("mix", "SB-1", "--ml", "500").stdout

    assert "From memory, check before you use it" in told
    assert "Fill up" not in told


def test_the_list_of_formulas() -> None:
    """Each with its kind and how it came."""
    told = as_json("mix")["formulas"]

    assert {"name": "D-23", "kind": "developer", "how": "published"} in told
    assert len(told) == len(run("mix").stdout.splitlines())


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["D-76", "--ml", "600", "--packet-ml", "1000"], "Mix the packet whole"),
        (["D-0"], "There is no formula D-0"),
        (["D-76", "--have", "borax"], "write SUBSTANCE=FORM"),
        (["D-76", "--have", "borax=octahydrate"], "There is no borax as octahydrate"),
        (["D-76", "--have", "citric acid=anhydrous"], "D-76 holds no citric acid"),
        (["D-76", "--ml", "10"], "cannot be worked out"),
    ],
)
def test_what_cannot_be_mixed(words: list[str], told: str) -> None:
    """Refused in one sentence with exit code 2."""
    answer = run("mix", *words)

    assert 2 == answer.exit_code
    assert told in answer.stderr
