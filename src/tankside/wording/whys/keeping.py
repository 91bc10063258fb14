"""Why a bottle is good until its day, and for how many rolls a bottle of stock is enough."""

from __future__ import annotations

from tankside.core.planning.why import Length, Why
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.amounts import value_text
from tankside.wording.whys.words import WhyWords


def _until(why: Why, preferences: Preferences) -> str:
    """'25 May 2027'."""
    return value_text(why.input("until").value, "day", preferences)


def _full(length: Length, preferences: Preferences) -> tuple[str, str]:
    """The time of a full bottle."""
    return (
        "In a full bottle",
        f"{value_text(length.figure('full'), 'months', preferences)} from when it was made.",
    )


def _part(length: Length, preferences: Preferences) -> tuple[str, str]:
    """The time once air stands over it."""
    since = value_text(length.figure("part_full_since"), "day", preferences)
    return (
        "Part full",
        f"{value_text(length.figure('part'), 'months', preferences)} from {since}, as air got in.",
    )


def _volume(length: Length, preferences: Preferences) -> tuple[str, str]:
    """Whole tankfuls of stock."""
    each = value_text(length.figure("a_tankful_ml"), "mL", preferences)
    rolls = value_text(length.figure("rolls_a_tank"), "rolls", preferences)
    return "By volume", f"{each} of stock for each tankful of {rolls}."


WORDS = WhyWords(
    headlines={"good-until": _until},
    sentences={
        "good-until": "Good until then by a rule, weeks either way: what ends first counts.",
        "developer-left": "Volume binds: whole tankfuls, as many rolls in each as in the plan made last.",
    },
    lengths={"keeps-full": _full, "keeps-part": _part, "by-volume": _volume},
    narrows={"leader-test": "Time a leader in it: that goes before any date."},
    names={
        "made": "made", "until": "good until", "holds_ml": "the bottle holds", "left_ml": "left in it",
        "a_tankful_ml": "stock for a tankful", "rolls_a_tank": "rolls in a tank",
        "tank_takes_ml": "the tank takes",
    },
    leaves_out={
        "warmth": "A warm shelf shortens it.",
        "leader-goes-before": "A leader test goes before any count.",
        "dies-unseen": "Some developers die before their date without any sign.",
    },
)  # fmt: skip
