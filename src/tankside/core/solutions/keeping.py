"""How long a solution keeps: the published time for a full or part-full bottle is the rule."""

from __future__ import annotations

from calendar import monthrange
from dataclasses import dataclass
from datetime import date

from tankside.core.refusals import refuse
from tankside.core.sources import Provenance

PART_FULL_SHARE = 0.9
"""Below this share of its bottle a solution counts as part full (ours)."""


@dataclass(frozen=True, slots=True)
class KeepingTime:
    """Months that a solution keeps in a full bottle, and once its bottle is part full; None is not known."""

    full_months: int
    part_full_months: int | None
    provenance: Provenance


def months_after(day: date, months: int) -> date:
    """The same day of the month, `months` later; the last of a shorter month.

    Source: the Gregorian calendar. Doubt: none.

    >>> months_after(date(2026, 3, 1), 6), months_after(date(2025, 12, 31), 2)
    (datetime.date(2026, 9, 1), datetime.date(2026, 2, 28))
    """
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))


def is_part_full(*, ml: float, holds_ml: float) -> bool:
    """Whether a bottle of `holds_ml` with `ml` in it counts as part full.

    Own model: docs/science/keeping. Doubt: the line is ours.

    >>> is_part_full(ml=250, holds_ml=250), is_part_full(ml=125, holds_ml=250)
    (False, True)
    """
    if not 0 < holds_ml <= 20_000 or ml < 0:
        raise refuse("bottle-volume-out-of-range", volume_ml=holds_ml)
    return ml < PART_FULL_SHARE * holds_ml


def good_until(made: date, keeping: KeepingTime, *, part_full_since: date | None = None) -> date:
    """The last day by the published keeping time: of the full bottle, or sooner once it is part full.

    Own model: docs/science/keeping; the months are those of the leaflet. Doubt: weeks either way; warmth
    shortens it, and an ascorbate developer can die before.

    >>> rule = KeepingTime(6, 2, Provenance("from memory"))
    >>> good_until(date(2026, 3, 1), rule, part_full_since=date(2026, 4, 20))
    datetime.date(2026, 6, 20)
    """
    full = months_after(made, keeping.full_months)
    if part_full_since is None or keeping.part_full_months is None:
        return full
    return min(full, months_after(part_full_since, keeping.part_full_months))
