"""No command prints a number finer than its doubt or its mark allows, in words or as JSON."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path

import pytest
from click.testing import CliRunner
from digits import json_too_fine, too_fine
from evening_clock import CountingDice, SetClock, at
from planned import ANSWERS

from tankside.cli.command import command
from tankside.demo.lay_out import lay_out
from tankside.wiring import open_house
from tankside.workflows.begin_first_evening import begin_first_evening

STRIP = ["0.09", "0.10", "0.13", "0.21", "0.33", "0.47", "0.62", "0.77", "0.92", "1.06", "1.19", "1.30"]
PAIRS = [word for at, density in enumerate(STRIP) for word in ("--pair", f"{0.3 * at - 3:.1f}", density)]
CALCULATIONS: tuple[Sequence[str], ...] = (
    ("temper", "--ml", "500", "--to", "20.8", "--hot", "52", "--cold", "14", "--stock-ml", "250",
     "--stock-at", "17", "--jug", "42"),
    ("temper", "--ml", "613", "--to", "21.37", "--hot", "51.3", "--cold", "13.7", "--thermometer", "0.5"),
    ("temper", "--ml", "17", "--to", "68", "--hot", "122", "--cold", "57", "--volumes", "us",
     "--degrees", "F"),
    ("time", "--time", "9:30", "--at", "20", "--tank-ml", "500", "--reads", "21"),
    ("time", "--time", "7:10", "--at", "20", "--tank-ml", "613", "--reads", "21.37", "--q10", "2.37"),
    ("time", "--time", "9:30", "--at", "68", "--tank-ml", "500", "--reads", "70.1", "--degrees", "F"),
    ("wash", "--fill-ml", "300"),
    ("wash", "--fill-ml", "613", "--rolls", "1.7", "--both-sides", "--water-at", "12.3", "--least", "time"),
    ("wash", "--fill-ml", "300", "--soak", "0:20", "--soak", "0:30", "--soak", "0:50"),
    ("wash", "--fill-ml", "600", *("--soak", "9:00") * 5),
    ("capacity", "--ml", "1000", "--rolls", "7.3", "--tabular", "3.1", "--fresh", "0:45", "--clears", "1:15",
     "--clears-at", "15"),
    ("capacity", "--ml", "613", "--parts", "1+9", "--rolls", "11", "--fresh", "0:45", "--clears", "1:32"),
    ("mix", "D-76", "--ml", "613"),
    ("mix", "D-76", "--ml", "250", "--have", "borax=pentahydrate"),
)  # fmt: skip
STRIPS: tuple[Sequence[str], ...] = (
    ("curve", *PAIRS, "--metered-index", "100"),
    ("curve", *PAIRS, "--lux-seconds", "--base-fog", "0.09"),
)
KEPT: tuple[Sequence[str], ...] = (
    ("plan", "show"), ("plan", "show", "--degrees", "F"), ("journal",), ("roll", "list"),
    ("roll", "list", "--done"),
)  # fmt: skip


def told(*words: str) -> str:
    """What a command says; it must succeed."""
    ended = CliRunner().invoke(command, list(words))
    assert 0 == ended.exit_code, ended.output
    return ended.stdout


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A data folder that holds the invented season as if it were the person's own."""
    folder = tmp_path_factory.mktemp("demo")
    with open_house(folder / "tankside.db", SetClock(), CountingDice()) as house:
        lay_out(house, at(0.0))
    return folder


@pytest.fixture(scope="module")
def first(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A data folder with one plan, made of six answers."""
    folder = tmp_path_factory.mktemp("first")
    with open_house(folder / "tankside.db", SetClock(), CountingDice()) as house:
        begin_first_evening(house.desk, house.dice, ANSWERS, at(0.0))
    return folder


@pytest.mark.parametrize("words", CALCULATIONS, ids=" ".join)
def test_a_calculation(words: Sequence[str]) -> None:
    """Times to the step of their doubt, temperatures to the thermometer, volumes to the measure."""
    assert [] == too_fine(told(*words), planned=True)
    assert [] == json_too_fine(told(*words, "--json"), planned=True)


@pytest.mark.parametrize("words", STRIPS, ids=" ".join)
def test_a_step_strip(words: Sequence[str]) -> None:
    """Densities to 0.01 in words, where their interval allows it; their scatter to 0.001."""
    lines = [line for line in told(*words).splitlines() if "standard deviation" not in line]

    assert [] == too_fine("\n".join(lines), bare="density")
    assert [] == json_too_fine(told(*words, "--json"))


@pytest.mark.parametrize("words", KEPT, ids=" ".join)
@pytest.mark.parametrize("folder", ["demo", "first"])
def test_what_is_kept(words: Sequence[str], folder: str, request: pytest.FixtureRequest) -> None:
    """The season laid out, and a first evening: lists, plan, in both degrees and as JSON."""
    where = ("--data-folder", str(request.getfixturevalue(folder)))
    in_degrees = "--degrees" in words

    assert [] == too_fine(told(*words, *where), planned=True)
    assert in_degrees or [] == json_too_fine(told(*words, "--json", *where), planned=True)


def test_each_run_of_the_season(demo: Path) -> None:
    """What every past session counts as, what differed and what is proposed."""
    where = ("--data-folder", str(demo))
    runs = [one["run"] for one in json.loads(told("journal", "--json", *where))["runs"]]

    assert 3 == len(runs)
    for run in runs:
        assert [] == too_fine(told("journal", run, *where))
        assert [] == json_too_fine(told("journal", run, "--json", *where))


def test_a_plan_made_now(first: Path) -> None:
    """A developer that reads between two marks gives a time with a doubt, told in its steps."""
    where = ("--data-folder", str(first))
    code = told("roll", "list", *where).splitlines()[1].split()[0]

    assert [] == json_too_fine(told("plan", "make", code, "--reads", "21.3", "--json", *where), planned=True)
    assert [] == too_fine(told("plan", "make", code, "--reads", "20.7", *where), planned=True)


@pytest.mark.parametrize(
    "text",
    [
        "9:31 (9:15 to 9:45)", "9:20 ± 0:23", "20.84 °C", "6.33 mL of it", "1243.7 mL", "0.0123 g/m²",
        "0.001 g/m²", "took 570.36", "2.2 (1 to 99)", "13.5 %", "12.5 s late",
    ],
)  # fmt: skip
def test_a_digit_too_many_is_found_in_words(text: str) -> None:
    """The rule can fail: each of these is finer than allowed."""
    assert [] != too_fine(text, planned=True)


@pytest.mark.parametrize(
    "text",
    [
        '{"aim_s": 570.3647}', '{"mix_to_c": 20.84}', '{"stock_ml": 62.5}', '{"said": "20.84 °C"}',
        '{"value": 541, "interval": [525, 556], "unit": "s"}', '{"value": 0.001, "unit": "g/m2"}',
        '{"value": 13.5, "interval": [0.5, 99.5], "unit": "%"}', '{"residual": {"start": 4.6423}}',
        '{"value": 0.612, "interval": [0.55, 0.68], "unit": ""}',
    ],
)  # fmt: skip
def test_a_digit_too_many_is_found_in_json(text: str) -> None:
    """The same in JSON, by the names and units in it."""
    assert [] != json_too_fine(text, planned=True)
