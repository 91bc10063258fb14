"""What a bottle holds and what it has taken, by its ledger."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.ledger import LedgerLine, LineKind

PUT_IN: tuple[LineKind, ...] = ("mixed", "topped up", "decanted")
LEAST_ML = 1e-6
"""Less than this is what sums of floats leave behind, not liquid."""


@dataclass(frozen=True, slots=True)
class Account:
    """`ml` in the bottle, None while nothing was ever booked; `area_units` of film, each 80 in2.

    `counted_units` is that film as this bath counts it: a fixer counts tabular or unknown film half as much
    again. `put_in_ml` is what was mixed, topped up or poured over, less what was poured over elsewhere: what
    film carries off does not lessen the count. `poured_over` once some of it went into other bottles;
    `contaminated` once something else went in, `discarded` once it was poured away; none of them if that was
    taken back.
    """

    ml: float | None
    area_units: float
    contaminated: bool
    discarded: bool
    counted_units: float = 0.0
    poured_over: bool = False
    put_in_ml: float = 0.0


def account(booked: Sequence[Booking]) -> Account:
    """The account of one bottle from all that was booked on it.

    Result: volume in mL, area in units of 80 in2. Own model: sums of signed lines, docs/science/film-area.
    Doubt: that of each volume poured, about the mark of the measure.
    """
    lines = [one.line for one in booked]
    return Account(
        ml=sum(line.ml for line in lines) if lines else None,
        area_units=sum(line.area_units for line in lines),
        contaminated=_stands(booked, "contaminated"),
        discarded=_stands(booked, "discarded"),
        counted_units=sum(line.counted_units for line in lines),
        poured_over=sum(line.ml for line in lines if line.kind == "decanted") < -LEAST_ML,
        put_in_ml=sum(line.ml for line in lines if line.kind in PUT_IN),
    )


def _stands(booked: Sequence[Booking], kind: LineKind) -> bool:
    """Whether a line of that kind stands: by its volume if it has one, else until taken back."""
    taken_back = {one.line.reverses for one in booked}
    moved: dict[tuple[str, int], float] = defaultdict(float)
    for one in booked:
        if one.line.kind == kind:
            moved[one.line.because, one.place] += one.line.ml
    if any(abs(ml) > LEAST_ML for ml in moved.values()):
        return True
    return any(_said(one.line, kind) and one.key not in taken_back for one in booked)


def _said(line: LedgerLine, kind: LineKind) -> bool:
    """A line without a volume, that somebody wrote down."""
    return line.kind == kind and line.ml == 0.0 and line.reverses is None
