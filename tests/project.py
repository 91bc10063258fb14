"""Where the project lies, and its own description of itself."""

from __future__ import annotations

import os
import subprocess
import tomllib
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent.parent
SOURCE = ROOT / "src"
PACKAGE = SOURCE / "tankside"


def described() -> dict[str, Any]:
    """pyproject.toml."""
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def tracked() -> list[Path]:
    """Every file that git tracks, and every new one that it does not ignore."""
    asked = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    names = subprocess.run(asked, cwd=ROOT, check=True, capture_output=True, text=True).stdout.split("\0")
    return [ROOT / name for name in names if name and (ROOT / name).is_file()]


def bare_surroundings(**more: str) -> dict[str, str]:
    """The environment for a child, without what points Python somewhere else."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "PYTEST"))}
    return {**kept, **more}
