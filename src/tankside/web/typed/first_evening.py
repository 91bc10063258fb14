"""The six questions of a first evening: what each asks, how its answer is read, and how it is said again."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from tankside.core.planning.first_evening import SixAnswers
from tankside.core.quantities.display import temperature_text, time_text, volume_text
from tankside.core.quantities.entry import read_index, read_temperature, read_time, read_volume
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refused, refuse
from tankside.core.rolls.formats import KINDS, Format, FormatKind
from tankside.core.solutions.notation import read_dilution
from tankside.web.forms import Form
from tankside.wording.rolls import said_format

LONGEST_NAME = 60

Answers = Mapping[str, Any]
Read = Callable[[Form, Preferences], object]


@dataclass(frozen=True, slots=True)
class Question:
    """One screen: `reads` gives each answer by the field it is typed in, `say` tells it again in one line."""

    name: str
    words: str
    coming: str
    reads: Mapping[str, Read]
    say: Callable[[Answers, Preferences], str]
    fields: tuple[str, ...]


def answers_to(question: Question, form: Form, preferences: Preferences) -> Answers:
    """What was answered, by field; everything that cannot be read is refused at its own field."""
    answers: dict[str, object] = {}
    refusals = []
    for field, read in question.reads.items():
        try:
            answers[field] = read(form, preferences)
        except Refused as refused:
            at = refused.refusal.at
            refusals.append(refused.refusal.placed(at if at in question.fields else field))
    if refusals:
        raise Refused(*refusals)
    return answers


def is_answered(question: Question, form: Form) -> bool:
    """Whether something stands in the question's first field; the last may be left empty knowingly."""
    return question.fields[0] in form.typed and (
        question.name == "reads" or bool(form.text(question.fields[0]))
    )


def six_answers(form: Form, preferences: Preferences, *, from_leaflet: bool) -> SixAnswers:
    """All six read together; refused at the first that is missing."""
    told: dict[str, Any] = {}
    for question in QUESTIONS:
        told |= answers_to(question, form, preferences)
    return SixAnswers(
        film=told["film"],
        format=told["format"],
        index=told["index"],
        developer=told["developer"],
        dilution=told["dilution"],
        time_s=told["time"],
        temp_c=told["temp"],
        tank_ml=told["tank"],
        reads_c=told["reads"],
        from_leaflet=from_leaflet,
    )


def format_of(form: Form) -> Format:
    """The format chosen; length and sheets count only for the two that ask them."""
    kinds: dict[str, FormatKind] = {kind: kind for kind in KINDS}
    kind = kinds.get(form.text("format"), "135-36")
    if kind == "135-length":
        return Format(kind, length_m=_number(form, "length_m"))
    return Format(kind, sheets=int(_number(form, "sheets"))) if kind == "4x5" else Format(kind)


def name_of(form: Form, field: str) -> str:
    """A name of the person's own; nothing typed is refused."""
    typed = " ".join(form.text(field).split())
    if not typed:
        raise refuse("name-missing", what=field)
    if len(typed) > LONGEST_NAME:
        raise refuse("name-too-long", most=LONGEST_NAME)
    return typed


def _number(form: Form, field: str) -> float:
    """A plain number of a field, nought where nothing was typed."""
    typed = form.text(field).replace(",", ".")
    try:
        return float(typed or 0)
    except ValueError:
        raise refuse(
            "number-unreadable", at=field, ways_on=("type-again",), typed=typed[:LONGEST_NAME]
        ) from None


def _temperature_now(form: Form, preferences: Preferences) -> float | None:
    """What the developer reads, or None while it is not mixed."""
    return read_temperature(form.text("reads"), preferences) if form.text("reads") else None


def _say_reads(told: Answers, preferences: Preferences) -> str:
    if told["reads"] is None:
        return "not mixed yet"
    return f"reads {temperature_text(told['reads'], preferences)}"


QUESTIONS = (
    Question(
        "film",
        "Which film, and what format?",
        "film and format",
        {"film": lambda form, _: name_of(form, "film"), "format": lambda form, _: format_of(form)},
        lambda told, _: f"film: {told['film']}, {said_format(told['format'])}",
        ("film", "format", "length_m", "sheets"),
    ),
    Question(
        "index",
        "At what index was it exposed?",
        "index",
        {"index": lambda form, _: read_index(form.text("index"))},
        lambda told, _: f"index: {told['index']:g}",
        ("index",),
    ),
    Question(
        "developer",
        "Which developer, and how diluted?",
        "developer, and how diluted",
        {
            "developer": lambda form, _: name_of(form, "developer"),
            "dilution": lambda form, _: read_dilution(form.text("dilution")),
        },
        lambda told, _: f"developer: {told['developer']} {told['dilution']}",
        ("developer", "dilution"),
    ),
    Question(
        "time",
        "What time and temperature does the leaflet print?",
        "time and temperature, as printed",
        {
            "time": lambda form, _: read_time(form.text("time")),
            "temp": lambda form, preferences: read_temperature(form.text("temp"), preferences),
        },
        lambda told, preferences: (
            f"{time_text(told['time'])} at {temperature_text(told['temp'], preferences)}"
        ),
        ("time", "temp"),
    ),
    Question(
        "tank",
        "How much does your tank take?",
        "tank",
        {"tank": lambda form, preferences: read_volume(form.text("tank"), preferences)},
        lambda told, preferences: f"tank: {volume_text(told['tank'], preferences)}",
        ("tank",),
    ),
    Question(
        "reads",
        "What does the developer read now?",
        "thermometer, now",
        {"reads": _temperature_now},
        _say_reads,
        ("reads",),
    ),
)
FIELDS = tuple(field for one in QUESTIONS for field in one.fields)
