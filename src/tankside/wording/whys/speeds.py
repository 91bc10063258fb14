"""Why a step strip tells this speed, in words."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.why import Length, Why
from tankside.core.quantities.preferences import Preferences
from tankside.core.sensitometry.speed import ARITHMETIC, condition_of
from tankside.wording.whys.amounts import value_text
from tankside.wording.whys.words import PlotWords, WhyWords

WITHIN = "Nine times in ten, by the readings alone, it lies between {} and {}."
NO_SPEED = "No speed: nobody measured the exposure. The speed point is told on the tablet's own scale."


def _headline(why: Why, preferences: Preferences) -> str:
    """'ISO 100/21°', 'EI 125', or a place on the tablet: '−2.40'."""
    length = why.lengths[0]
    if length.code == "speed-relative":
        return value_text(why.answer.value, "log H", preferences)
    degrees = round(why.answer.value)
    iso = length.code == "speed-absolute" and length.figure("iso") > 0
    return f"ISO {ARITHMETIC[degrees]:g}/{degrees}°" if iso else f"EI {ARITHMETIC[degrees]:g}"


def _sentence(why: Why, preferences: Preferences) -> str:
    """Its interval, and why it is called as it is."""
    of, length = why.answer, why.lengths[0]
    within = WITHIN.format(*(value_text(one, of.unit, preferences) for one in (of.low, of.high)))
    match length.code:
        case "speed-absolute":
            return f"{within} {_called(length)}"
        case "speed-metered":
            return f"{within} An exposure index: a meter told the exposure."
        case _:
            return f"{within} {NO_SPEED}"


def _called(length: Length) -> str:
    """Whether the condition of ISO 6 holds."""
    if length.figure("iso") > 0:
        return "An ISO speed: exposure and light were those of the standard, and the curve rises as it asks."
    rise, low, high = (length.figure(one) for one in ("rise", "rise_low", "rise_high"))
    because = {
        "met": "light and exposure time were not those of the standard",
        "straddles": "by the reading error the rise that ISO 6 asks for may be met or not",
        "not met": "the curve does not rise as ISO 6 asks",
    }[condition_of(Estimate(rise, low, high, "density"))]
    return f"An exposure index, not ISO: {because}."


def _absolute(length: Length, _: Preferences) -> tuple[str, str]:
    """The rise beside what is asked."""
    rise, low, high = (length.figure(one) for one in ("rise", "rise_low", "rise_high"))
    asked = f"{length.figure('iso_rise'):.2f} ± {length.figure('iso_limit'):.2f}"
    return (
        "From the speed point",
        f"Over the next 1.30 density rises {rise:.2f} ({low:.2f} to {high:.2f}); asked: {asked}.",
    )


def _metered(length: Length, _: Preferences) -> tuple[str, str]:
    """By a meter."""
    over = length.figure("metered_over")
    index = length.figure("metered_index")
    return "By a meter", f"Metered at {index:g}; what a meter measures lies {over:.2f} above the speed point."


def _relative(_: Length, __: Preferences) -> tuple[str, str]:
    """On the tablet's own scale."""
    return "Speed point", "Where density stands 0.10 above base and fog, on the tablet's own scale."


WORDS = WhyWords(
    headlines={"speed": _headline},
    sentences={"speed": _sentence},
    lengths={"speed-absolute": _absolute, "speed-metered": _metered, "speed-relative": _relative},
    narrows={
        "known-exposure": "Expose one by a known light, in lux seconds: it tells a speed without a meter.",
    },
    names={
        "rise": "density rises over 1.30", "rise_low": "at least", "rise_high": "at most",
        "iso_rise": "ISO 6 asks for", "iso_limit": "within", "stated_light": "light and time of the standard",
        "iso": "may be called ISO", "metered_index": "the meter was set to",
        "metered_over": "a metered tone lies above the speed point by",
    },
    leaves_out={
        "third-of-a-stop": "Meter, shutter and flare: a third of a stop.",
        "one-strip": "A standard speed averages several batches and names its developer; this is one strip.",
    },
    plots={
        "speed": PlotWords(
            "From the speed point on", "log exposure", "density", "at least", "at most", "fitted",
            level="ISO 6", marks={"speed-point": "speed point", "further-on": "1.30 on"},
        ),
    },
)  # fmt: skip
