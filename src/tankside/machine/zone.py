"""The time zone this machine is set to, by its name in the zone database."""

from __future__ import annotations

import os
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

LOCALTIME = Path("/etc/localtime")
DATABASE = "zoneinfo/"


def zone_of_machine(localtime: Path = LOCALTIME) -> str:
    """The name of the zone; UTC where the machine does not say.

    A plan is a thing of one place, so its zone is kept by name: an offset alone would be wrong after the
    clocks change.
    """
    for name in (os.environ.get("TZ", "").lstrip(":"), _linked(localtime)):
        if name and _known(name):
            return name
    return "UTC"


def _linked(localtime: Path) -> str:
    """The zone that the machine's local time points at."""
    try:
        target = str(localtime.resolve(strict=True))
    except OSError:
        return ""
    return target.partition(DATABASE)[2]


def _known(name: str) -> bool:
    """Whether the zone database has it."""
    try:
        ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return False
    return True
