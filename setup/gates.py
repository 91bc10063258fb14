"""The gates in their order, the cheap ones first and the whole of the tests last."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

# Half an hour off the hour, in the form that needs no time zone tables on the machine.
HALF_HOUR_ZONE = "IST-5:30"


@dataclass(frozen=True)
class Gate:
    """One command that must end with 0; `not_run_because` says why it cannot be run here."""

    name: str
    command: list[str]
    surroundings: dict[str, str] = field(default_factory=dict)
    not_run_because: str = ""


def gates(programs: Path, root: Path, *, with_browser: bool) -> list[Gate]:
    """Every gate; without a browser its tests are left out, and pytest says so in its summary."""
    python = str(programs / "python")
    pytest = [python, "-m", "pytest", "-q", "-n", "2"]
    return [
        Gate("lint", [python, "-m", "ruff", "check", "."]),
        Gate("format", [python, "-m", "ruff", "format", "--check", "."]),
        Gate("types", [python, "-m", "mypy"]),
        Gate("types of the set-up", [python, "-m", "mypy", *map(str, sorted((root / "setup").glob("*.py")))]),
        Gate("who imports whom", [str(programs / "lint-imports"), "--no-logo"]),
        words(python, root),
        Gate("core in a half-hour time zone", [*pytest, "tests/unit/core"], {"TZ": HALF_HOUR_ZONE}),
        Gate("tests", pytest if with_browser else [*pytest, "-m", "not browser"]),
    ]


def words(python: str, root: Path) -> Gate:
    """Names that may not stand in the project; their list is kept beside it, not in it."""
    program = root.parent / "shared" / "tools" / "words"
    missing = "" if program.is_file() else "its list is not beside this checkout"
    return Gate("words", [python, str(program)], not_run_because=missing)
