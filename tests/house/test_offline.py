"""With the loopback as its only network a second start answers every page, the demo's too."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from shutil import which

from house.offline_child import PAGES
from project import SOURCE, bare_surroundings

CHILD = Path(__file__).with_name("offline_child.py")


def network_of_its_own() -> list[str]:
    """The words that give a process a network with nothing but a loopback; none where that is not allowed.

    Without them a watch inside the process still tells whoever reaches out, so the test asks the same.
    """
    if which("unshare") is None:
        return []
    alone = ["unshare", "--map-root-user", "--net"]
    return alone if subprocess.run([*alone, "true"], capture_output=True, check=False).returncode == 0 else []


def test_every_page_is_there_without_a_network(tmp_path: Path) -> None:
    """The first start lays the folder out; the second is the one that is looked at."""
    alone = network_of_its_own()
    for _ in ("first", "second"):
        done = subprocess.run(
            [*alone, sys.executable, str(CHILD), str(tmp_path), "alone" if alone else "watched"],
            env=bare_surroundings(PYTHONPATH=str(SOURCE), PYTHONUNBUFFERED="1"),
            capture_output=True,
            text=True,
            check=False,
            timeout=120,
        )
        assert 0 == done.returncode, done.stderr
        assert "" == done.stderr
    expected = [f"200 {house}{page}" for house in ("", "/demo") for page in PAGES]
    assert expected == done.stdout.splitlines()
