"""Photographs: what they show in the database, the pictures themselves in a folder by their hash."""

from __future__ import annotations

import os
from dataclasses import asdict
from hashlib import sha256
from pathlib import Path
from uuid import UUID

from sqlalchemy import select
from sqlalchemy.dialects.sqlite import insert

from tankside.core.refusals import refuse
from tankside.store.connection import Database
from tankside.store.tables.desk import PHOTOGRAPHS
from tankside.workflows.records import Photograph


def photographs_beside(database: Path) -> Path:
    """The folder of pictures that belongs to a database."""
    return database.parent / "photographs"


class StoredPhotographs:
    """Photographs by what they show; the picture is on the disk before its row says so."""

    def __init__(self, database: Database, folder: Path) -> None:
        self._database = database
        self._folder = folder

    def of(self, about: UUID) -> tuple[Photograph, ...]:
        """Those attached to one thing, the earliest first."""
        which = select(PHOTOGRAPHS).where(PHOTOGRAPHS.c.about == about)
        with self._database.reading() as connection:
            found = connection.execute(which.order_by(PHOTOGRAPHS.c.kept, PHOTOGRAPHS.c.sha256)).mappings()
            return tuple(Photograph(**row) for row in found)

    def keep(self, photograph: Photograph, picture: bytes) -> None:
        """Keep the picture and what it shows; keeping it twice changes nothing."""
        if sha256(picture).hexdigest() != photograph.sha256 or len(picture) != photograph.size_bytes:
            raise ValueError("a photograph's hash and size must be those of its picture")
        self._lay_down(self._folder / photograph.sha256, picture)
        with self._database.writing() as connection:
            connection.execute(insert(PHOTOGRAPHS).values(asdict(photograph)).on_conflict_do_nothing())

    def picture(self, sha256: str) -> bytes | None:
        """The picture itself."""
        file = self._folder / sha256
        return file.read_bytes() if file.is_file() else None

    def _lay_down(self, file: Path, picture: bytes) -> None:
        """Write beside, sync, then rename: a picture is whole under its name or not there."""
        if file.is_file():
            return
        self._folder.mkdir(parents=True, exist_ok=True)
        beside = file.with_suffix(".part")
        try:
            with beside.open("wb") as stream:
                stream.write(picture)
                stream.flush()
                os.fsync(stream.fileno())
            beside.replace(file)
        except OSError as error:
            beside.unlink(missing_ok=True)
            raise refuse("disk-write-failed", ways_on=("free-some-room",), file=str(file)) from error
