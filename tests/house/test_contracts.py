"""Each import contract is proved by breaking it on purpose, in a copy."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from project import PACKAGE, ROOT, bare_surroundings, described

LAYERS = "Faces stand on adapters, adapters on wording, wording on workflows, workflows on the core"
SCIENCES = "Inside the core the sciences are strangers and everything points down"

# contract, file of the package that is planted, line put at its end
BREACHES = [
    (LAYERS, "workflows/__init__.py", "import tankside.wording"),
    (LAYERS, "core/__init__.py", "import tankside.workflows"),
    (LAYERS, "store/__init__.py", "import tankside.web"),
    (LAYERS, "web/__init__.py", "import tankside.wiring"),
    (LAYERS, "stray/__init__.py", ""),
    (SCIENCES, "core/thermal/__init__.py", "import tankside.core.development"),
    (SCIENCES, "core/planning/__init__.py", "import tankside.core.run"),
    (SCIENCES, "core/stray.py", ""),
    ("The core is pure", "core/quantities/__init__.py", "import time"),
    (
        "What happened is folded without any science",
        "core/run/evolve.py",
        "import tankside.core.thermal.drift",
    ),
    ("SQL only in the store", "web/__init__.py", "import sqlite3"),
]


def broken_contracts(source: Path) -> set[str]:
    """The contracts that import-linter finds broken in the package under `source`."""
    linter = [str(Path(sys.executable).with_name("lint-imports")), "--no-cache", "--no-logo"]
    told = subprocess.run(
        linter,
        cwd=source.parent,
        env=bare_surroundings(PYTHONPATH=str(source), COLUMNS="200"),
        capture_output=True,
        text=True,
        check=False,
    )
    lines = told.stdout.splitlines()
    broken = {line.removesuffix(" BROKEN") for line in lines if line.endswith(" BROKEN")}
    assert any("Contracts: " in line for line in lines), told.stdout + told.stderr
    assert bool(broken) == bool(told.returncode)
    return broken


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """The source of the package, free to be spoilt."""
    shutil.copytree(
        PACKAGE, tmp_path / "src" / "tankside", ignore=shutil.ignore_patterns("__pycache__", "static")
    )
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    return tmp_path / "src"


@pytest.mark.parametrize(
    ("contract", "file", "line"), BREACHES, ids=[f"{file}: {line}" for _, file, line in BREACHES]
)
def test_a_breach_breaks_its_contract(copy: Path, contract: str, file: str, line: str) -> None:
    """import-linter names the very contract that was broken."""
    planted = copy / "tankside" / file
    planted.parent.mkdir(exist_ok=True)
    with planted.open("a", encoding="utf-8") as source:
        source.write(f"\n{line}\n")
    assert contract in broken_contracts(copy)


def test_every_contract_is_proved() -> None:
    """A new contract comes with a breach of its own."""
    contracts = {contract["name"] for contract in described()["tool"]["importlinter"]["contracts"]}
    assert contracts == {contract for contract, _, _ in BREACHES}
