"""`tankside time`: how long to develop, as a person reads it and as a script does."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner, Result

from tankside.cli.command import command

FIRST_EVENING = ["--time", "9:30", "--at", "20", "--tank-ml", "500", "--reads", "21"]


def time(*words: str) -> Result:
    """What `tankside time` answers."""
    return CliRunner().invoke(command, ["time", *words])


def test_a_first_evening_with_one_row() -> None:
    """9:30 at 20 C, 21.0 read: 9:00 (8:45 to 9:15), and the tank settles it (practice section 3)."""
    told = time(*FIRST_EVENING)

    assert 0 == told.exit_code
    assert [
        "9:00 (8:45 to 9:15), from the start of pouring in to the start of pouring out.",
        "The developer reads 21.0 °C; in the tank it starts at 20.8 °C and stays there.",
        "Read the tank at one minute: that settles the time.",
        "To keep 9:30, let the developer read 20.0 °C at the pour.",
    ] == told.stdout.splitlines()[:4]


def test_what_was_assumed_is_said() -> None:
    """Tank, room and the factor stand below the answer."""
    last = time(*FIRST_EVENING).stdout.splitlines()[-1]

    assert last.startswith(
        "Tank 20.0 °C, worth 112 mL of water; room 20.0 °C; rate 2.2 times per 10 K (1.5 to 2.9)"
    )


def test_json_carries_no_more_digits_than_the_doubt() -> None:
    """Time to 15 s, temperatures to 0.1 C."""
    told = json.loads(time(*FIRST_EVENING, "--json").stdout)

    assert (540, [525, 555], "s") == tuple(
        told["pour_out_after"][name] for name in ("value", "interval", "unit")
    )
    assert 20.8 == told["starts_at"]["value"]
    assert {"value", "interval", "unit", "source"} == set(told["mix_to_keep_the_time"])


def test_a_cold_tank_is_met_by_a_warmer_developer() -> None:
    """Scenario S3: tank and room 17 C: mix to 20.8 for 9:30 at 20 C; a tank at 14 C in that room: 21.5."""
    cold = [*FIRST_EVENING, "--room", "17", "--json"]

    assert 20.8 == json.loads(time(*cold).stdout)["mix_to_keep_the_time"]["value"]
    second = json.loads(time(*cold, "--tank-at", "14").stdout)
    assert 21.5 == second["mix_to_keep_the_time"]["value"]


def test_a_factor_of_ones_own_narrows_the_band() -> None:
    """With a told factor only the thermometer is left in doubt."""
    told = json.loads(time(*FIRST_EVENING, "--q10", "2.5", "--json").stdout)

    assert ["thermometer"] == told["doubt_from"]
    assert "told" == told["factor_per_10_k"]["source"]


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        (("--time", "9.30"), "--time: '9.30' can be 9:30 or 9:18. Write 9:30. Or write 9:18.\n"),
        (("--reads", "68"), "--reads: '68' can be 68 °F (20.0 °C) or 68 °C. Write 68 °F. Or write 68 °C.\n"),
        (("--reads", "27"), "25.7 °C is above what times are known for: 18.0 °C to 24.0 °C. Cool it.\n"),
    ],
)
def test_refusals_are_one_line_with_exit_code_2(changed: tuple[str, str], sentence: str) -> None:
    """What has two readings is asked back; outside 18 to 24 C no number is given but a way on."""
    told = time(*FIRST_EVENING, *changed)

    assert (2, "", sentence) == (told.exit_code, told.stdout, told.stderr)


def test_refusals_are_told_in_the_persons_degrees() -> None:
    """In Fahrenheit where that was asked."""
    told = time("--time", "9:30", "--at", "68", "--tank-ml", "500 ml", "--reads", "80", "--degrees", "F")

    assert "°F" in told.stderr
    assert "°C" not in told.stderr


def test_several_rows_make_the_rate() -> None:
    """Three rows on a line narrow the factor to less than half."""
    rows = ("--row", "8:00@22", "--row", "7:00@24")
    one, three = (
        json.loads(time(*FIRST_EVENING, *more, "--json").stdout)["factor_per_10_k"]["interval"]
        for more in ((), rows)
    )

    assert three[1] - three[0] < (one[1] - one[0]) / 2


def test_a_cold_developer_is_asked_what_it_holds() -> None:
    """With a row at 16 C the rate reaches 14; below 16 hydroquinone must be known to be absent."""
    cold = (
        "--time",
        "15:00",
        "--at",
        "16",
        "--row",
        "9:30@20",
        "--tank-ml",
        "500",
        "--reads",
        "15",
        "--room",
        "15",
    )
    asked, held, free = (time(*cold, *more) for more in ((), ("--hydroquinone",), ("--no-hydroquinone",)))

    assert [2, 2, 0] == [one.exit_code for one in (asked, held, free)]
    assert "it must be known that yours holds none" in " ".join(asked.stderr.split())


def test_steel_is_worth_less() -> None:
    """Half a litre of steel is worth 47 mL of water where plastic is 112."""
    worth = [
        json.loads(time(*FIRST_EVENING, *more, "--json").stdout)["tank_worth"]["value"]
        for more in ((), ("--tank-of", "steel"))
    ]

    assert [112, 47] == [round(one) for one in worth]


def test_a_push_ends_at_a_contrast_and_leaves_the_shadows_short() -> None:
    """One stop: 0.56 becomes 0.69 as the mid-tones return; shadows gain a third to two thirds, no more."""
    told = json.loads(time(*FIRST_EVENING, "--push", "1", "--json").stdout)
    plain = json.loads(time(*FIRST_EVENING, "--json").stdout)

    assert told["contrast"]["value"] > 0.56
    assert 0 < told["shadows_short"]["interval"][0] <= told["shadows_short"]["interval"][1] < 1
    assert told["pour_out_after"]["value"] > plain["pour_out_after"]["value"]
    assert "push" in told["doubt_from"]
    width_s, plain_s = (one["interval"][1] - one["interval"][0] for one in (
        told["pour_out_after"], plain["pour_out_after"],
    ))  # fmt: skip
    assert width_s > plain_s


def test_a_push_out_of_reach_is_refused_with_a_way_on() -> None:
    """Three stops ask for more than the film gives; the field is named."""
    answer = time(*FIRST_EVENING, "--push", "3")

    assert 2 == answer.exit_code
    assert "--push" in answer.stderr
    assert "Push less" in answer.stderr


def test_two_films_in_one_tank_miss_alike() -> None:
    """One comes out too soft, the other too hard, by the same to a percent."""
    told = json.loads(time(*FIRST_EVENING, "--with", "8:00", "--json").stdout)
    soft, hard = (one["value"] for one in told["contrast_off"])

    assert soft < 0 < hard
    assert abs(soft + hard) <= 1


def test_push_and_a_shared_tank_are_two_questions() -> None:
    """Asked together they are refused, and nothing is worked out."""
    answer = time(*FIRST_EVENING, "--with", "8:00", "--push", "1")

    assert 2 == answer.exit_code
    assert not answer.stdout
