"""Why a step strip tells its contrast, in words."""

from __future__ import annotations

from tankside.core.planning.why import Length
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.words import PlotWords, WhyWords

HEADS = {
    "strip-index": "Contrast index",
    "strip-gradient": "Average gradient",
    "strip-gamma": "Gamma",
}
MEANINGS = {
    "strip-index": "between two arcs about base and fog",
    "strip-gradient": "from the speed point to 1.50 further on",
    "strip-gamma": "where the curve is steepest",
}


def _slope(length: Length, _: Preferences) -> tuple[str, str]:
    """One measure of contrast."""
    of = length.estimate
    return HEADS[length.code], f"{of.value:.2f} ({of.low:.2f} to {of.high:.2f}), {MEANINGS[length.code]}."


WORDS = WhyWords(
    means={"curve": "the contrast index of this strip"},
    lengths={"strip-index": _slope, "strip-gradient": _slope, "strip-gamma": _slope},
    parts={"densities": "reading the densities"},
    narrows={"read-twice": "Read every step twice and take the mean: the doubt falls by three tenths."},
    names={
        "reading_sd": "one reading is off by", "scatter": "readings about the curve",
        "base_fog": "base and fog", "speed_point": "speed point",
        "inner_radius": "inner arc", "outer_radius": "outer arc",
    },
    leaves_out={
        "light-and-roll": "Light, exposure and how much one roll differs from the next are not in it.",
    },
    plots={
        "curve": PlotWords(
            "Density above base and fog", "log exposure", "density", "at least", "at most", "fitted",
            marks={"inner-arc": "arc 0.2", "outer-arc": "arc 2.2"},
        ),
    },
)  # fmt: skip
