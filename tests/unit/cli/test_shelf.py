"""`tankside shelf` over a folder of its own."""

from __future__ import annotations

import json
from datetime import timedelta
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tankside.cli.command import command
from tankside.core.solutions.keeping import by_leaflet, months_after
from tankside.core.solutions.notation import Dilution
from tankside.wiring import house_in
from tankside.workflows.get_ready import Marks
from tankside.workflows.keep_bottles import contaminate, discard
from tankside.workflows.mix_bottle import Mixed, mix_bottle
from tankside.workflows.moments import moment_of


def shelf(folder: Path, *words: str) -> Result:
    """What `tankside shelf` does with these words."""
    return CliRunner().invoke(command, ["shelf", *words, "--data-folder", str(folder)])


@pytest.fixture
def codes(tmp_path: Path) -> list[str]:
    """A litre of stock in a bottle of two, mixed now, and a fixer that is poured away."""
    stock = Mixed("developer", "Umber", Dilution(1, 0), 1000.0, keeping=by_leaflet(6, 2))
    with house_in(tmp_path) as house:
        now = house.clock.now()
        bottles = [
            mix_bottle(house.desk, house.dice, stock, Marks(holds_ml=2000.0), now),
            mix_bottle(house.desk, house.dice, Mixed("fixer", "Fixer", Dilution(1, 4), 500.0), Marks(), now),
        ]
        discard(house.desk, house.dice, bottles[1].code, now)
    return [one.code for one in bottles]


def test_an_empty_shelf_says_so(tmp_path: Path) -> None:
    """One sentence."""
    assert "Nothing on the shelf.\n" == shelf(tmp_path).output


def test_each_bottle_is_a_line(tmp_path: Path, codes: list[str]) -> None:
    """Code, name, what is left, until when; one poured away only when all are asked for."""
    (line,) = shelf(tmp_path).output.splitlines()

    assert line.startswith(f"{codes[0]}  Umber, 1000 mL left. Good until ")
    assert codes[1] in shelf(tmp_path, "--all").output


def test_json_says_all_of_it(tmp_path: Path, codes: list[str]) -> None:
    """Half full since today it keeps two months; what got in is said."""
    with house_in(tmp_path) as house:
        now = house.clock.now()
        today = moment_of(now).astimezone(house.there).date()
        contaminate(house.desk, house.dice, codes[0], now, words="stop bath")
    (told,) = json.loads(shelf(tmp_path, "--json").output)["bottles"]

    assert (codes[0], 1000.0, 2000.0, True) == (
        told["code"], told["left_ml"], told["holds_ml"], told["contaminated"],
    )  # fmt: skip
    ends = {months_after(today - timedelta(days=late), 2).isoformat() for late in (0, 1)}
    assert told["good_until"] in ends
