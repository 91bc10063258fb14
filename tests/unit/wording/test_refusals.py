"""Every refusal is said with its numbers and its ways on."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from string import Formatter

import pytest
from project import PACKAGE

from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal, Refused
from tankside.core.solutions.notation import Dilution, read_dilution
from tankside.core.solutions.volumes import check_stock
from tankside.wording.refusals import SENTENCES, SPEAKERS, WAYS_ON, say, say_refusal

PASSED_ON = {"unreadable", "one_of"}
"""Functions that make a refusal of a code they are given."""

FILES = {
    file: ast.parse(file.read_text(encoding="utf-8"))
    for file in sorted(PACKAGE.rglob("*.py"))
    if PACKAGE / "wording" not in file.parents
}


def calls_of_refuse(tree: ast.AST) -> Iterator[ast.Call]:
    """Every call that makes a refusal in one module."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Name):
            continue
        if node.func.id in {"refuse", "Refusal"} | PASSED_ON:
            yield node


def texts_in(node: ast.AST) -> set[str]:
    """Every text that stands in a piece of code."""
    return {
        one.value for one in ast.walk(node) if isinstance(one, ast.Constant) and isinstance(one.value, str)
    }


def texts_given(tree: ast.AST, node: ast.expr) -> set[str]:
    """Texts of an argument: those in it, or those assigned in its module to the name that it is."""
    if not isinstance(node, ast.Name):
        return texts_in(node)
    assigned = [
        one.value for one in ast.walk(tree) if isinstance(one, ast.Assign) and ast.dump(one.targets[0]) in {
            ast.dump(ast.Name(node.id, ast.Store())), ast.dump(ast.Name(node.id.upper() + "S", ast.Store()))
        }
    ]  # fmt: skip
    return set().union(*(texts_in(one) for one in assigned), set())


def codes_and_ways(tree: ast.AST) -> tuple[set[str], set[str]]:
    """Codes of refusals in one module, and codes of ways on."""
    codes: set[str] = set()
    ways: set[str] = set()
    for call in calls_of_refuse(tree):
        name = call.func.id if isinstance(call.func, ast.Name) else ""
        codes |= texts_given(tree, call.args[0]) if call.args and name != "one_of" else set()
        for word in call.keywords:
            if word.arg == "code":
                codes |= texts_given(tree, word.value)
            if word.arg == "ways_on":
                ways |= texts_given(tree, word.value)
    return codes, ways


ALL_TEXTS = set().union(*(texts_in(tree) for tree in FILES.values()))


def refused_by(text: str) -> Refusal:
    """The refusal that reading `text` as a dilution meets."""
    with pytest.raises(Refused) as no:
        read_dilution(text)
    return no.value.refusal


def test_a_sentence_tells_the_numbers_and_each_way_on() -> None:
    """Where a database is not safe, the person learns which folder and what to do."""
    no = Refusal(
        "data-folder-on-network", {"folder": "/net/x", "file_system": "nfs"}, ways_on=("other-data-folder",)
    )
    assert say(no).startswith("/net/x lies on a network drive (nfs)")
    assert say(no).endswith("Choose a folder on this machine with --data-folder FOLDER.")


def test_numbers_are_told_in_the_persons_units() -> None:
    """A person who thinks in Fahrenheit and ounces reads both, fixed limits too."""
    no = Refusal("water-temperature-out-of-range", {"temp_c": 70.0})
    assert (
        "Water at 158.0 °F is outside what is worked out here: 32.0 °F to 149.0 °F."
        == say_refusal(no, Preferences("F", "us_fl_oz")).sentence
    )


def test_too_little_stock_offers_its_three_ways() -> None:
    """Two rolls in 600 mL of 1+4 at 80 mL a roll: one roll, 800 mL, or 1+2 with its own time (S1)."""
    with pytest.raises(Refused) as no:
        check_stock([1, 1], tank_ml=600, dilution=Dilution(1, 4), least_stock_ml=80)
    said = say_refusal(no.value.refusal)

    assert "600 mL at 1+4 hold 120 mL of stock, and 2 rolls need 160 mL." == said.sentence
    assert [
        "Put only 1 roll in",
        "Take a tank filled with 800 mL or more",
        "Take 1+2 (200 mL of stock), with a time of its own",
    ] == [way.label for way in said.ways_on]


def test_a_small_shortfall_keeps_the_digits_that_show_it() -> None:
    """5.88 mL of the 6 mL needed: to the millilitre both would read 6."""
    with pytest.raises(Refused) as no:
        check_stock([1], tank_ml=300, dilution=Dilution(1, 50), least_stock_ml=6)
    assert say(no.value.refusal).startswith("300 mL at 1+50 hold 5.88 mL of stock, and 1 roll need")


def test_two_readings_become_two_choices_with_what_to_write() -> None:
    """'1:4' is asked back in words, and each choice knows the text that says it without doubt."""
    said = say_refusal(refused_by("1:4"))

    assert ["1 part and 4 of water (1+4)", "1 part in 4 (1+3)"] == [way.label for way in said.ways_on]
    assert [Dilution(1, 4), Dilution(1, 3)] == [read_dilution(way.entry or "") for way in said.ways_on]


def test_a_refusal_without_a_sentence_still_says_what_it_knows() -> None:
    """Nobody meets a traceback for want of a sentence."""
    no = Refusal("cellar-too-dark", {"light_lux": 2}, ways_on=("light-a-lamp",))
    assert say(no) == "No: cellar too dark (light lux 2). Way on: light a lamp."


@pytest.mark.parametrize("tree", [pytest.param(tree, id=file.stem) for file, tree in FILES.items()])
def test_every_refusal_has_its_sentence(tree: ast.AST) -> None:
    """So has every way on: one line in wording/sentences each; a code worked out counts by all its texts."""
    codes, ways = codes_and_ways(tree)
    assert set() == codes - set(SENTENCES)
    assert set() == ways - set(WAYS_ON)


def test_no_sentence_is_left_over() -> None:
    """A sentence whose code stands nowhere in the program is taken out, and so is a way on."""
    assert set() == set(SENTENCES) - ALL_TEXTS
    assert set() == set(WAYS_ON) - ALL_TEXTS


def test_each_code_is_spoken_for_once() -> None:
    """Two files that both say a code would hide one of the two sentences."""
    assert sum(len(one.SENTENCES) for one in SPEAKERS) == len(SENTENCES)
    assert sum(len(one.WAYS_ON) for one in SPEAKERS) == len(WAYS_ON)


@pytest.mark.parametrize("tree", [pytest.param(tree, id=file.stem) for file, tree in FILES.items()])
def test_every_number_in_a_sentence_is_given(tree: ast.AST) -> None:
    """What a sentence and its ways on name, the refusal carries; a missing one would be a traceback."""
    for call in calls_of_refuse(tree):
        if not isinstance(call.func, ast.Name) or call.func.id != "refuse" or not call.args:
            continue
        given = {word.arg for word in call.keywords}
        if None in given:
            continue
        codes = texts_given(tree, call.args[0])
        ways = set().union(
            *(texts_given(tree, word.value) for word in call.keywords if word.arg == "ways_on")
        )
        templates = [SENTENCES.get(code, "") for code in codes] + [WAYS_ON.get(way, "") for way in ways]
        named = {name for one in templates for _, name, _, _ in Formatter().parse(one) if name}
        assert set() == {name for name in named if not name.startswith("fixed_")} - given
