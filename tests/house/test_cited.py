"""Every public function of a science says where it comes from; what cites a source is checked against it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from project import PACKAGE, ROOT

SCIENCES = (
    "solutions", "thermal", "development", "agitation", "sensitometry", "permanence", "negatives", "doubt",
    "fits",
)  # fmt: skip
SOURCE, OWN = re.compile(r"\bSource:"), re.compile(r"\bOwn model:")
Named = tuple[str, str]


def public_functions(text: str) -> Iterator[ast.FunctionDef]:
    """The functions at the top of a module that others may call."""
    for node in ast.parse(text).body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield node


def functions_of_sciences() -> Iterator[tuple[Named, str]]:
    """Module and name of each, with its docstring."""
    for science in SCIENCES:
        for file in sorted((PACKAGE / "core" / science).rglob("*.py")):
            module = ".".join(file.relative_to(PACKAGE.parent).with_suffix("").parts)
            for function in public_functions(file.read_text(encoding="utf-8")):
                yield (module, function.name), ast.get_docstring(function) or ""


def imported(tree: ast.Module) -> dict[str, Named]:
    """What the names of a module stand for: the function where it is defined."""
    return {
        alias.asname or alias.name: (node.module, alias.name)
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and node.module
        for alias in node.names
    }


def checked_in(text: str) -> set[Named]:
    """What the tests of one file check, by their marks `checks(of=function)`."""
    tree = ast.parse(text)
    names = imported(tree)
    return {
        names[word.value.id]
        for test in ast.walk(tree)
        if isinstance(test, ast.FunctionDef) and test.name.startswith("test_")
        for mark in test.decorator_list
        if isinstance(mark, ast.Call) and isinstance(mark.func, ast.Attribute) and mark.func.attr == "checks"
        for word in mark.keywords
        if word.arg == "of" and isinstance(word.value, ast.Name) and word.value.id in names
    }


def checked_anywhere() -> set[Named]:
    """What any test checks."""
    files: list[Path] = sorted((ROOT / "tests").rglob("test_*.py"))
    return set().union(*(checked_in(file.read_text(encoding="utf-8")) for file in files))


def test_every_function_of_a_science_says_where_it_comes_from() -> None:
    """`Source:` or `Own model:`."""
    silent = [
        named for named, told in functions_of_sciences() if not SOURCE.search(told) and not OWN.search(told)
    ]
    assert silent == []


@pytest.mark.parametrize("part", ["Doubt:", ">>> "])
def test_every_function_of_a_science_tells_its_doubt_and_shows_an_example(part: str) -> None:
    """The stated uncertainty, if only 'none', and a line that the tests run."""
    assert [] == [named for named, told in functions_of_sciences() if part not in told]


def test_what_cites_a_source_is_checked_against_it() -> None:
    """By a test marked `checks(of=that function)`."""
    checked = checked_anywhere()
    unchecked = [
        named for named, told in functions_of_sciences() if SOURCE.search(told) and named not in checked
    ]
    assert unchecked == []


def test_every_own_model_leads_to_its_page() -> None:
    """A page of docs that is named is there."""
    named = {page for _, told in functions_of_sciences() for page in re.findall(r"\bdocs/[\w/-]*\w", told)}
    assert {page for page in named if not (ROOT / f"{page}.md").exists()} == set()


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("@pytest.mark.checks(of=mix)\ndef test_a() -> None: ...", {("tankside.core.thermal.mixing", "mix")}),
        ("@pytest.mark.checks(of=mix)\ndef helper() -> None: ...", set()),
        ("@pytest.mark.checks(of=other)\ndef test_a() -> None: ...", set()),
        ("def test_a() -> None:\n    mix()", set()),
    ],
)
def test_only_a_marked_test_of_that_function_counts(text: str, found: set[Named]) -> None:
    """Neither an unmarked test nor a like-named function of another module will do."""
    assert found == checked_in(f"from tankside.core.thermal.mixing import mix\n{text}")
