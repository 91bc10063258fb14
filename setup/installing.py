"""Makes one environment from its lock: by uv, which pip fetches first, or by pip alone."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path

CHECKED = ("--require-hashes", "--only-binary", ":all:")


class CannotSetUp(Exception):  # noqa: N818 - a plain no to the person, not an error of the program
    """Set-up cannot go on; the text says why and what to do."""


def make(folder: Path, lock: Path, installer_lock: Path, project: Path) -> None:
    """Empty `folder`, fill it with what `lock` pins, and put the project itself there as it lies."""
    pip = fresh(folder)
    try:
        fill_with_uv(folder, lock, installer_lock, pip)
    except (OSError, subprocess.CalledProcessError):
        print("uv could not be used here: going on with pip, which is slower.", file=sys.stderr, flush=True)
        run([*pip, "install", *CHECKED, "-r", str(lock)])
    run([*pip, "install", "--quiet", "--no-index", "--no-deps", "--no-build-isolation", "-e", str(project)])


def fresh(folder: Path) -> list[str]:
    """An empty environment in `folder`; returns the command of the pip that fills it."""
    venv = [sys.executable, "-m", "venv", "--clear"]
    python = str(folder / "bin" / "python")
    if importlib.util.find_spec("ensurepip"):
        run([*venv, str(folder)])
        return [python, "-m", "pip", "--disable-pip-version-check"]
    if importlib.util.find_spec("pip"):
        run([*venv, "--without-pip", str(folder)])
        return [sys.executable, "-m", "pip", "--disable-pip-version-check", "--python", python]
    raise CannotSetUp(
        f"This Python ({sys.executable}) has neither venv nor pip: "
        "install them (on Debian: apt-get install python3-venv) and start again."
    )


def fill_with_uv(folder: Path, lock: Path, installer_lock: Path, pip: list[str]) -> None:
    """Fetch uv itself by pip, checked by its hash, then everything else by uv."""
    run([*pip, "install", "--quiet", *CHECKED, "-r", str(installer_lock)])
    uv = str(folder / "bin" / "uv")
    python = str(folder / "bin" / "python")
    # The certificates that this machine trusts, as pip uses them too.
    install = [uv, "--system-certs", "pip", "install", "--python", python, "--compile-bytecode"]
    run([*install, *CHECKED, "-r", str(lock)])


def run(command: list[str]) -> None:
    """Run one step with its own progress on the terminal; a failed step raises."""
    subprocess.run(command, check=True)
