"""A backup is one zip file that any computer opens: the database, its photographs, and a list of both."""

from __future__ import annotations

import json
import os
import sqlite3
import tempfile
import zipfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from pathlib import Path

from tankside.core.refusals import refuse
from tankside.store.schema import SCHEMA, look_at_header
from tankside.store.troubles import told_plainly

DATABASE = "tankside.db"
LISTING = "backup.json"
PICTURES = "photographs/"


@dataclass(frozen=True, slots=True)
class BackedUp:
    """Where the backup lies, how large it is, and how much is in it."""

    file: Path
    size_bytes: int
    photographs: int
    schema: int


def back_up(database: Path, photographs: Path, to: Path, made: datetime) -> BackedUp:
    """Write everything into the zip file `to`, which must not exist; it is whole under its name or not there.

    The copy is taken by `VACUUM INTO` while the program may go on writing, and checked before it is packed.
    """
    if to.exists():
        raise refuse("backup-exists", ways_on=("another-name",), file=str(to))
    if not database.exists():
        raise refuse("nothing-to-back-up", file=str(database))
    look_at_header(database)
    with room_beside(to) as room:
        copy = room / DATABASE
        with told_plainly(str(database)), closing(_looking_at(database)) as connection:
            connection.execute("VACUUM INTO ?", (str(copy),))
        check_whole(copy)
        pictures = sorted(photographs.glob("[0-9a-f]" * 64)) if photographs.is_dir() else []
        packed = room / "packed.zip"
        _pack(packed, copy, pictures, made)
        packed.replace(to)
        sync_folder(to.parent)
    return BackedUp(to, to.stat().st_size, len(pictures), SCHEMA)


@contextmanager
def room_beside(file: Path) -> Iterator[Path]:
    """A folder on the same disk as `file`, gone afterwards; what the disk refuses is told plainly."""
    try:
        with tempfile.TemporaryDirectory(dir=file.parent, prefix=".tankside-") as room:
            yield Path(room)
    except OSError as error:
        reason = error.strerror or str(error)
        raise refuse(
            "backup-not-written", ways_on=("another-name",), file=str(file), reason=reason
        ) from error


def _looking_at(database: Path) -> sqlite3.Connection:
    return sqlite3.connect(f"{database.resolve().as_uri()}?mode=ro", uri=True, isolation_level=None)


def check_whole(database: Path) -> None:
    with told_plainly(str(database)), closing(_looking_at(database)) as connection:
        if connection.execute("PRAGMA integrity_check(1)").fetchone() != ("ok",):
            raise refuse("store-damaged", ways_on=("restore-a-backup",), file=str(database))


def _pack(packed: Path, copy: Path, pictures: list[Path], made: datetime) -> None:
    listing = {
        "program": "tankside",
        "made": made.isoformat(),
        "schema": SCHEMA,
        "database": {"name": DATABASE, "sha256": sha256(copy.read_bytes()).hexdigest()},
        "photographs": [picture.name for picture in pictures],
    }
    with packed.open("wb") as stream:
        with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
            archive.writestr(LISTING, json.dumps(listing, indent=1))
            archive.write(copy, DATABASE)
            for picture in pictures:
                archive.write(picture, PICTURES + picture.name, zipfile.ZIP_STORED)
        stream.flush()
        os.fsync(stream.fileno())


def sync_folder(folder: Path) -> None:
    """Make a rename last through a power cut; not every system lets one open a folder."""
    if os.name == "posix":
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
