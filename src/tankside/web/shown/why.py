"""What the page shows of why a number is what it is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil

from tankside.core.planning.plan import Plan
from tankside.core.planning.timetable import timetable
from tankside.core.planning.why import Length, Why
from tankside.core.quantities.preferences import Preferences
from tankside.core.sources import Source
from tankside.web.drawing.doubt import lengths
from tankside.web.drawing.sources import Sources, SourceWish, sources
from tankside.web.shown.why_plot import ShownPlot, shown_plot
from tankside.wording.plan import clock_text
from tankside.wording.why import (
    Say,
    answer_sentence,
    doubt_text,
    figure_words,
    headline,
    leaves_out_sentences,
    length_words,
    narrows_sentences,
    part_words,
    title,
)
from tankside.wording.whys.amounts import UNIT_WORDS, value_text

HEADING_LETTERS, SENTENCE_LETTERS = 16, 20
"""Letters to a line where the column of words is narrowest, on a phone 320 px wide."""

LONGEST_PART_PX, LEAST_PART = 120.0, 0.2


@dataclass(frozen=True, slots=True)
class Told:
    """A source in words; `lines` is the class of its height."""

    heading: str
    sentence: str
    lines: int


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the doubt as a length."""

    px: float
    words: str


@dataclass(frozen=True, slots=True)
class ShownWhy:
    """The whole page; `counts` is what the scale counts, `doubt` stands after the answer."""

    title: str
    answer: str
    doubt: str
    sentence: str
    picture: Sources
    counts: str
    told: tuple[Told, ...]
    parts: tuple[Part, ...]
    combined: str
    plot: ShownPlot | None
    narrows: tuple[str, ...]
    leaves_out: tuple[str, ...]
    inputs: tuple[str, ...]
    formula: str
    references: tuple[str, ...]


def shown_why(
    why: Why, preferences: Preferences, *, known: Mapping[str, Source], say: Say | None = None
) -> ShownWhy:
    """A why as its page shows it; `known` is the bibliography, `say` how its values are said."""
    said = say or (lambda value: value_text(value, why.answer.unit, preferences))
    ordered = sorted(why.lengths, key=lambda one: one.estimate.value)
    told = tuple(_told(one, preferences) for one in ordered)
    half = doubt_text(why, preferences)
    return ShownWhy(
        title(why, preferences, say=say),
        headline(why, preferences, say=say),
        _apart(half),
        answer_sentence(why, preferences, say=say),
        sources(
            [_wish(one, lines.lines) for one, lines in zip(ordered, told, strict=True)],
            unit=why.answer.unit,
            words=lambda value: said(value).split()[0],
        ),
        _counts(why, said),
        told,
        _parts(why, preferences),
        half if len(why.parts) > 1 else "",
        None if why.plot is None else shown_plot(why.plot, preferences),
        narrows_sentences(why, preferences),
        leaves_out_sentences(why),
        tuple(figure_words(one, preferences) for one in why.inputs),
        why.formula,
        tuple(str(known[one]) if one in known else one for one in why.references),
    )


def said_of_plan(why: Why, plan: Plan) -> Say | None:
    """How a value of a plan's why is said: the end of an evening by the clock, all else in its unit."""
    if why.about != "end":
        return None
    table = timetable(plan)
    return lambda value: clock_text(plan, table, value)


def _counts(why: Why, say: Say) -> str:
    """What the scale counts, said once at its head."""
    if why.about == "end":
        return "clock"
    return UNIT_WORDS.get(why.answer.unit) or say(why.answer.value).split()[-1]


def _apart(half: str) -> str:
    """The doubt as it stands after the answer."""
    return f"± {half}" if half and not half.startswith("less") else ""


def _told(length: Length, preferences: Preferences) -> Told:
    """A source with the height that its words need."""
    heading, sentence = length_words(length, preferences)
    lines = ceil(len(heading) / HEADING_LETTERS) + ceil(len(sentence) / SENTENCE_LETTERS)
    return Told(heading, sentence, min(max(lines, 2), 8))


def _wish(length: Length, lines: int) -> SourceWish:
    """A source as it is to be drawn."""
    return SourceWish(length.estimate.low, length.estimate.value, length.estimate.high, lines)


def _parts(why: Why, preferences: Preferences) -> tuple[Part, ...]:
    """The parts that count, largest first."""
    widths = {part.code: part.half_width for part in why.parts}
    largest = max(widths.values(), default=0.0)
    worth = {part.code: part for part in why.parts if part.half_width > LEAST_PART * largest}
    drawn = lengths({code: widths[code] for code in worth}, longest_px=LONGEST_PART_PX)
    return tuple(Part(px, part_words(worth[code], why, preferences)) for code, _, px in drawn)
