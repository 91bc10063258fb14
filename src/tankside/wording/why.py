"""Why a number is what it is, in words; what differs from family to family stands in `whys/`."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor

from tankside.core.planning.why import Figure, Length, Narrowing, PartOfDoubt, Why
from tankside.core.quantities.display import shown, time_step_s, to_step
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys import (
    contrast,
    curves,
    fixing,
    keeping,
    order,
    recipes,
    speeds,
    stock,
    stopping,
    strips,
    timing,
    washing,
    waters,
)
from tankside.wording.whys.amounts import STEPS, difference_text, value_text
from tankside.wording.whys.words import PlotWords, WhyWords

FAMILIES: tuple[WhyWords, ...] = (
    timing.WORDS, contrast.WORDS, waters.WORDS, order.WORDS, washing.WORDS, fixing.WORDS, stopping.WORDS,
    stock.WORDS, keeping.WORDS, strips.WORDS, curves.WORDS, speeds.WORDS,
    recipes.WORDS,
)  # fmt: skip
MEANS = {about: words for one in FAMILIES for about, words in one.means.items()}
HEADLINES = {about: say for one in FAMILIES for about, say in one.headlines.items()}
SENTENCES = {about: say for one in FAMILIES for about, say in one.sentences.items()}
LENGTHS = {code: say for one in FAMILIES for code, say in one.lengths.items()}
PARTS = {code: words for one in FAMILIES for code, words in one.parts.items()}
NARROWS = {code: words for one in FAMILIES for code, words in one.narrows.items()}
NAMES = {code: words for one in FAMILIES for code, words in one.names.items()}
LEAVES_OUT = {code: words for one in FAMILIES for code, words in one.leaves_out.items()}
PLOTS = {code: words for one in FAMILIES for code, words in one.plots.items()}

STRIP_TIME_STEP_S = 5.0
A_RULE = "It is a rule, not an estimate."

Say = Callable[[float], str]
"""How a value is said where its unit alone does not tell: an end by the clock."""


def title(why: Why, preferences: Preferences, *, say: Say | None = None) -> str:
    """The heading of the page."""
    return f"Why {headline(why, preferences, say=say)}?"


def headline(why: Why, preferences: Preferences, *, say: Say | None = None) -> str:
    """The answer as it is shown large, without its doubt."""
    if why.about in HEADLINES:
        return HEADLINES[why.about](why, preferences)
    return (say or _in_unit(why, preferences))(shown_answer(why)[0])


def answer_sentence(why: Why, preferences: Preferences, *, say: Say | None = None) -> str:
    """The answer in frequencies, with what it holds for."""
    said_apart = SENTENCES.get(why.about)
    if said_apart is not None:
        return said_apart if isinstance(said_apart, str) else said_apart(why, preferences)
    if why.answer.low == why.answer.high:
        return A_RULE
    said = say or _in_unit(why, preferences)
    low, high = (said(one) for one in shown_answer(why)[1:])
    if low == high:
        return "Its doubt is smaller than the finest mark one could read."
    return f"Nine times in ten {MEANS[why.about]} lies between {low} and {high}."


def shown_answer(why: Why) -> tuple[float, float, float]:
    """Value, low and high as they are shown: times to the step that their doubt allows, outwards.

    The end of an evening is said by the clock, so it goes up to whole minutes.
    """
    answer = why.answer
    if why.about == "end":
        up = [60.0 * ceil(one / 60 - 1e-9) for one in (answer.value, answer.high)]
        return up[0], 60.0 * floor(answer.low / 60 + 1e-9), up[1]
    if answer.low == answer.high:
        return answer.value, answer.low, answer.high
    told = shown(answer, step_of_answer(why))
    return told.value, told.low, told.high


def step_of_answer(why: Why) -> float:
    """To what the answer and the parts of its doubt are shown; a time of step strips as Densities has it."""
    answer = why.answer
    if why.about == "strip-time":
        return STRIP_TIME_STEP_S
    return time_step_s(answer.high - answer.low) if answer.unit == "s" else STEPS.get(answer.unit, 1.0)


def doubt_text(why: Why, preferences: Preferences) -> str:
    """The larger half of the interval: '0:15', '0.3 °C', of an end '1 min'; empty where there is none."""
    value, low, high = shown_answer(why)
    half = max(high - value, value - low)
    if why.spread != "interval" or why.answer.low == why.answer.high:
        return ""
    if half <= 0:
        return f"less than {difference_text(STEPS.get(why.answer.unit, 1.0), why.answer.unit, preferences)}"
    if why.about == "end":
        return f"{half / 60:.0f} min"
    return difference_text(half, why.answer.unit, preferences)


def _in_unit(why: Why, preferences: Preferences) -> Say:
    """A value in the answer's unit."""
    return lambda value: value_text(value, why.answer.unit, preferences)


def length_words(length: Length, preferences: Preferences) -> tuple[str, str]:
    """Heading and sentence of one source on the scale."""
    return LENGTHS[length.code](length, preferences)


def part_words(part: PartOfDoubt, why: Why, preferences: Preferences) -> str:
    """One part of the doubt, to the same step as the whole: a part never looks larger than the sum.

    The only one is the whole.
    """
    if len(why.parts) == 1 and (whole := doubt_text(why, preferences)):
        return f"{whole} {PARTS[part.code]}"
    unit = why.answer.unit
    step = step_of_answer(why)
    width = to_step(part.half_width, step)
    said = difference_text(width or step, unit, preferences)
    return f"{said if width else f'under {said}'} {PARTS[part.code]}"


def figure_words(figure: Figure, preferences: Preferences) -> str:
    """One input with its unit and its origin."""
    return f"{NAMES[figure.code]}: {value_text(figure.value, figure.unit, preferences)} ({figure.origin})"


def narrowing_sentence(one: Narrowing, preferences: Preferences) -> str:
    """One thing that would narrow the doubt."""
    words = NARROWS[one.code]
    return words if isinstance(words, str) else words(one, preferences)


def narrows_sentences(why: Why, preferences: Preferences) -> tuple[str, ...]:
    """What would narrow the doubt."""
    return tuple(narrowing_sentence(one, preferences) for one in why.narrows)


def leaves_out_sentences(why: Why) -> tuple[str, ...]:
    """What the answer does not hold."""
    return tuple(LEAVES_OUT[one] for one in why.leaves_out)


def plot_words(why: Why) -> PlotWords | None:
    """The words of its plot, if it has one."""
    return None if why.plot is None else PLOTS[why.plot.code]
