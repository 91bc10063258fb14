"""How long a solution keeps: the published time for a full or part-full bottle is the rule."""

from __future__ import annotations

from calendar import monthrange
from dataclasses import dataclass
from datetime import date

from tankside.core.refusals import refuse
from tankside.core.solutions.kinds import SolutionKind
from tankside.core.sources import Provenance

MOST_MONTHS = 60
PART_FULL_SHARE = 0.9
"""Below this share of its bottle a solution counts as part full (ours)."""


@dataclass(frozen=True, slots=True)
class KeepingTime:
    """Months that a solution keeps in a full bottle, and once its bottle is part full; None is not known."""

    full_months: int
    part_full_months: int | None
    provenance: Provenance


WORKING_FIXER = KeepingTime(2, None, Provenance("published", "anchell-2008", "p. 108"))
"""A fixer of working strength; less above 29 C."""


def printed_keeping(kind: SolutionKind, *, working: bool) -> KeepingTime | None:
    """How long a kind of solution keeps where that was printed for the kind; None: its leaflet is asked.

    Source: Anchell 2008, p. 108 for a working fixer. Doubt: less in the warm.

    >>> printed_keeping("fixer", working=True).full_months, printed_keeping("developer", working=False)
    (2, None)
    """
    return WORKING_FIXER if kind == "fixer" and working else None


def by_leaflet(full_months: int, part_full_months: int | None) -> KeepingTime:
    """A keeping time as the person read it on the leaflet: 1 to 60 months full, no more once part full.

    Own model: docs/science/keeping. Doubt: that of the leaflet.

    >>> by_leaflet(6, 2).provenance.told
    'own, typed from its leaflet'
    """
    if not 1 <= full_months <= MOST_MONTHS:
        raise refuse("keeping-out-of-range", at="full_months", months=full_months, most=MOST_MONTHS)
    if part_full_months is not None and not 0 < part_full_months <= full_months:
        raise refuse("keeping-out-of-range", at="part_months", months=part_full_months, most=full_months)
    return KeepingTime(full_months, part_full_months, Provenance("own", at="typed from its leaflet"))


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
