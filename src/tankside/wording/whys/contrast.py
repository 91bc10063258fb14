"""What contrast a tankful will get, in words."""

from __future__ import annotations

from tankside.core.planning.why import Length
from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.words import PlotWords, WhyWords


def _aimed(length: Length, preferences: Preferences) -> tuple[str, str]:
    """The contrast of the printed time."""
    warm = temperature_text(length.figure("temp_c"), preferences)
    time = f"{time_text(length.figure('time_s'))} at {warm}"
    aim = f"{length.estimate.value:.2f}"
    if length.figure("told") > 0:
        return "Aimed at", f"{aim}, as told for {time}."
    return "Aimed at", f"{aim}, assumed for {time}: the usual one, as none is told."


def _believed(length: Length, _: Preferences) -> tuple[str, str]:
    """What tonight's time is worth."""
    counted = time_text(length.figure("counted_s"))
    return "Tonight", f"Counts as {counted} at the printed temperature."


WORDS = WhyWords(
    means={"contrast": "the contrast of one roll"},
    lengths={"aimed": _aimed, "believed": _believed},
    parts={"belief": "this film and developer", "roll-to-roll": "from roll to roll"},
    names={
        "counted_s": "time counted at the printed temperature", "c_inf": "most contrast the film can reach",
        "induction_s": "before anything shows", "strips": "step strips and answers of yours",
    },
    plots={
        "contrast": PlotWords(
            "Contrast against time", "at the printed temperature", "contrast", "at least", "at most",
            "expected", level="aim", marks={"tonight": "tonight"},
        ),
    },
)  # fmt: skip
