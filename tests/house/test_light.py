"""What a command and the core may not load: told by the modules loaded, not by the time taken."""

from __future__ import annotations

import subprocess
import sys

import pytest
from project import PACKAGE, SOURCE, bare_surroundings

from tankside.cli.command import NOUNS

FACES_AND_STORES = {
    "alembic",
    "fastapi",
    "jinja2",
    "matplotlib",
    "ortools",
    "pydantic",
    "scipy.stats",
    "sqlalchemy",
    "sqlite3",
    "starlette",
    "tankside.sink",
    "tankside.solver",
    "tankside.store",
    "tankside.web",
    "typst",
    "uvicorn",
}
HELPS = [("--help",), ("--version",), *((noun, "--help") for noun in NOUNS)]
CALCULATIONS = [
    ("temper", "--ml", "500", "--to", "20.8", "--hot", "52", "--cold", "14"),
    ("time", "--time", "9:30", "--at", "20", "--tank-ml", "500", "--reads", "21"),
    ("wash", "--fill-ml", "300"),
    ("capacity", "--ml", "1000", "--rolls", "7", "--fresh", "0:45", "--clears", "0:50"),
    ("mix", "D-76", "--ml", "600"),
]

RUN_COMMAND = """
import sys
from tankside.__main__ import main
try:
    main()
except SystemExit as end:
    assert not end.code, end.code
print(*sys.modules, file=sys.stderr)
"""
IMPORT_ALL = """
import importlib, sys
for name in sys.argv[1:]:
    importlib.import_module(name)
print(*sys.modules, file=sys.stderr)
"""


def loaded_by(program: str, *arguments: str) -> set[str]:
    """The modules that a fresh Python has loaded after `program`."""
    told = subprocess.run(
        [sys.executable, "-c", program, *arguments],
        env=bare_surroundings(PYTHONPATH=str(SOURCE)),
        capture_output=True,
        text=True,
        check=False,
    )
    assert told.returncode == 0, told.stderr
    return set(told.stderr.split())


@pytest.mark.parametrize("arguments", HELPS, ids=" ".join)
def test_help_loads_neither_face_store_nor_science(arguments: tuple[str, ...]) -> None:
    """A question about a command is answered before anything heavy is loaded."""
    loaded = loaded_by(RUN_COMMAND, *arguments)
    assert "click" in loaded
    assert set() == loaded & (FACES_AND_STORES | {"numpy", "scipy"})


@pytest.mark.parametrize("asked", [(), ("--why",)], ids=["answer", "why"])
@pytest.mark.parametrize("arguments", CALCULATIONS, ids=lambda arguments: arguments[0])
def test_a_calculation_loads_neither_face_nor_store(
    arguments: tuple[str, ...], asked: tuple[str, ...]
) -> None:
    """Numbers and their working come from the core alone."""
    loaded = loaded_by(RUN_COMMAND, *arguments, *asked)
    assert loaded & {f"tankside.core.{science}" for science in ("thermal", "permanence", "solutions")}
    assert set() == loaded & FACES_AND_STORES


def test_the_core_loads_numpy_at_most() -> None:
    """scipy waits inside the functions that need it."""
    files = (PACKAGE / "core").rglob("*.py")
    parts = (file.relative_to(SOURCE).with_suffix("").parts for file in files)
    modules = sorted(".".join(part).removesuffix(".__init__") for part in parts)
    loaded = loaded_by(IMPORT_ALL, *modules)
    assert "tankside.core.run" in loaded
    assert set() == loaded & (FACES_AND_STORES | {"scipy", "click", "tankside.machine"})


CALCULATIONS = [
    ("time", "--time", "9:30", "--at", "20", "--tank-ml", "500", "--reads", "21"),
    ("temper", "--ml", "500", "--to", "20", "--hot", "50", "--cold", "12"),
    (
        "curve",
        *(word for i in range(21) for word in ("--pair", f"{0.15 * i:.2f}", f"{0.3 + 0.09 * i:.2f}")),
        "--base-fog",
        "0.3",
    ),
]


@pytest.mark.parametrize("arguments", CALCULATIONS, ids=lambda words: words[0])
def test_a_calculation_loads_no_face_store_or_statistics(arguments: tuple[str, ...]) -> None:
    """An answer on the terminal needs numpy and a part of scipy, nothing else that is heavy."""
    loaded = loaded_by(RUN_COMMAND, *arguments, "--why")
    assert "numpy" in loaded
    assert set() == loaded & FACES_AND_STORES
