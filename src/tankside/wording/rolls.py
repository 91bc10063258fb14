"""A roll in words, as a list shows it."""

from __future__ import annotations

from tankside.core.quantities.display import index_text
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Roll


def said_format(chosen: Format) -> str:
    """A format as one says it: '135-36', '1.2 m of 135', '6 sheets 4x5'.

    >>> said_format(Format("4x5", sheets=6))
    '6 sheets 4x5'
    """
    if chosen.kind == "135-length":
        return f"{chosen.length_m:g} m of 135"
    return f"{chosen.sheets} sheets 4x5" if chosen.kind == "4x5" else chosen.kind


def roll_line(roll: Roll) -> str:
    """All of a roll but its code in one line, what is not known left out."""
    day = f"exposed {roll.exposed.isoformat()}" if roll.exposed else ""
    notes = roll.notes.splitlines()[0] if roll.notes else ""
    told = (
        f"{roll.film.name}, {said_format(roll.format)}",
        index_text(roll.index),
        day,
        roll.camera,
        f"of {roll.owner}" if roll.owner else "",
        notes,
        "precious" if roll.precious else "",
    )
    return "; ".join(one for one in told if one)
