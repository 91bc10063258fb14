"""What `./test` does: set up if need be, then run every gate, the tests last.

`./test PATH ...` hands the paths to pytest alone, for a quick run.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import browser
from environment import ROOT, TEST, prepare, say
from gates import gates
from plainly import plainly


@plainly
def main() -> int:
    """0 if every gate stands."""
    programs = prepare(TEST)
    found = browser.find_or_install()
    surroundings = {**os.environ, "PATH": f"{programs}{os.pathsep}{os.environ.get('PATH', os.defpath)}"}
    if found:
        surroundings["TANKSIDE_BROWSER"] = found
    elif browser.in_ci():
        raise browser.no_browser()
    if sys.argv[1:]:
        return passes([str(programs / "python"), "-m", "pytest", *sys.argv[1:]], surroundings)
    return run_all(programs, surroundings, with_browser=bool(found))


def run_all(programs: Path, surroundings: dict[str, str], *, with_browser: bool) -> int:
    """Run every gate, also after one has failed, and name those that did."""
    failed = []
    for gate in gates(programs, ROOT, with_browser=with_browser):
        say(f"\n== {gate.name}")
        if gate.not_run_because:
            say(f"NOT RUN: {gate.not_run_because}")
        elif passes(gate.command, {**surroundings, **gate.surroundings}):
            failed.append(gate.name)
    if failed:
        say(f"\nFailed: {', '.join(failed)}")
    return 1 if failed else 0


def passes(command: list[str], surroundings: dict[str, str]) -> int:
    """The exit code of one command, run at the root of the project."""
    return subprocess.run(command, cwd=ROOT, env=surroundings, check=False).returncode


if __name__ == "__main__":
    sys.exit(main())
