"""`tankside curve`: what a step strip tells, as a person reads it and as a script does."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner, Result

from tankside.cli.command import command

# Curve A of tests/literature/data/curves-constructed.csv: speed 122.6, index 0.635, rise 0.80 exactly.
LOG_H = -3.05 + 0.15 * np.arange(21)
DENSITY = 0.28 + 0.684428705660452 / 5 * np.log1p(np.exp(5 * (LOG_H + 2.2)))


@pytest.fixture
def readings(tmp_path: Path) -> str:
    """A file of 21 steps, densities to 0.01."""
    rows = [f"{log_h:.2f},{density:.2f}" for log_h, density in zip(LOG_H, DENSITY, strict=True)]
    file = tmp_path / "invented.csv"
    file.write_text("\n".join(["# an invented strip", "log_h,density", *rows]), encoding="utf-8")
    return str(file)


def curve(*words: str, piped: str | None = None) -> Result:
    """What `tankside curve` answers."""
    return CliRunner().invoke(command, ["curve", *words], input=piped)


def test_a_strip_in_lux_seconds_has_a_speed(readings: str) -> None:
    """Read to 0.005, curve A is 125/22 by ISO 6."""
    told = curve(readings, "--base-fog", "0.28", "--reading-sd", "0.005", "--lux-seconds")

    assert 0 == told.exit_code
    assert told.stdout.startswith("Base and fog")
    assert "ISO speed 125/22 (" in told.stdout


def test_home_readings_leave_an_exposure_index(readings: str) -> None:
    """At 0.02 the reading error straddles the condition, so it is no ISO speed."""
    told = curve(readings, "--base-fog", "0.28", "--lux-seconds")

    assert "Exposure index 125/22 (" in told.stdout
    assert "within the reading error" in told.stdout


def test_json_carries_value_interval_and_unit(readings: str) -> None:
    """No more digits than the doubt allows."""
    told = json.loads(curve(readings, "--base-fog", "0.28", "--reading-sd", "0.01", "--json").stdout)

    assert 0.63 <= told["contrast_index"]["value"] <= 0.65
    assert told["contrast_index"]["interval"][0] <= 0.635 <= told["contrast_index"]["interval"][1]
    for name in ("base_fog", "speed_point", "rise", "average_gradient", "gamma", "useful_log_h"):
        assert told[name]["value"] == round(told[name]["value"], 2)
    assert "speed" not in told


def test_steps_and_a_meter_give_an_exposure_index() -> None:
    """Numbers of steps 0.15 apart, a meter's reading at log H 0, piped in."""
    rows = "\n".join(
        f"{round(x / 0.15)},{0.3 + 0.6 * max(0.0, x + 1.2):.2f}" for x in np.arange(-2.4, 1.0, 0.15)
    )
    told = curve(
        "-", "--metered-index", "400", "--base-fog", "0.30", "--json", piped=f"step,density\n{rows}\n"
    )

    assert 0 == told.exit_code, told.stderr
    assert 400 == pytest.approx(json.loads(told.stdout)["exposure_index"]["value"], rel=0.3)


def test_a_short_strip_tells_what_it_can() -> None:
    """Without the outer point there is no contrast index, and it says so; the speed point stands."""
    pairs = [
        word
        for x in np.arange(-3, -1.4, 0.15)
        for word in ("--pair", f"{x:.2f}", f"{0.3 + 0.5 * max(0, x + 2.3):.2f}")
    ]
    told = curve(*pairs, "--base-fog", "0.3")

    assert 0 == told.exit_code
    assert "before the outer point of the contrast index" in told.stdout
    assert "Speed point, log H   -2." in told.stdout


@pytest.mark.parametrize(
    ("piped", "sentence"),
    [
        ("frame,weight\n1,2\n", "The file has the columns frame, weight; it needs density"),
        ("log_h,density\n-2,thick\n", "Reading 1 of the file is not two numbers."),
        ("log_h,density\n-2,0.3\n", "1 readings are too few; it takes 5."),
        ("log_h,density\n" + "".join(f"{i},{9}\n" for i in range(6)), "A density of 9 is none of a step"),
    ],
)
def test_what_is_no_strip_is_refused(piped: str, sentence: str) -> None:
    """One sentence, exit code 2, nothing on standard output."""
    told = curve("-", piped=piped)

    assert (2, "") == (told.exit_code, told.stdout)
    assert told.stderr.startswith(sentence)


def test_nothing_to_read_is_asked_for() -> None:
    """Neither a file nor a pair."""
    assert 2 == curve().exit_code
