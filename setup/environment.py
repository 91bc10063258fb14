"""The two environments of Tankside, one to run it and one to test it: made once, then used offline.

Only the standard library is at hand here. The stamp is written last, so that a set-up that was broken off
is done again; a lock keeps two from being made at once.
"""

from __future__ import annotations

import hashlib
import sys
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import installing

ROOT = Path(__file__).resolve().parent.parent
HERE = ROOT / "setup"


@dataclass(frozen=True)
class Environment:
    """One environment: its lock names each package with its hash, its folder holds them."""

    name: str
    folder: Path

    @property
    def lock(self) -> Path:
        """The hash-pinned list of what goes in."""
        return HERE / f"{self.name}.lock"

    @property
    def programs(self) -> Path:
        """The folder of its commands."""
        return self.folder / "bin"

    @property
    def stamp(self) -> Path:
        """Written last; says from what the environment was made."""
        return self.folder / "made-from"

    def recipe(self) -> str:
        """What the environment is made from, as one hash: the locks, this Python and this place."""
        parts = [self.lock, HERE / "installer.lock", ROOT / "pyproject.toml"]
        digest = hashlib.sha256(f"{sys.version}\n{ROOT}\n".encode())
        for part in parts:
            digest.update(part.read_bytes())
        return digest.hexdigest()

    def is_made(self) -> bool:
        """True if nothing has to be fetched or made."""
        return (
            self.stamp.is_file()
            and self.stamp.read_text(encoding="ascii") == self.recipe()
            and (self.programs / "python").exists()
        )

    def announcement(self) -> str:
        """What will be fetched, and about how much."""
        size = tomllib.loads((HERE / "sizes.toml").read_text(encoding="utf-8"))[self.name]
        return (
            f"Setting up Tankside, once: up to {size['packages']} packages, about {size['fetched_mb']} MB "
            f"to fetch and {size['kept_mb']} MB on disk.\nEach is checked against setup/{self.lock.name}; "
            f"all go to {self.folder.name}/, and deleting that folder undoes it."
        )


RUN = Environment("run", ROOT / ".venv")
TEST = Environment("test", ROOT / ".venv-test")


def prepare(environment: Environment) -> Path:
    """The folder of the environment's commands, after making whatever is missing."""
    with only_one(environment.folder.with_name(f"{environment.folder.name}.lock")):
        if not environment.is_made():
            say(environment.announcement())
            installing.make(environment.folder, environment.lock, HERE / "installer.lock", ROOT)
            environment.stamp.write_text(environment.recipe(), encoding="ascii")
            say("Set up.")
    return environment.programs


@contextmanager
def only_one(lock: Path) -> Iterator[None]:
    """Hold `lock` while this process makes an environment; wait, and say so, if another does."""
    import fcntl  # noqa: PLC0415 - not on every system

    with lock.open("w", encoding="ascii") as file:
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            say("Another start is setting Tankside up; waiting for it.")
            fcntl.flock(file, fcntl.LOCK_EX)
        yield


def say(sentence: str) -> None:
    """Tell the person at the terminal, in order with what child programs print."""
    print(sentence, file=sys.stderr, flush=True)
