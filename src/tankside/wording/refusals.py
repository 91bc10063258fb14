"""What a refusal says: what is wrong, with the numbers, and the ways on.

A new refusal needs one line in the file of its thing under `sentences`, and one for each new way on.
"""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal
from tankside.wording.numbers import spoken
from tankside.wording.sentences import (
    amounts,
    chemicals,
    curve,
    film,
    journal,
    keeping,
    liquids,
    machine,
    plan,
    sink,
    store,
    temperature,
)

SPEAKERS = (
    amounts, chemicals, curve, film, journal, keeping, liquids, machine, plan, sink, store, temperature,
)  # fmt: skip
SENTENCES = {code: text for speaker in SPEAKERS for code, text in speaker.SENTENCES.items()}
WAYS_ON = {code: text for speaker in SPEAKERS for code, text in speaker.WAYS_ON.items()}

PLAIN = Preferences()


@dataclass(frozen=True, slots=True)
class WayOn:
    """One thing that can be done next: `label` stands on its button.

    `entry` is what to write into the refused field instead, for a reading that was asked back.
    """

    code: str
    label: str
    entry: str | None = None


@dataclass(frozen=True, slots=True)
class Said:
    """A refusal as a person reads it."""

    sentence: str
    ways_on: tuple[WayOn, ...] = ()


def say_refusal(refusal: Refusal, preferences: Preferences = PLAIN) -> Said:
    """The refusal in one sentence with its numbers in the person's units, and what each way on is called.

    >>> said = say_refusal(Refusal("no-volume", {"volume_ml": 0.0}, ways_on=("type-again",)))
    >>> said.sentence, said.ways_on[0].label
    ('A volume of 0 mL cannot be noted.', 'Type it again')
    """
    ways = tuple(
        WayOn(way, _label(refusal, way, preferences), _entry(refusal, way)) for way in refusal.ways_on
    )
    return Said(_filled(SENTENCES.get(refusal.code), refusal, preferences), ways)


def say(refusal: Refusal, preferences: Preferences = PLAIN) -> str:
    """The refusal in one sentence, and each way on in one of its own.

    >>> say(Refusal("port-in-use", {"port": 8462}, ways_on=("other-port",)))
    'Port 8462 is taken by another program. Choose another with --port NUMBER, or any free one with --port 0.'
    """
    sentence = _filled(SENTENCES.get(refusal.code), refusal, preferences)
    return " ".join([sentence, *(_way(refusal, way, preferences) for way in refusal.ways_on)])


def _filled(template: str | None, refusal: Refusal, preferences: Preferences) -> str:
    """A template with the refusal's numbers in it; without one the code and its numbers."""
    numbers = spoken(refusal.numbers, preferences)
    if template is not None:
        return template.format_map(numbers)
    told = ", ".join(f"{_words(name)} {value}" for name, value in numbers.items())
    return f"No: {_words(refusal.code)}{f' ({told})' if told else ''}."


def _way(refusal: Refusal, way: str, preferences: Preferences) -> str:
    """A way on as a sentence."""
    return _filled(WAYS_ON.get(way, f"Way on: {_words(way)}."), refusal, preferences)


def _label(refusal: Refusal, way: str, preferences: Preferences) -> str:
    """A way on as the words of a button; a reading that was asked back says what it means."""
    means = amounts.READINGS.get(refusal.code, {}).get(way)
    if means is None:
        return _way(refusal, way, preferences).removesuffix(".")
    return _filled(means, refusal, preferences)


def _entry(refusal: Refusal, way: str) -> str | None:
    """What to write instead, where the way on is one of two readings."""
    name = amounts.ENTRIES.get(way)
    return None if name is None else str(refusal.numbers[name])


def _words(code: str) -> str:
    return code.replace("-", " ").replace("_", " ")
