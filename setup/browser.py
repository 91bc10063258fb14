"""Finds Chromium for the browser tests, or installs Debian's where that is allowed."""

from __future__ import annotations

import os
import shutil
import subprocess

from environment import say
from installing import CannotSetUp

NAMES = ("chromium", "chromium-browser")


def find_or_install() -> str | None:
    """The path of Chromium, or None where there is none and installing it is not ours to do."""
    found = find()
    if found or not may_install():
        return found
    say("Installing Debian's chromium for the browser tests: about 100 MB to fetch.")
    for step in (["update"], ["install", "-y", "--no-install-recommends", "chromium"]):
        subprocess.run(
            [*as_root(), "apt-get", "-q", *step],
            env={**os.environ, "DEBIAN_FRONTEND": "noninteractive"},
            check=False,
        )
    return find()


def find() -> str | None:
    """Chromium by TANKSIDE_BROWSER, else on PATH."""
    named = os.environ.get("TANKSIDE_BROWSER")
    if named:
        found = shutil.which(named)
        if not found:
            raise CannotSetUp(f"TANKSIDE_BROWSER names {named}, and no such program is there.")
        return found
    return next((path for name in NAMES if (path := shutil.which(name))), None)


def may_install() -> bool:
    """True as root or in CI, on a machine with apt."""
    return shutil.which("apt-get") is not None and (os.geteuid() == 0 or in_ci())


def as_root() -> list[str]:
    """What goes before a command that needs root."""
    return [] if os.geteuid() == 0 else ["sudo", "-n"]


def in_ci() -> bool:
    """True where nobody sits at the terminal and nothing may be left out."""
    return os.environ.get("CI") == "true"


def no_browser() -> CannotSetUp:
    """The sentence for a run that may not go on without a browser."""
    return CannotSetUp("The browser tests need Chromium: install it, or name it in TANKSIDE_BROWSER.")
