"""`tankside roll` over a folder of its own."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tankside.cli.command import command


class Rolls:
    """The command over one folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def __call__(self, *words: str) -> Result:
        """What `tankside roll` does with these words."""
        return CliRunner().invoke(command, ["roll", *words, "--data-folder", str(self.folder)])


@pytest.fixture
def rolls(tmp_path: Path) -> Rolls:
    """A folder with nothing in it."""
    return Rolls(tmp_path)


def test_a_roll_is_added_listed_found_and_changed(rolls: Rolls) -> None:
    """Its code is told to be written on it; the list and the code lead to it; a change is kept."""
    added = rolls("add", "Ferry 125", "--index", "125", "--camera", "black box", "--exposed", "2026-09-30")
    assert 0 == added.exit_code, added.output
    (code,) = re.findall(r"^Write (\S+) on it\.$", added.output, re.MULTILINE)
    line = f"{code}  Ferry 125, 135-36; EI 125; exposed 2026-09-30; black box"
    assert f"Write {code} on it.\n{line}\n" == added.output
    assert f"1 waiting.\n{line}\n" == rolls("list").output
    assert f"{line}\n" == rolls("find", code.replace("-", "").lower()).output
    changed = rolls("edit", code, "--format", "120", "--precious", "--standing", "done")
    assert f"{code}  Ferry 125, 120; EI 125; exposed 2026-09-30; black box; precious\n" == changed.output
    assert "0 waiting.\n" == rolls("list").output
    assert "1 done.\n" == rolls("list", "--done").output.partition(code)[0]


def test_the_next_roll_is_like_the_last(rolls: Rolls) -> None:
    """Film, format, index and camera are taken over; JSON says all of it."""
    rolls("add", "Ferry 125", "--index", "125", "--format", "4x5", "--sheets", "6", "--camera", "field")
    told = json.loads(rolls("add", "--json").output)["rolls"][0]
    assert ("Ferry 125", "4x5", 6, 125.0, "field") == tuple(
        told[name] for name in ("film", "format", "sheets", "index", "camera")
    )


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (("add",), "film"),
        (("add", "Ferry 125"), "Add --index NUMBER"),
        (("add", "Ferry 125", "--index", "blue"), "--index"),
        (("add", "Ferry 125", "--index", "125", "--format", "135-length"), "--length-m"),
        (("find", "K7M4-T"), "There is no roll K7M4-T."),
        (("find", "K7M4-S"), "K7M4-S"),
    ],
)
def test_what_is_missing_or_wrong_is_one_sentence(
    rolls: Rolls, words: tuple[str, ...], sentence: str
) -> None:
    """The exit code is 2, the sentence names what is wrong, and nothing is kept."""
    told = rolls(*words)
    assert 2 == told.exit_code
    assert sentence in told.stderr
    assert "0 waiting.\n" == rolls("list").output
