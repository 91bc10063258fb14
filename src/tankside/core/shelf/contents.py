"""What one bottle holds, by volume, film and dates: decanted, merged, and until when it is good."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from tankside.core.refusals import refuse
from tankside.core.shelf.accounts import LEAST_ML
from tankside.core.solutions.keeping import KeepingTime, good_until, is_part_full


@dataclass(frozen=True, slots=True)
class Contents:
    """`ml` in a bottle of `holds_ml`, the film they took (`area_units`, 80 in2 each), and their dates.

    `counted_units` is that film as this bath counts it (a fixer counts slow film half as much again).
    `part_full_since` is the day from which the bottle stood part full, None while it is full.
    """

    ml: float
    holds_ml: float
    area_units: float
    made: date
    part_full_since: date | None = None
    contaminated: bool = False
    counted_units: float = 0.0

    @property
    def units_per_l(self) -> float:
        """Film a litre, which is what limits are counted by."""
        return 1000 * self.area_units / self.ml if self.ml else 0.0


def decanted(from_: Contents, bottles: Sequence[tuple[float, float]], *, on: date) -> tuple[Contents, ...]:
    """The contents after pouring from one bottle into `bottles` (mL poured, mL the bottle holds).

    Each gets its share of the area, so area per litre and dates are copied, and so is contamination.
    Own model: docs/science/keeping: nothing is lost or made by pouring. Doubt: the mark of the measure.

    >>> litre = Contents(1000, 1000, 8.0, date(2026, 3, 1))
    >>> four = decanted(litre, [(250, 250)] * 4, on=date(2026, 3, 1))
    >>> [one.area_units for one in four], four[0].part_full_since
    ([2.0, 2.0, 2.0, 2.0], None)
    """
    poured_ml = sum(ml for ml, _ in bottles)
    if poured_ml > from_.ml * (1 + 1e-9):
        raise refuse("more-than-is-there", volume_ml=from_.ml, wanted_ml=poured_ml)
    for ml, holds_ml in bottles:
        if not 0 < ml <= holds_ml:
            raise refuse("bottle-too-small", volume_ml=ml, holds_ml=holds_ml)
    return tuple(_settled(from_, ml, holds_ml, on) for ml, holds_ml in bottles)


def merged(one: Contents, other: Contents, *, into_ml: float, on: date) -> Contents:
    """Both together in a bottle of `into_ml`: area adds, the older date counts, contamination spreads.

    Own model: docs/science/keeping. Doubt: the mark of the measure.

    >>> fresh, old = Contents(250, 250, 0, date(2026, 5, 1)), Contents(250, 250, 5, date(2026, 3, 1))
    >>> both = merged(fresh, old, into_ml=500, on=date(2026, 6, 1))
    >>> both.area_units, both.made
    (5, datetime.date(2026, 3, 1))
    """
    whole_ml = one.ml + other.ml
    if not 0 < whole_ml <= into_ml:
        raise refuse("bottle-too-small", volume_ml=whole_ml, holds_ml=into_ml)
    days = [day for day in (one.part_full_since, other.part_full_since) if day is not None]
    together = Contents(
        whole_ml,
        into_ml,
        one.area_units + other.area_units,
        min(one.made, other.made),
        min(days) if days else None,
        one.contaminated or other.contaminated,
        one.counted_units + other.counted_units,
    )
    return replace(together, part_full_since=since_part_full(together, whole_ml, into_ml, on=on))


def drawn(contents: Contents, ml: float, *, on: date) -> Contents:
    """What is left after `ml` are used up; from `on` it stands part full, unless it did before.

    Own model: docs/science/keeping. Doubt: the mark of the measure.

    >>> drawn(Contents(250, 250, 0, date(2026, 3, 1)), 125, on=date(2026, 4, 20)).part_full_since
    datetime.date(2026, 4, 20)
    """
    if not 0 < ml <= contents.ml:
        raise refuse("more-than-is-there", volume_ml=contents.ml, wanted_ml=ml)
    return _settled(contents, contents.ml - ml, contents.holds_ml, on)


def bottle_good_until(contents: Contents, keeping: KeepingTime) -> date:
    """The last day of one bottle by its keeping time: each bottle has its own.

    Own model: docs/science/keeping. Doubt: weeks either way.

    >>> from tankside.core.sources import Provenance
    >>> rule = KeepingTime(6, 2, Provenance("from memory"))
    >>> bottle_good_until(Contents(250, 250, 0, date(2026, 3, 1)), rule)
    datetime.date(2026, 9, 1)
    """
    return good_until(contents.made, keeping, part_full_since=contents.part_full_since)


def which_to_use(bottles: Sequence[tuple[Contents, date | None]], *, ml: float, today: date) -> int | None:
    """Number of the bottle to take `ml` from: clean, not past its date, and ending soonest; None for none.

    Arguments: each bottle with its last day, None where nobody knows it; those come after the dated ones.
    Own model: docs/science/keeping: what ends first is used first. Doubt: none.

    >>> half = Contents(125, 250, 0, date(2026, 3, 1), date(2026, 4, 20))
    >>> full = Contents(250, 250, 0, date(2026, 3, 1))
    >>> dated = [(half, date(2026, 6, 20)), (full, date(2026, 9, 1))]
    >>> which_to_use(dated, ml=100, today=date(2026, 7, 1))
    1
    """
    fit = [
        (until or date.max, at)
        for at, (one, until) in enumerate(bottles)
        if one.ml + LEAST_ML >= ml and not one.contaminated and today <= (until or date.max)
    ]
    return min(fit)[1] if fit else None


def _settled(of: Contents, ml: float, holds_ml: float, on: date) -> Contents:
    """`ml` of the same liquid in a bottle, from `on`."""
    share = ml / of.ml
    return replace(
        of,
        ml=ml,
        holds_ml=holds_ml,
        area_units=of.area_units * share,
        part_full_since=since_part_full(of, ml, holds_ml, on=on),
        counted_units=of.counted_units * share,
    )


def since_part_full(of: Contents, ml: float, holds_ml: float, *, on: date) -> date | None:
    """Since when it stands part full; pouring into a full bottle stops the air, not what it did."""
    if not is_part_full(ml=ml, holds_ml=holds_ml):
        return None
    return min(of.part_full_since or on, on)
