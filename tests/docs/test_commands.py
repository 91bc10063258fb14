"""Commands that pages name are commands that the terminal knows; those of the first evening are run."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import click
import pytest
from click.testing import CliRunner
from project import PACKAGE, ROOT

from tankside.cli.command import NOUNS, command

PAGES = [
    ROOT / "README.md",
    *sorted((ROOT / "docs").rglob("*.md")),
    *sorted((PACKAGE / "web" / "templates").rglob("*.html")),
]
NAMED = re.compile(r"(?:^    |`|<code>)tankside ((?!-)[^`<\n]+)", re.MULTILINE)
FIRST_ROLL = ROOT / "docs" / "start" / "first-roll.md"


def commands_of(page: Path) -> list[str]:
    """What stands after 'tankside' wherever a page names a command."""
    return NAMED.findall(page.read_text(encoding="utf-8"))


ALL = [(page.relative_to(ROOT).as_posix(), words) for page in PAGES for words in commands_of(page)]


def known_options(words: list[str]) -> set[str]:
    """The options of the command that `words` begin with."""
    context = click.Context(command)
    found: click.Command | None = command
    for word in words:
        if not isinstance(found, click.Group):
            break
        found = found.get_command(context, word)
    assert found is not None, words
    return {name for one in found.params for name in (*one.opts, *one.secondary_opts)} | {"--help"}


@pytest.mark.parametrize(("page", "words"), ALL, ids=[f"{page}: {words}" for page, words in ALL])
def test_a_command_on_a_page_is_one_the_terminal_knows(page: str, words: str) -> None:
    """Its noun is a noun and each of its options is one of that command."""
    del page
    told = shlex.split(words)
    assert told[0] in NOUNS
    options = {word for word in told if word.startswith("--")}
    assert set() == options - known_options(told)


def test_there_are_commands_to_look_at() -> None:
    """The pages of the demo, the backup and the phone name theirs."""
    assert {"start", "demo", "backup", "restore", "roll", "temper"} <= {words.split()[0] for _, words in ALL}


def test_the_first_evening_is_true(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every command of the page ends well, in order, over a house with nothing in it."""
    for name in ("HOME", "XDG_DATA_HOME"):
        monkeypatch.setenv(name, str(tmp_path))
    monkeypatch.chdir(tmp_path)
    said = {}
    for words in re.findall(r"^    tankside (.+)$", FIRST_ROLL.read_text(encoding="utf-8"), re.MULTILINE):
        done = CliRunner().invoke(command, shlex.split(words))
        assert 0 == done.exit_code, (words, done.output)
        said[words] = done.output
    assert said["roll list"].startswith("2 waiting.\n")
    assert (tmp_path / "films.zip").is_file()
