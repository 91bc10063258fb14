"""The set-up: one sentence where it cannot go on, nothing half-made, nothing fetched the second time."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from project import ROOT, bare_surroundings


@pytest.fixture
def checkout(tmp_path: Path) -> Path:
    """A fresh checkout, as far as the set-up needs it."""
    place = tmp_path / "a checkout"
    shutil.copytree(ROOT / "setup", place / "setup", ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("start", "test", "pyproject.toml"):
        shutil.copy(ROOT / name, place / name)
    return place


def start(checkout: Path, *arguments: str, **surroundings: str) -> subprocess.CompletedProcess[str]:
    """What `./start` does in that checkout, by the Python of this test."""
    return subprocess.run(
        ["./start", *arguments],
        cwd=checkout,
        env=bare_surroundings(**{"PYTHON": sys.executable, **surroundings}),
        capture_output=True,
        text=True,
        check=False,
    )


def in_set_up(checkout: Path, program: str) -> str:
    """What a program says that stands among the modules of the set-up."""
    told = subprocess.run(
        [sys.executable, "-c", program],
        cwd=checkout,
        env=bare_surroundings(PYTHONPATH=str(checkout / "setup")),
        capture_output=True,
        text=True,
        check=True,
    )
    return told.stdout.strip()


def made(checkout: Path) -> None:
    """Put an environment there whose `tankside` tells what it was called with."""
    programs = checkout / ".venv" / "bin"
    programs.mkdir(parents=True)
    (programs / "python").symlink_to(sys.executable)
    (programs / "tankside").write_text('#!/bin/sh\necho "tankside $*"\n', encoding="ascii")
    (programs / "tankside").chmod(0o755)
    stamp = in_set_up(checkout, "from environment import RUN; print(RUN.recipe())")
    (checkout / ".venv" / "made-from").write_text(stamp, encoding="ascii")


def test_the_second_start_fetches_nothing_and_says_nothing(checkout: Path) -> None:
    """It becomes `tankside start` with what was typed."""
    made(checkout)
    told = start(checkout, "--port", "9000", PIP_NO_INDEX="1")
    assert (told.stdout, told.stderr, told.returncode) == ("tankside start --port 9000\n", "", 0)


@pytest.mark.parametrize("changed", ["setup/run.lock", "setup/installer.lock", "pyproject.toml"])
def test_a_changed_recipe_is_set_up_again(checkout: Path, changed: str) -> None:
    """After an update the old environment does not count."""
    made(checkout)
    with (checkout / changed).open("a", encoding="utf-8") as file:
        file.write("\n")
    assert in_set_up(checkout, "from environment import RUN; print(RUN.is_made())") == "False"


def test_a_moved_checkout_is_set_up_again(checkout: Path) -> None:
    """The programs of an environment know where they lie."""
    made(checkout)
    moved = checkout.rename(checkout.with_name("moved"))
    assert in_set_up(moved, "from environment import RUN; print(RUN.is_made())") == "False"


def test_a_set_up_that_fails_says_so_and_leaves_no_stamp(checkout: Path) -> None:
    """Without an index it tells what it wanted, what failed and what to do."""
    told = start(checkout, PIP_NO_INDEX="1", PIP_CONFIG_FILE="/dev/null", UV_OFFLINE="1", PIP_FIND_LINKS="")
    assert told.returncode == 1
    assert "MB to fetch" in told.stderr
    assert "nothing half-made is kept" in told.stderr
    assert "Traceback" not in told.stderr
    assert not (checkout / ".venv" / "made-from").exists()


def test_without_venv_and_pip_one_sentence_says_what_to_install(checkout: Path) -> None:
    """Debian's bare python3 has neither."""
    program = (
        "import importlib.util, installing, plainly\n"
        "from pathlib import Path\n"
        "importlib.util.find_spec = lambda name: None\n"
        "try: installing.fresh(Path('.venv'))\n"
        "except installing.CannotSetUp as no: print(no)\n"
    )
    assert "apt-get install python3-venv" in in_set_up(checkout, program)


def test_without_python_one_sentence_says_what_to_install(checkout: Path, tmp_path: Path) -> None:
    """The wrappers themselves need nothing but a shell."""
    programs = tmp_path / "programs"
    programs.mkdir()
    for name in ("sh", "dirname"):
        (programs / name).symlink_to(shutil.which(name) or name)
    told = start(checkout, PYTHON="", PATH=str(programs))
    assert told.returncode == 1
    assert told.stderr == (
        "Tankside needs Python 3.11 or later; on Debian: apt-get install python3 python3-venv\n"
    )


def test_without_a_browser_and_the_right_to_install_one_there_is_none(checkout: Path, tmp_path: Path) -> None:
    """Nobody's machine is changed without being root or CI."""
    program = (
        "import os, browser\n"
        "os.geteuid = lambda: 1000\n"
        "os.environ.pop('CI', None), os.environ.pop('TANKSIDE_BROWSER', None)\n"
        f"os.environ['PATH'] = {str(tmp_path)!r}\n"
        "print(browser.find_or_install())\n"
    )
    (tmp_path / "apt-get").write_text("#!/bin/sh\necho called\n", encoding="ascii")
    (tmp_path / "apt-get").chmod(0o755)
    assert in_set_up(checkout, program) == "None"


def test_a_browser_that_is_named_but_not_there_is_told(checkout: Path) -> None:
    """A slip in the name must not quietly leave tests out."""
    program = (
        "import os, browser, installing\n"
        "os.environ['TANKSIDE_BROWSER'] = '/nowhere/chromium'\n"
        "try: browser.find_or_install()\n"
        "except installing.CannotSetUp as no: print(no)\n"
    )
    assert "TANKSIDE_BROWSER names /nowhere/chromium" in in_set_up(checkout, program)


def test_two_starts_wait_for_each_other(checkout: Path) -> None:
    """While one holds the lock another finds it held."""
    program = (
        "import fcntl\n"
        "from pathlib import Path\n"
        "from environment import only_one\n"
        "lock = Path('.venv.lock')\n"
        "with only_one(lock), lock.open() as other:\n"
        "    try: fcntl.flock(other, fcntl.LOCK_EX | fcntl.LOCK_NB)\n"
        "    except OSError: print('held')\n"
    )
    assert in_set_up(checkout, program) == "held"
