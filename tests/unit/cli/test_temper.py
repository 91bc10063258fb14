"""`tankside temper`: hot and cold water as a person reads it and as a script does."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest
from click.testing import CliRunner, Result
from project import SOURCE, bare_surroundings

from tankside.cli.command import command

BY_STOCK = [
    "--ml",
    "500",
    "--to",
    "20.8",
    "--hot",
    "52",
    "--cold",
    "14",
    "--stock-ml",
    "250",
    "--stock-at",
    "17",
]


def temper(*words: str) -> Result:
    """What `tankside temper` answers."""
    return CliRunner().invoke(command, ["temper", *words])


def test_hot_and_cold_for_a_developer_one_to_one() -> None:
    """Scenario S3 without a jug: 71 hot and 179 cold, together 24.7 C."""
    told = temper(*BY_STOCK)

    assert 0 == told.exit_code
    assert [
        "stock       250 mL  at 17.0 °C",
        "hot water    71 mL  at 52.0 °C",
        "cold water  179 mL  at 14.0 °C",
        "",
        "Hot and cold together: 24.7 °C.",
        "The jug will read 20.8 °C (20.8 to 20.9).",
        "Hold back the last 50 mL of water, stir, read, then top up hot or cold.",
        "Water this hot scalds: cold water first, then the hot.",
    ] == told.stdout.splitlines()


def test_a_jug_takes_its_share() -> None:
    """S3 with a jug worth 42 mL at 17 C: 75 hot and 175 cold."""
    told = json.loads(temper(*BY_STOCK, "--jug", "42", "--jug-at", "17", "--json").stdout)

    assert (75, 175) == (told["hot_water"]["value"], told["cold_water"]["value"])


def test_parts_say_the_same_as_millilitres() -> None:
    """1+1 of 500 mL is 250 mL of stock."""
    by_parts = ["--parts", "1+1", *[word for word in BY_STOCK if word not in ("--stock-ml", "250")]]

    assert temper(*BY_STOCK).stdout == temper(*by_parts).stdout


def test_json_carries_value_interval_unit_and_source() -> None:
    """And no digit beyond the marks."""
    told = json.loads(temper(*BY_STOCK, "--json").stdout)

    low, high = told["hot_water"].pop("interval")
    assert {"value": 71.0, "unit": "mL", "source": "enthalpy balance of water"} == told["hot_water"]
    assert low < 71.0 < high
    assert {"value", "interval", "unit", "source"} == set(told["jug_will_read"])
    assert [20.8, 20.9] == told["jug_will_read"]["interval"]


def test_fahrenheit_and_ounces_all_through() -> None:
    """A bare number is in the person's units, and so is the answer."""
    told = temper(
        "--ml", "17", "--to", "68", "--hot", "120", "--cold", "55", "--degrees", "F", "--volumes", "us"
    )

    assert 0 == told.exit_code
    assert "fl oz" in told.stdout
    assert "120.0 °F" in told.stdout
    assert "°C" not in told.stdout


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        (("--to", "68"), "--to: '68' can be 68 °F (20.0 °C) or 68 °C. Write 68 °F. Or write 68 °C.\n"),
        (("--ml", "0.5"), "--ml: '0.5' can be 0.5 L or 0.5 mL. Write 0.5 L. Or write 0.5 mL.\n"),
    ],
)
def test_what_has_two_readings_is_asked_back(changed: tuple[str, str], sentence: str) -> None:
    """At its option, on standard error, with exit code 2."""
    told = temper(*BY_STOCK, *changed)

    assert (2, "", sentence) == (told.exit_code, told.stdout, told.stderr)


def test_taps_that_cannot_reach_it_say_what_would_be_needed() -> None:
    """Cold water at 22 C never makes 20 C."""
    told = temper("--ml", "500", "--to", "20", "--hot", "50", "--cold", "22")

    assert 2 == told.exit_code
    assert told.stderr.startswith(
        "For 20.0 °C the water must be 20.0 °C, and the cold is 22.0 °C; the nearest is 22.0 °C."
    )


@pytest.mark.parametrize(
    "words",
    [
        [*BY_STOCK, "--parts", "1+1"],
        ["--ml", "500", "--to", "20", "--hot", "50", "--cold", "14", "--parts", "1+1"],
        ["--ml", "500", "--to", "20", "--hot", "50", "--cold", "14", "--jug", "42"],
    ],
)
def test_what_is_missing_or_too_much_is_said(words: list[str]) -> None:
    """One option too many, or one too few."""
    assert 2 == temper(*words).exit_code


def test_a_calculation_loads_no_web_no_store_no_solver() -> None:
    """Quick commands stay quick: the heavy parts are not even loaded."""
    asked = (
        "import sys; from tankside.cli.command import command; "
        f"command({['temper', *BY_STOCK]}, standalone_mode=False); "
        "heavy = ('fastapi', 'sqlalchemy', 'ortools', 'matplotlib', 'scipy'); "
        "print([one for one in heavy if one in sys.modules])"
    )
    run = subprocess.run(
        [sys.executable, "-c", asked],
        env=bare_surroundings(PYTHONPATH=str(SOURCE)), capture_output=True, text=True, check=True, timeout=60,
    )  # fmt: skip

    assert "[]" == run.stdout.splitlines()[-1]
