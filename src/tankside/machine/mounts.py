"""Which file system a path lies on, from the kernel's table of mounts."""

from __future__ import annotations

import re
from pathlib import Path, PurePosixPath
from typing import NamedTuple

MOUNTS = Path("/proc/mounts")
NETWORK = frozenset(
    {
        "9p",
        "afs",
        "beegfs",
        "ceph",
        "cifs",
        "davfs",
        "fuse.davfs2",
        "fuse.gvfsd-fuse",
        "fuse.glusterfs",
        "fuse.rclone",
        "fuse.s3fs",
        "fuse.sshfs",
        "glusterfs",
        "lustre",
        "ncpfs",
        "nfs",
        "nfs4",
        "smb3",
        "smbfs",
        "sshfs",
    }
)


class Mount(NamedTuple):
    """One mounted file system: where, and of what kind."""

    point: PurePosixPath
    kind: str


def read_mounts(table: str) -> list[Mount]:
    r"""The mounts of a table in the kernel's own form; blanks in names are written there as \040.

    >>> read_mounts("nas:/films /mnt/the\\040films nfs4 rw,relatime 0 0")
    [Mount(point=PurePosixPath('/mnt/the films'), kind='nfs4')]
    """
    rows = [line.split() for line in table.splitlines()]
    return [Mount(PurePosixPath(_unescaped(row[1])), row[2]) for row in rows if len(row) > 2]


def mount_of(path: PurePosixPath, mounts: list[Mount]) -> Mount | None:
    """The mount that `path` (absolute) lies on: the deepest point above it, the later of two on one point."""
    above = [
        (len(mount.point.parts), place, mount)
        for place, mount in enumerate(mounts)
        if path.is_relative_to(mount.point)
    ]
    return max(above)[2] if above else None


def network_kind(path: Path, table: Path = MOUNTS) -> str | None:
    """The kind of network drive that `path` lies on; None on a local disk or where it cannot be told."""
    try:
        mounts = read_mounts(table.read_text(encoding="utf-8", errors="surrogateescape"))
    except OSError:
        return None
    mount = mount_of(PurePosixPath(path.resolve()), mounts)
    return mount.kind if mount and mount.kind in NETWORK else None


def _unescaped(name: str) -> str:
    return re.sub(r"\\([0-7]{3})", lambda octal: chr(int(octal[1], 8)), name)
