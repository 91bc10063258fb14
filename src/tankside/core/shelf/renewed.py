"""How much of a bath is still its first filling, after all that was topped up."""

from __future__ import annotations

from collections.abc import Sequence

from tankside.core.shelf.accounts import LEAST_ML
from tankside.core.shelf.bookings import Booking


def first_filling_left(booked: Sequence[Booking]) -> float | None:
    """Share (0 to 1) of a bath that was there before it was first topped up; None if it never was.

    What is drawn or poured over takes its share of old and new alike. Lines that were taken back count for
    nothing. Own model: docs/science/replenishing, the mass balance top-up by top-up, with the volumes booked.
    Doubt: the mark of each measure; a bath that is not mixed well.
    """
    undone = {one.line.reverses for one in booked}
    held_ml, share, topped = 0.0, 1.0, False
    for one in booked:
        line = one.line
        if one.key in undone or line.reverses is not None:
            continue
        if line.kind == "topped up" and held_ml + line.ml > LEAST_ML:
            share, topped = share * held_ml / (held_ml + line.ml), True
        held_ml = max(0.0, held_ml + line.ml)
    return share if topped else None
