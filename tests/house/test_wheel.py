"""The wheel holds all that the package needs, and works installed."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest
from project import PACKAGE, ROOT, SOURCE, bare_surroundings

from tankside import __version__


def run(*command: str | Path, cwd: Path = ROOT) -> str:
    """What a command prints; it must end well."""
    told = subprocess.run(
        command, cwd=cwd, env=bare_surroundings(), capture_output=True, text=True, check=False
    )
    assert told.returncode == 0, told.stdout + told.stderr
    return told.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built without a network."""
    folder = tmp_path_factory.mktemp("wheel")
    run(sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", folder)
    (built,) = folder.glob("*.whl")
    return built


def test_every_file_of_the_package_is_in_the_wheel(wheel: Path) -> None:
    """Templates, styles and the catalogue too."""
    files = {str(file.relative_to(SOURCE)) for file in PACKAGE.rglob("*") if file.is_file()}
    wanted = {file for file in files if "__pycache__" not in file}
    assert wanted - set(zipfile.ZipFile(wheel).namelist()) == set()


def test_nothing_but_the_package_is_in_the_wheel(wheel: Path) -> None:
    """No tests, no set-up, nothing of this machine."""
    tops = {name.split("/")[0] for name in zipfile.ZipFile(wheel).namelist()}
    assert tops == {"tankside", f"tankside-{__version__}.dist-info"}


def test_the_installed_command_tells_its_version(wheel: Path, tmp_path: Path) -> None:
    """In an environment of its own, which borrows this one's libraries but not this source."""
    home = tmp_path / "environment"
    run(sys.executable, "-m", "venv", "--without-pip", home)
    python = home / "bin" / "python"
    run(*installer(python), "--no-index", "--no-deps", wheel)
    site = Path(run(python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))").strip())
    (site / "borrowed.pth").write_text(sysconfig.get_path("purelib"), encoding="utf-8")
    assert __version__ in run(home / "bin" / "tankside", "--version", cwd=tmp_path)
    assert run(python, "-c", "import tankside; print(tankside.__file__)", cwd=tmp_path).startswith(str(site))


def installer(python: Path) -> list[str]:
    """pip or uv, whichever this environment has, installing for `python`."""
    if importlib.util.find_spec("pip"):
        return [sys.executable, "-m", "pip", "--python", str(python), "install", "--quiet"]
    return [str(Path(sys.executable).with_name("uv")), "pip", "install", "--python", str(python)]
