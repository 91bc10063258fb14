"""For maintainers: make the locks again from pyproject.toml and measure what they fetch.

    .venv-test/bin/python setup/make_locks.py [--upgrade] [--exclude-newer DATE]

Locks hold names, versions and hashes, never an address, so that they work with any package index.
The sizes are those of the wheels for this machine and of the environments made from them.
"""

from __future__ import annotations

import re
import subprocess
import sys
import tempfile
from pathlib import Path

import installing
from environment import HERE, ROOT, RUN, TEST, Environment, say

COMPILE = ["pip", "compile", "-q", "--universal", "--python-version", "3.11"]
BARE = ["--generate-hashes", "--no-header", "--no-annotate", "--only-binary", ":all:"]


def main(options: list[str]) -> None:
    """Write the three locks and the sizes."""
    uv = str(Path(sys.executable).with_name("uv"))
    make = [uv, *COMPILE, *BARE, *options]
    project = str(ROOT / "pyproject.toml")
    subprocess.run(
        [*make, "-o", str(HERE / "installer.lock"), "-"], input="uv\n", text=True, check=True, cwd=ROOT
    )
    editable = ["--group", "editable"]
    subprocess.run([*make, "-o", str(RUN.lock), project, *editable], check=True, cwd=ROOT)
    # The test versions may not differ from those that run.
    same = ["-c", str(RUN.lock), "--group", "test"]
    subprocess.run([*make, "-o", str(TEST.lock), project, *editable, *same], check=True, cwd=ROOT)
    write_sizes()


def write_sizes() -> None:
    """Fetch and install each environment once in a scratch folder and write down what it took."""
    lines = ["# Written by make_locks.py: megabytes fetched and kept on the machine that made the locks."]
    for environment in (RUN, TEST):
        say(f"Measuring {environment.name}.")
        packages, fetched_mb, kept_mb = measured(environment)
        lines += [f"[{environment.name}]", f"packages = {packages}"]
        lines += [f"fetched_mb = {fetched_mb}", f"kept_mb = {kept_mb}"]
    (HERE / "sizes.toml").write_text("\n".join(lines) + "\n", encoding="utf-8")


def measured(environment: Environment) -> tuple[int, int, int]:
    """Packages, megabytes fetched and megabytes kept."""
    with tempfile.TemporaryDirectory() as scratch:
        wheels, folder = Path(scratch, "wheels"), Path(scratch, "environment")
        pip = [*installing.fresh(folder), "download", "-q", *installing.CHECKED, "-d", str(wheels)]
        for lock in (HERE / "installer.lock", environment.lock):
            installing.run([*pip, "-r", str(lock)])
        installing.make(folder, environment.lock, HERE / "installer.lock", ROOT)
        return len(pinned(environment.lock)) + 1, megabytes(wheels), megabytes(folder)


def pinned(lock: Path) -> list[str]:
    """The names that a lock pins."""
    return re.findall(r"^([A-Za-z0-9._-]+)(?:\[[^]]*\])?==", lock.read_text(encoding="utf-8"), re.MULTILINE)


def megabytes(folder: Path) -> int:
    """The size of all files under `folder`, rounded to 5 MB."""
    size = sum(file.stat().st_size for file in folder.rglob("*") if file.is_file() and not file.is_symlink())
    return max(5, round(size / 5e6) * 5)


if __name__ == "__main__":
    main(sys.argv[1:])
