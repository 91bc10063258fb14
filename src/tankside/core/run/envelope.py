"""The envelope around what happened: who noted it, when it happened and when it was recorded."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal
from uuid import UUID

from tankside.core.run.events import Body
from tankside.core.run.instants import Instant

How = Literal["tapped", "queued", "said", "scanned", "probe", "advised"]


@dataclass(frozen=True, slots=True)
class Event:
    """One row of the run log; `id` is the command's id, a slash and its place among that command's events.

    `seq` rises by one within `run` from 1. `within_s` is how far off `happened` may be.
    """

    run: UUID
    seq: int
    id: str
    tankful: str | None
    happened: Instant
    recorded: Instant
    device: str
    how: How
    within_s: float
    body: Body

    @property
    def kind(self) -> str:
        """The kind of its body, as stored."""
        return self.body.kind

    @property
    def version(self) -> int:
        """The version of its body, as stored."""
        return self.body.version
