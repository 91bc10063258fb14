"""The folder that holds what the person keeps, and the demo in a file of its own."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tankside.core.refusals import refuse
from tankside.machine.mounts import MOUNTS, network_kind


@dataclass(frozen=True, slots=True)
class DataFolder:
    """Where everything lies that belongs to one person on this machine."""

    path: Path

    @property
    def own(self) -> Path:
        """The person's own rolls, bottles and runs."""
        return self.path / "tankside.db"

    @property
    def demo(self) -> Path:
        """The invented evening and season; never mixed with the person's own."""
        return self.path / "demo.db"

    @contextmanager
    def served_at(self, address: str) -> Iterator[None]:
        """Hold the folder for one server at `address`; a second is refused and told where the first is."""
        import fcntl  # noqa: PLC0415 - not on every system

        with (self.path / "served-at").open("a+", encoding="utf-8") as note:
            try:
                fcntl.flock(note, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except OSError:
                note.seek(0)
                raise refuse("already-served", address=note.read().strip(), folder=str(self.path)) from None
            note.truncate(0)
            note.write(f"{address}\n")
            note.flush()
            yield


def open_data_folder(chosen: Path | None = None, *, mounts: Path = MOUNTS) -> DataFolder:
    """The folder at `chosen`, else the usual one of this system, made if need be.

    Databases on network drives are corrupted by locks that do not hold, so such a folder is refused.
    """
    path = (chosen or usual_folder()).expanduser().resolve()
    kind = network_kind(path, mounts)
    if kind:
        raise refuse(
            "data-folder-on-network", folder=str(path), file_system=kind, ways_on=("other-data-folder",)
        )
    try:
        path.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        reason = error.strerror or str(error)
        raise refuse(
            "no-data-folder", folder=str(path), reason=reason, ways_on=("other-data-folder",)
        ) from error
    return DataFolder(path)


def usual_folder() -> Path:
    """Where this system keeps the data of programs."""
    import platformdirs  # noqa: PLC0415 - only when asked

    return platformdirs.user_data_path("tankside", appauthor=False)
