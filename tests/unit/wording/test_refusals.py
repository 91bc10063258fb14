"""Every refusal is said with its numbers and its ways on."""

from __future__ import annotations

import ast
from collections.abc import Iterator

import pytest
from project import PACKAGE

from tankside.core.refusals import Refusal
from tankside.wording.refusals import SENTENCES, WAYS_ON, say


def calls_of_refuse(folder: str) -> Iterator[ast.Call]:
    """Every call of `refuse` in the modules of one folder."""
    for file in (PACKAGE / folder).rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "refuse":
                yield node


def texts_in(node: ast.AST) -> set[str]:
    """Every text that stands in a piece of code."""
    return {
        one.value for one in ast.walk(node) if isinstance(one, ast.Constant) and isinstance(one.value, str)
    }


def test_a_sentence_tells_the_numbers_and_each_way_on() -> None:
    """Where a database is not safe, the person learns which folder and what to do."""
    no = Refusal(
        "data-folder-on-network", {"folder": "/net/x", "file_system": "nfs"}, ways_on=("other-data-folder",)
    )
    assert say(no).startswith("/net/x lies on a network drive (nfs)")
    assert say(no).endswith("Choose a folder on this machine with --data-folder FOLDER.")


def test_a_refusal_without_a_sentence_still_says_what_it_knows() -> None:
    """Nobody meets a traceback for want of a sentence."""
    no = Refusal("cellar-too-dark", {"light_lux": 2}, ways_on=("light-a-lamp",))
    assert say(no) == "No: cellar too dark (light lux 2). Way on: light a lamp."


@pytest.mark.parametrize("folder", ["machine", "store"])
def test_every_refusal_of_these_adapters_has_its_sentence(folder: str) -> None:
    """So has every way on; where a code is worked out, each of its texts counts."""
    calls = list(calls_of_refuse(folder))
    assert calls != []
    for call in calls:
        codes = texts_in(call.args[0])
        ways = {text for word in call.keywords if word.arg == "ways_on" for text in texts_in(word.value)}
        assert codes - set(SENTENCES) == set()
        assert ways - set(WAYS_ON) == set()
