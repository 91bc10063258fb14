"""What a cue says: on its mark, on the button that notes it, and aloud."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import assert_never

from tankside.core.methods.baths import BathKind
from tankside.core.quantities.display import time_text, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.cues import Cue
from tankside.wording.refusals import PLAIN

LANGUAGE = "en"
"""The one language that these sentences are written in."""

BATHS: Mapping[BathKind, str] = MappingProxyType(
    {
        "presoak": "Presoak",
        "develop": "Develop",
        "stop": "Stop bath",
        "fix": "Fix",
        "aid": "Washing aid",
        "wash": "Wash",
        "wetting": "Wetting bath",
    }
)
"""A bath is never shortened."""

LIQUIDS: Mapping[BathKind, str] = MappingProxyType(
    {
        "presoak": "water",
        "develop": "developer",
        "stop": "stop bath",
        "fix": "fixer",
        "aid": "washing aid",
        "wash": "water",
        "wetting": "wetting bath",
    }
)


@dataclass(frozen=True, slots=True)
class Words:
    """`words` stand on the mark, `noted` on the button that notes it (empty where nothing is noted).

    `spoken` is said aloud in `language`, with the code of a bottle spelt.
    """

    words: str
    noted: str
    spoken: str
    language: str


def cue_words(cue: Cue, preferences: Preferences = PLAIN) -> Words:
    """A cue in words: 'Invert, 10 s', 'K7M4-T, pouring', 'Draining, back into K7M4-T'."""
    words = _words(cue, preferences)
    spoken = f"{cue.tankful}: {_spelt(words, cue.bottle)}"
    return Words(words, _noted(cue), spoken, LANGUAGE)


def _words(cue: Cue, preferences: Preferences) -> str:  # noqa: PLR0911 - one arm a kind
    liquid = LIQUIDS[cue.bath_kind] if cue.bath_kind else ""
    match cue.kind:
        case "invert":
            return f"Invert, {_seconds(cue.lasts_s)}"
        case "rotate":
            return f"Rotate, {_seconds(cue.lasts_s)}"
        case "measure":
            amount = f"{volume_text(cue.ml, preferences)} of " if cue.ml is not None else ""
            return f"Measure {amount}{liquid}, {cue.bottle}" if cue.bottle else f"Measure {amount}{liquid}"
        case "pour":
            if cue.bath_kind == "wash":
                return f"Pour water, first of {cue.of} fills"
            return f"Pour {liquid}, {cue.bottle}" if cue.bottle else f"Pour {liquid}"
        case "drain":
            return f"Drain, {_home(cue)}"
        case "water":
            return f"New water, fill {cue.n} of {cue.of}"
        case "hang":
            return "Hang the film"
        case _:
            assert_never(cue.kind)


def _noted(cue: Cue) -> str:  # noqa: PLR0911 - one arm a kind
    match cue.kind:
        case "invert" | "rotate":
            return ""
        case "measure":
            return f"{cue.bottle}, measured" if cue.bottle else "Measured"
        case "pour":
            if cue.bottle:
                return f"{cue.bottle}, pouring"
            return "Water, pouring" if cue.bath_kind == "wash" else f"{_name(cue)}, pouring"
        case "drain":
            return f"Draining, {_home(cue)}"
        case "water":
            return "Water changed"
        case "hang":
            return "Hung"
        case _:
            assert_never(cue.kind)


def _home(cue: Cue) -> str:
    return "down the drain" if cue.to in (None, "drain") else f"back into {cue.to}"


def _name(cue: Cue) -> str:
    return LIQUIDS[cue.bath_kind].capitalize() if cue.bath_kind else ""


def _seconds(time_s: float) -> str:
    return f"{time_s:.0f} s" if time_s < 60 else time_text(time_s)


def _spelt(words: str, bottle: str | None) -> str:
    """Units in full and the code spelt letter by letter, so that a voice does not make a word of it."""
    said = words.replace(" s", " seconds") if words.endswith(" s") else words
    if bottle is None:
        return said
    return said.replace(bottle, " ".join(bottle.replace("-", "")))
