"""The shape of the house: short files, telling names, declared imports, tests that say what they hold."""

from __future__ import annotations

import ast
import re
import sys
from collections.abc import Iterator
from pathlib import Path

from project import PACKAGE, ROOT, described

LONGEST = 400
DEEPEST = 3
# Lists of declarations without any logic may be longer.
DECLARATIONS = {"src/tankside/core/run/events.py"}
VAGUE = {"helpers", "utils", "util", "common", "misc", "manager", "service", "base"}
# Where the name one imports is not the name one installs.
INSTALLED_AS = {"multipart": "python-multipart", "starlette": "fastapi", "PIL": "pillow"}


def modules(*folders: str) -> list[Path]:
    """Every Python file under folders of the project."""
    return sorted(file for folder in folders for file in (ROOT / folder).rglob("*.py"))


def imports_of(tree: ast.AST) -> Iterator[str]:
    """The top names that a module imports, wherever it does."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name.split(".")[0] for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            yield node.module.split(".")[0]


def test_no_module_is_longer_than_a_person_reads_in_one_go() -> None:
    """Past the limit it is two things."""
    files = modules("src", "tests", "setup", "benchmarks")
    lengths = {str(file.relative_to(ROOT)): len(file.read_text("utf-8").splitlines()) for file in files}
    assert {
        name: length for name, length in lengths.items() if length > LONGEST
    }.keys() - DECLARATIONS == set()


def test_folders_are_not_nested_deeper_than_one_can_hold_in_mind() -> None:
    """Three below the package at most."""
    deep = [file for file in modules("src/tankside") if len(file.parent.relative_to(PACKAGE).parts) > DEEPEST]
    assert deep == []


def test_no_name_says_nothing() -> None:
    """Files and folders are named by what is in them."""
    files = [file.relative_to(ROOT).with_suffix("") for file in modules("src", "tests", "setup")]
    words = {word for file in files for part in file.parts for word in part.split("_")}
    assert words & VAGUE == set()


def test_every_import_of_the_package_is_declared() -> None:
    """What the program needs is what pyproject.toml asks for."""
    needs = {re.split(r"[\[<>=!~; ]", need)[0].lower() for need in described()["project"]["dependencies"]}
    known = needs | set(sys.stdlib_module_names) | {"tankside"}
    strays = {}
    for file in modules("src/tankside"):
        names = set(imports_of(ast.parse(file.read_text("utf-8"))))
        undeclared = {name for name in names if INSTALLED_AS.get(name, name).lower() not in known}
        if undeclared:
            strays[str(file.relative_to(PACKAGE))] = undeclared
    assert strays == {}


def test_every_test_says_what_it_holds() -> None:
    """One sentence in each, for whoever meets it failing."""
    tests = [
        (file, node)
        for file in modules("tests")
        for node in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_")
    ]
    silent = [f"{file.relative_to(ROOT)} {test.name}" for file, test in tests if not ast.get_docstring(test)]
    assert silent == []
