"""One exposed film, piece of one, or set of sheets, waiting or done."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal
from uuid import UUID

from tankside.core.rolls.formats import Format

Grain = Literal["cubic", "tabular", "unknown"]
Standing = Literal["waiting", "in the tank", "done", "lost"]


@dataclass(frozen=True, slots=True)
class Film:
    """A kind of film, by generic or the user's own name."""

    name: str
    grain: Grain = "unknown"


@dataclass(frozen=True, slots=True)
class Roll:
    """One roll: `code` is on its sticker, `index` the exposure index, `piece_of` the roll it was cut from."""

    key: UUID
    code: str
    film: Film
    format: Format
    index: float
    camera: str = ""
    owner: str = ""
    precious: bool = False
    piece_of: UUID | None = None
    exposed: date | None = None
    notes: str = ""
    standing: Standing = "waiting"
