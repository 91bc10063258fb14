"""Why film is fixed so long, and why a fixer may still take so many rolls."""

from __future__ import annotations

from tankside.core.planning.why import Length, Why
from tankside.core.quantities.display import temperature_text, time_text, to_step
from tankside.core.quantities.preferences import Preferences
from tankside.wording.chemistry import whole_rolls
from tankside.wording.whys.words import WhyWords

TWO_COUNTS = "Two sources differ, and are kept as a range; the plan takes the lower."
TIMES = {2.0: "Twice", 3.0: "Three times"}


def _fix_sentence(why: Why, _: Preferences) -> str:
    """A rule, with the clearing time that it covers."""
    covered = time_text(why.answer.value / why.input("multiple").value)
    return f"A rule: enough while a test piece clears in {covered} or less."


def _rule(length: Length, _: Preferences) -> tuple[str, str]:
    """The time of the method."""
    times = TIMES[length.figure("multiple")].lower()
    covered = time_text(length.figure("covered_s"))
    grain = "Tabular or unknown grain" if length.figure("longer") > 0 else "Ordinary grain"
    return grain, f"{times.capitalize()} the time in which a test piece clears, up to {covered} of it."


def _own(length: Length, _: Preferences) -> tuple[str, str]:
    """A time of one's own."""
    times = TIMES[length.figure("multiple")].lower()
    covered = time_text(length.figure("covered_s"))
    return "Your own time", f"{time_text(length.estimate.value)} is {times} a clearing time of {covered}."


def _allowed(length: Length, _: Preferences) -> tuple[str, str]:
    """Least and most."""
    low, high = (time_text(one) for one in (length.estimate.low, length.estimate.high))
    return "At least, at most", f"{low} to {high}; longer begins to bleach fine silver in fresh rapid fixer."


def _clearing(length: Length, preferences: Preferences) -> tuple[str, str]:
    """The test piece."""
    times = TIMES[length.figure("multiple")].lower()
    cleared = time_text(length.figure("clears_s"))
    warm = temperature_text(length.figure("clears_c"), preferences)
    needs = time_text(to_step(length.estimate.value, 5.0))
    return "The test piece", f"Cleared in {cleared} at {warm}; {times} that is {needs}."


def _rolls_headline(why: Why, _: Preferences) -> str:
    """'5 to 10 rolls'."""
    low, high = whole_rolls(why.answer.low), whole_rolls(why.answer.high)
    return f"{low} rolls" if low == high else f"{low} to {high} rolls"


def _count(length: Length, _: Preferences) -> tuple[str, str]:
    """One source's count."""
    per_l, used = length.figure("per_l"), length.figure("used")
    head = "The lower count, planned on" if length.code == "planned-count" else "The higher count"
    return (
        head,
        f"{to_step(per_l, 0.5):g} rolls a litre, less {used:g} used: {whole_rolls(length.estimate.value)}.",
    )


WORDS = WhyWords(
    headlines={"fixer-left": _rolls_headline},
    sentences={"fix": _fix_sentence, "fixer-left": TWO_COUNTS},
    lengths={
        "fix-rule": _rule, "fix-own": _own, "fix-allowed": _allowed, "clearing": _clearing,
        "planned-count": _count, "named-count": _count,
    },
    narrows={"test-piece": "Test it: time a test piece until it is clear, one minute."},
    names={
        "fix_s": "in the fixer", "multiple": "times the clearing time",
        "ceiling_s": "most in fresh rapid fixer", "clears_s": "the test piece cleared in",
        "clears_c": "fixer at the test", "working_ml": "working fixer", "used": "used",
        "per_l_planned": "a litre takes, planned on", "per_l_named": "a litre takes, named",
    },
    leaves_out={
        "test-piece-binds": "The test piece binds as well: done at twice the fresh clearing time, whatever "
        "the count.",
    },
)  # fmt: skip
