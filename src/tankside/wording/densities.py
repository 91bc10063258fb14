"""What step strips and control strips say, in words."""

from __future__ import annotations

from datetime import datetime

from tankside.core.development.narrowing import NextStrip
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.combinations import Combination
from tankside.core.quantities.display import shown, temperature_text, time_and_doubt, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal
from tankside.core.review.evidence import strips_told
from tankside.core.sensitometry.control import LEAST_FOR_LIMITS
from tankside.core.sensitometry.control_strips import ControlChart
from tankside.core.sensitometry.findings import Finding
from tankside.core.sensitometry.speed import ISO_RISE, Speed
from tankside.wording.curves import finding_text, standard_index
from tankside.workflows.read_control import OddOut
from tankside.workflows.read_densities import ReadStrip

COUNTS = (
    "No",
    "One",
    "Two",
    "Three",
    "Four",
    "Five",
    "Six",
    "Seven",
    "Eight",
    "Nine",
    "Ten",
    "Eleven",
    "Twelve",
)
WORTH_NARROWING_S = 5.0
NO_SPEED = "not told"


def name_of(one: Combination) -> str:
    """A combination as its heading has it: 'Ferry 125 in Umber 1+1'."""
    return f"{one.film} in {one.developer} {one.dilution}"


def strips_between(days: list[datetime], ref: str) -> str:
    """How many strips, from when to when: 'Three step strips, October to November, at 20.0 °C.'

    >>> from datetime import UTC
    >>> strips_between([datetime(2026, 10, 2, tzinfo=UTC), datetime(2026, 11, 9, tzinfo=UTC)], "20.0 °C")
    'Two step strips, October to November, at 20.0 °C.'
    """
    count = COUNTS[len(days)] if len(days) < len(COUNTS) else str(len(days))
    months = list(dict.fromkeys(f"{day:%B}" for day in sorted(days)))
    when = months[0] if len(months) == 1 else f"{months[0]} to {months[-1]}"
    return f"{count} step strip{'' if len(days) == 1 else 's'}, {when}, at {ref}."


def time_words(time: Estimate) -> str:
    """The time for a contrast with half its interval: '8:30 ± 0:20'."""
    return time_and_doubt(time.value, doubt_s=(time.high - time.low) / 2)


def evidence_words(strips: int, answers: int) -> str:
    """What the time is from.

    >>> evidence_words(3, 0), evidence_words(1, 2)
    ('from your 3 step strips', 'from your step strip and 2 answers')
    """
    told = [strips_told(strips)] if strips else []
    if answers:
        told.append(f"{answers} answer{'' if answers == 1 else 's'}")
    return f"from {' and '.join(told)}"


def next_words(best: NextStrip, time: Estimate) -> str:
    """What one more strip would be worth: to half the interval it would leave, told as the time is."""
    half_s = (time.high - time.low) / 2
    told, left = (time_and_doubt(time.value, doubt_s=one).split()[-1] for one in (half_s, best.half_left_s))
    if half_s - best.half_left_s < WORTH_NARROWING_S and told == left:
        return f"One more, developed {time_text(best.time_s)}, would narrow it by less than can be told."
    return f"One more, developed {time_text(best.time_s)}, would narrow it to ± {left}."


def and_doubt(found: Finding, *, places: int = 2) -> str:
    """A finding with half its interval, '0.58 ± 0.02', or a dash where there is none."""
    if isinstance(found, Refusal):
        return "\u2013"
    told = shown(found, 10**-places)
    half = max(told.high - told.value, told.value - told.low, 10**-places)
    return f"{told.value:.{places}f} ± {half:.{places}f}".replace("-", "\u2212")


def speed_words(one: ReadStrip) -> str:
    """Its speed: ISO only where the standard lets it, else an exposure index, else a place on the tablet."""
    exposed, point = one.strip.exposed, one.found.speed_point
    if exposed.log_h0 is not None:
        speed = one.found.speed(stated_light=exposed.stated_light)
        if isinstance(speed, Refusal):
            return NO_SPEED
        iso = speed.kind == "ISO speed"
        return f"ISO {speed.arithmetic:g}/{speed.degrees}°" if iso else f"EI {speed.arithmetic:g}"
    if exposed.metered_index is not None:
        index = one.found.index(metered_index=exposed.metered_index, metered_log_h=0.0)
        return NO_SPEED if isinstance(index, Refusal) else f"EI {standard_index(index.value):g}"
    return NO_SPEED if isinstance(point, Refusal) else f"log H {point.value:.2f}".replace("-", "\u2212")


