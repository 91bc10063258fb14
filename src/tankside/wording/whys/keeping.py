"""Why a bottle is good until its day."""

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


WORDS = WhyWords(
    headlines={"good-until": _until},
    sentences={"good-until": "Good until then by a rule, weeks either way: what ends first counts."},
    lengths={"keeps-full": _full, "keeps-part": _part},
    narrows={"leader-test": "Time a leader in it: that goes before any date."},
    names={
        "made": "made", "until": "good until", "holds_ml": "the bottle holds", "left_ml": "left in it",
    },
    leaves_out={
        "warmth": "A warm shelf shortens it.",
        "dies-unseen": "Some developers die before their date without any sign.",
    },
)  # fmt: skip
