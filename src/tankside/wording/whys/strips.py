"""A time out of step strips, in words."""

from __future__ import annotations

from tankside.core.planning.why import Length
from tankside.core.quantities.display import time_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.words import PlotWords, WhyWords


def _before(length: Length, _: Preferences) -> tuple[str, str]:
    """What the printed time said."""
    time = time_text(length.figure("time_s"))
    return "Before any strip", f"{time} was to make {length.figure('contrast'):.2f}, to a tenth."


def _one(length: Length, _: Preferences) -> tuple[str, str]:
    """One strip alone."""
    counted = time_text(length.figure("counted_s"))
    return (
        f"Step strip {length.figure('number'):.0f}",
        f"{length.figure('contrast'):.2f} in {counted} that counted, alone.",
    )


def _all(length: Length, _: Preferences) -> tuple[str, str]:
    """All of them."""
    count = length.figure("strips")
    return "Together", "The answer." if count == 1 else f"The answer: all {count:.0f} strips weighed at once."


WORDS = WhyWords(
    means={"strip-time": "the time for this contrast"},
    lengths={"before-strips": _before, "one-strip": _one, "all-strips": _all},
    parts={"film-and-rolls": "this film, and from roll to roll", "readings": "readings of the strips"},
    names={"wanted": "contrast wanted", "first_s": "time before any strip", "answers": "answers of yours"},
    plots={
        "strips": PlotWords(
            "Contrast against time", "at the reference temperature", "contrast", "at least", "at most",
            "expected", level="wanted", marks={"strip": "strip"},
        ),
    },
)  # fmt: skip
