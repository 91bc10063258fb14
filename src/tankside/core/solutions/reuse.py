"""Developer used again: by its leaflet's own table or not at all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tankside.core.refusals import refuse


@dataclass(frozen=True, slots=True)
class ReuseRow:
    """Up to `units_per_l` of film (80 in2) a litre the time is `times` the printed one, plus `added_s`."""

    units_per_l: float
    times: float = 1.0
    added_s: float = 0.0


def time_when_reused(
    time_s: float, *, used_units: float, next_units: float, bath_ml: float, table: Sequence[ReuseRow]
) -> float:
    """The time in s for the next film in a bath that has taken `used_units`, by the leaflet's own `table`.

    Result: s. Past the table, or without one, there is no number: refused.
    Own model: docs/science/keeping: the table is read as steps, as leaflets print it. Doubt: that of the
    leaflet; it restores contrast, not speed.

    >>> table = (ReuseRow(4), ReuseRow(8, added_s=60), ReuseRow(12, added_s=120))
    >>> time_when_reused(420, used_units=5, next_units=1, bath_ml=1000, table=table)
    480.0
    """
    if not table:
        raise refuse("reuse-without-a-table", ways_on=("use-it-once",))
    if not 50 <= bath_ml <= 20_000 or next_units <= 0 or used_units < 0:
        raise refuse("reuse-out-of-range", volume_ml=bath_ml)
    reached = (used_units + next_units) / (bath_ml / 1000)
    row = next((one for one in table if reached <= one.units_per_l + 1e-9), None)
    if row is None:
        most = table[-1].units_per_l * bath_ml / 1000
        raise refuse(
            "developer-past-its-table", ways_on=("mix-fresh",), most_rolls=most, used_rolls=used_units
        )
    return time_s * row.times + row.added_s
