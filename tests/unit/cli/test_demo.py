"""`tankside demo`: where it lies, laid out anew, never the person's own file."""

from __future__ import annotations

import json
from pathlib import Path

from click.testing import CliRunner, Result

from tankside.cli.command import command
from tankside.machine.data_folder import open_data_folder
from tankside.wiring import desk_over


def demo(folder: Path, *words: str) -> Result:
    """What `tankside demo` does over `folder`."""
    return CliRunner().invoke(command, ["demo", *words, "--data-folder", str(folder)])


def test_it_is_laid_out_whole_and_apart(tmp_path: Path) -> None:
    """Before, its place is told; after, four rolls wait in its file and nothing of the person's is there."""
    file = tmp_path / "demo.db"
    assert (
        f"The demo is laid out in {file} when it is first opened from the start page.\n"
        == demo(tmp_path).output
    )
    assert {"file": str(file), "laid_out": True} == json.loads(demo(tmp_path, "--anew", "--json").output)
    with desk_over(file) as desk:
        assert 4 == sum(one.standing == "waiting" for one in desk.rolls.all())
    assert {"demo.db", "served-at"} == {one.name for one in tmp_path.iterdir()}


def test_it_is_not_laid_out_under_an_open_tankside(tmp_path: Path) -> None:
    """The open one would go on with the old file."""
    with open_data_folder(tmp_path).served_at("http://127.0.0.1:8462"):
        told = demo(tmp_path, "--anew")
    assert 2 == told.exit_code
    assert "already open at http://127.0.0.1:8462" in told.stderr
    assert not (tmp_path / "demo.db").exists()
