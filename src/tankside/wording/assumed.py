"""What a plan takes for granted, in one sentence, and each thing with what 'Change' opens."""

from __future__ import annotations

from collections.abc import Sequence
from typing import assert_never

from tankside.core.planning.assumptions import Assumption
from tankside.core.quantities.display import temperature_text, time_text, volume_text
from tankside.core.quantities.preferences import Preferences


def assumed_sentence(assumed: Sequence[Assumption], preferences: Preferences) -> str:
    """Everything assumed in one sentence; nothing assumed is an empty text.

    >>> assumed_sentence([Assumption("one-shot"), Assumption("room", 20.0)], Preferences())
    'Assumed: the developer is used once; the room is at 20.0 °C.'
    """
    parts = [assumed_words(one, preferences) for one in assumed]
    return f"Assumed: {'; '.join(parts)}." if parts else ""


def assumed_words(one: Assumption, preferences: Preferences) -> str:  # noqa: C901, PLR0911, PLR0912 - one line a thing
    """One thing assumed, as part of a sentence."""
    value = one.value or 0.0
    match one.code:
        case "one-shot":
            return "the developer is used once"
        case "agitation":
            return f"inverted for the first {value:g} s, then 10 s each minute"
        case "stop":
            return f"stop bath {time_text(value)}"
        case "fix":
            return f"fix {time_text(value)}"
        case "wash":
            return f"wash in {one.text} fills of {time_text(value)}"
        case "wetting":
            return f"wetting bath {time_text(value)}"
        case "no-presoak":
            return "no presoak"
        case "fixer-parts":
            return f"fixer {one.text}, unless its label says otherwise"
        case "stop-parts":
            return f"stop bath {one.text}, unless its label says otherwise"
        case "wetting-parts":
            return f"wetting agent {one.text}, unless its label says otherwise"
        case "room":
            return f"the room is at {temperature_text(value, preferences)}"
        case "tank-at-room":
            return "the empty tank is as warm as the room"
        case "tank-worth":
            return f"the tank takes heat like {volume_text(value, preferences)} of water"
        case "thermometer-true":
            return "the thermometer reads true"
        case _:
            assert_never(one.code)
