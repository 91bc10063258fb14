"""All that is known of one film in one developer at one dilution."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal
from uuid import UUID

from tankside.core.agitation.patterns import Agitation
from tankside.core.development.rate import TimeRule
from tankside.core.solutions.notation import Dilution

RowSource = Literal["leaflet", "own", "accepted"]
TankKind = Literal["plastic", "steel"]
TimingConvention = Literal["pour-in to pour-out", "filled to pour-out"]


@dataclass(frozen=True, slots=True)
class TimeRow:
    """One printed or accepted time: `time_s` at `temp_c` for exposure index `index`.

    `replaces` points at the row that an accepted correction supersedes; that row is kept.
    """

    key: UUID
    time_s: float
    temp_c: float
    index: float
    source: RowSource
    words: str
    noted: date
    contrast: float | None = None
    replaces: UUID | None = None


@dataclass(frozen=True, slots=True)
class Combination:
    """Film and developer at exact parts, with one agitation in one kind of tank by one convention."""

    key: UUID
    film: str
    developer: str
    dilution: Dilution
    agitation: Agitation
    tank: TankKind
    convention: TimingConvention
    time_rule: TimeRule
    rows: tuple[TimeRow, ...]
    least_stock_ml: float | None = None
    """Least stock for one unit of film area, from the leaflet; None when unknown."""
    hydroquinone: bool | None = None
    """Whether the developer holds hydroquinone, which hardly works below 16 C; None when nobody has said."""