def has_speed(one: ReadStrip) -> bool:
    """Whether its speed, index or speed point is told at all."""
    return speed_words(one) != NO_SPEED


def speed_note(one: ReadStrip, number: int) -> str:
    """Why its speed is called as it is."""
    exposed, found = one.strip.exposed, one.found
    if exposed.log_h0 is None and exposed.metered_index is not None:
        return "Speed is an exposure index: a meter told the exposure, to a third of a stop."
    if exposed.log_h0 is None:
        return "No speed: nobody measured the exposure. The speed point is told on the tablet's own scale."
    speed = found.speed(stated_light=exposed.stated_light)
    if not isinstance(speed, Speed):
        return "The curve ends before a speed can be told."
    if speed.kind == "ISO speed":
        return "Speed is ISO: exposure and light were those of the standard, and the curve rises as it asks."
    rise = "" if isinstance(found.rise, Refusal) else f"{found.rise.value:.2f}"
    because = {
        "met": "light and exposure time were not those of the standard",
        "straddles": f"step strip {number} rises {rise}, and by its reading error the {ISO_RISE:.2f} over "
        "1.30 that ISO 6 asks for may be met or not",
        "not met": f"step strip {number} rises {rise} where ISO 6 asks for {ISO_RISE:.2f} over 1.30",
    }[speed.condition]
    return f"Speed is an exposure index, not ISO: {because}."


def readings_note(strips: list[ReadStrip]) -> str:
    """How well they were read."""
    sds = sorted({one.strip.reading_sd for one in strips})
    by = sorted({one.strip.instrument for one in strips if one.strip.instrument})
    told = " to ".join(f"{sd:g}" for sd in ([sds[0]] if len(sds) == 1 else [sds[0], sds[-1]]))
    return f"Readings{' by ' + ', '.join(by) if by else ''}, ± {told} each (one standard deviation)."


def figures_of(one: ReadStrip) -> list[tuple[str, str]]:
    """Everything that one strip tells, name and figures."""
    found = one.found
    return [
        ("Base and fog", finding_text(found.curve.base_fog)),
        ("Contrast index", finding_text(found.contrast_index)),
        ("Average gradient", finding_text(found.average_gradient)),
        ("Gamma", finding_text(found.gamma)),
        ("Speed", speed_words(one)),
        ("Speed point, log H", finding_text(found.speed_point)),
        ("Rise over 1.30", finding_text(found.rise)),
        ("Useful range, log H", finding_text(found.useful_log_h)),
        ("Scatter about the curve", f"{max(found.curve.scatter, 0.01):.2f}"),
    ]


def chart_words(chart: ControlChart) -> str:
    """The verdict of a control chart in one or two sentences."""
    if chart.limits is None:
        need = chart.still_needed
        return (
            f"{need} more and the chart draws its limits; they start at {LEAST_FOR_LIMITS} points, so that "
            "chance alone does not give an alarm."
        )
    if not chart.outside and chart.drifts is None:
        return "Steady: nothing here is more than chance."
    told = []
    if chart.outside:
        numbers = ", ".join(str(n + 1) for n in chart.outside)
        told.append(f"{'Point' if len(chart.outside) == 1 else 'Points'} {numbers} outside the limits.")
    if chart.drifts is not None:
        told.append(f"Averages and sums see a lasting shift from point {chart.drifts + 1}.")
    return " ".join(told)


def odd_words(odd: OddOut, preferences: Preferences) -> str:
    """What was unlike the other strips in the development of one that stands outside."""
    told = []
    if odd.bottle:
        told.append(f"developed in {odd.bottle}")
    if odd.thermometer:
        told.append(f"by the thermometer {odd.thermometer}")
    if odd.instrument:
        told.append(f"read by {odd.instrument}")
    if odd.mean_c is not None and odd.usual_c is not None:
        told.append(
            f"at {temperature_text(odd.mean_c, preferences)}, the others at "
            f"{temperature_text(odd.usual_c, preferences)}"
        )
    if odd.words:
        told.append(f"you wrote: {odd.words}")
    sentence = "; ".join(told) or "nothing that is noted was unlike the others"
    return f"{sentence[0].upper()}{sentence[1:]}."
