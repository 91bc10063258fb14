"""Why an evening ends, and a tankful begins, when it does."""

from __future__ import annotations

from tankside.core.planning.why import Length
from tankside.core.quantities.display import time_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.plan_changes import BATHS
from tankside.wording.whys.words import WhyWords


def _bath(length: Length, _: Preferences) -> tuple[str, str]:
    """One bath of the last tankful."""
    return BATHS[length.figures[0].code], f"{time_text(length.figures[0].value)}."


def _before(length: Length, _: Preferences) -> tuple[str, str]:
    """The tankful that was there first."""
    return "The tankful before", f"Hung {time_text(length.estimate.value)} after the first pour."


def _order(length: Length, _: Preferences) -> tuple[str, str]:
    """What decides the start."""
    if length.figure("same_tank") > 0:
        return "The same tank", "Hung, reels dried, loaded again."
    late = round(length.figure("apart_s"))
    room = f" Either tank may run {late} s late before two acts meet." if late else ""
    return "One pair of hands", f"From here on no two acts want the hands at once.{room}"


WORDS = WhyWords(
    means={"end": "the end", "second-start": "the start"},
    lengths={"baths": _bath, "before": _before, "order": _order},
    parts={"development": "end of development"},
    narrows={"second-tank": "A second tank lets it begin sooner."},
    names={
        "pour_s": "pouring", "drain_s": "draining", "starts_s": "start after the first pour",
        "soft_s": "an inversion may slip by", "between_s": "between two tankfuls",
        "step_s": "step of the start",
    },
)  # fmt: skip
