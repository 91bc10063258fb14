"""Six answers, and everything else assumed: the shortest way from a roll to a plan."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Grain
from tankside.core.solutions.notation import Dilution


@dataclass(frozen=True, slots=True)
class SixAnswers:
    """What a first evening asks.

    Film and format; exposure index; developer and dilution as printed; time (s) and temperature (C) as
    printed; the tank's volume (mL); what the developer reads now (C; None while it is not mixed).
    `from_leaflet` is false for a time of one's own.
    """

    film: str
    format: Format
    index: float
    developer: str
    dilution: Dilution
    time_s: float
    temp_c: float
    tank_ml: float
    reads_c: float | None
    grain: Grain = "unknown"
    from_leaflet: bool = True
    precious: bool = False
    least_stock_ml: float | None = None
