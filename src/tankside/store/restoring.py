"""From a backup to a database again; what stood there before is moved aside, never written over."""

from __future__ import annotations

import json
import os
import zipfile
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from pathlib import Path
from typing import Any

from tankside.core.refusals import Refused, refuse
from tankside.store.backup import DATABASE, LISTING, PICTURES, check_whole, room_beside, sync_folder
from tankside.store.schema import SCHEMA, look_at_header

COMPANIONS = ("-journal", "-wal", "-shm")


@dataclass(frozen=True, slots=True)
class Restored:
    """What was brought back, and where the earlier database was moved, if there was one."""

    file: Path
    photographs: int
    moved_aside: Path | None


def restore(backup: Path, database: Path, photographs: Path, now: datetime, *, aside: bool) -> Restored:
    """Bring `backup` back as `database`; an existing one is refused, or with `aside` kept under a new name.

    Everything is unpacked and checked before anything is moved. Photographs are added, never replaced.
    """
    if not backup.is_file():
        raise refuse("no-such-backup", ways_on=("another-backup",), file=str(backup))
    if database.exists() and not aside:
        raise refuse("restore-would-overwrite", ways_on=("move-aside",), file=str(database))
    with room_beside(database) as room:
        listing = _unpack(backup, room)
        copy = room / DATABASE
        look_at_header(copy)
        check_whole(copy)
        brought = _add_pictures(room, listing["photographs"], photographs)
        moved = _move_aside(database, now) if database.exists() else None
        copy.replace(database)
        sync_folder(database.parent)
    return Restored(database, brought, moved)


def _unpack(backup: Path, room: Path) -> dict[str, Any]:
    """Unpack what the list names and nothing else, each part held to its hash."""
    try:
        with zipfile.ZipFile(backup) as archive:
            listing: dict[str, Any] = json.loads(archive.read(LISTING))
            if listing["schema"] > SCHEMA:
                raise refuse(
                    "store-newer",
                    ways_on=("update-the-program",),
                    file=str(backup),
                    schema=listing["schema"],
                    known=SCHEMA,
                )
            _lay_down(room / DATABASE, archive.read(DATABASE), listing["database"]["sha256"])
            for name in listing["photographs"]:
                _lay_down(room / _plain(name), archive.read(PICTURES + name), name)
    except Refused:
        raise
    except (zipfile.BadZipFile, KeyError, ValueError, TypeError, EOFError) as error:
        raise refuse("backup-damaged", ways_on=("another-backup",), file=str(backup)) from error
    return listing


def _plain(name: str) -> str:
    """A hash and nothing else: a name from a file may not lead out of the folder."""
    if len(name) != 64 or not set(name) <= set("0123456789abcdef"):
        raise ValueError(name)
    return name


def _lay_down(file: Path, content: bytes, expected: str) -> None:
    if sha256(content).hexdigest() != expected:
        raise ValueError(f"{file.name} is not what the list says")
    with file.open("wb") as stream:
        stream.write(content)
        stream.flush()
        os.fsync(stream.fileno())


def _add_pictures(room: Path, names: list[str], photographs: Path) -> int:
    photographs.mkdir(parents=True, exist_ok=True)
    missing = [name for name in names if not (photographs / name).exists()]
    for name in missing:
        (room / name).replace(photographs / name)
    return len(missing)


def _move_aside(database: Path, now: datetime) -> Path:
    """Rename the database with its journals, so that they stay together and can be opened again."""
    stem = f"{database.stem}-before-{now:%Y%m%d-%H%M%S}"
    taken = 0
    while (aside := database.with_name(f"{stem}{f'-{taken}' if taken else ''}{database.suffix}")).exists():
        taken += 1
    database.replace(aside)
    for companion in COMPANIONS:
        beside = database.with_name(database.name + companion)
        if beside.exists():
            beside.replace(aside.with_name(aside.name + companion))
    return aside
