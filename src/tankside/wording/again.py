"""What changed since last time in one sentence each, and what goes on in the house in one line."""

from __future__ import annotations

from typing import assert_never

from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.proposals import changed_words
from tankside.wording.refusals import PLAIN
from tankside.workflows.since_last_time import (
    Corrected,
    FixerNearItsLimit,
    FixerTestDue,
    OtherBottle,
    OtherFilm,
    OtherTime,
    OwnTimeLeft,
    SinceThen,
)

NOTHING_CHANGED = "Nothing else has changed since last time."
NAMES = {"stop bath": "Stop bath", "fixer": "Fixer", "wetting agent": "Wetting agent"}


def changed_sentence(one: SinceThen, preferences: Preferences = PLAIN) -> str:  # noqa: PLR0911 - a line a change
    """One change in one sentence.

    >>> changed_sentence(OtherBottle("fixer", "K7M4-T", "white", "7MPA-4"))
    'Fixer comes from K7M4-T, white cap, not from 7MPA-4.'
    >>> changed_sentence(OtherTime("Ferry 125", 540.0, 20.0, 570.0, 20.0))
    'Ferry 125 is timed by 9:00 at 20.0 °C, no longer by 9:30 at 20.0 °C.'
    """
    match one:
        case OtherBottle(kind, code, cap, was):
            where = f"{code}, {cap} cap" if cap else code
            before = f", not from {was}" if was else ""
            return f"{NAMES.get(kind, kind)} comes from {where}{before}."
        case FixerNearItsLimit(code, left):
            then = "nothing more" if left < 1 else f"{left} roll{'' if left == 1 else 's'} more"
            return f"After these the fixer in {code} takes {then}: mix fresh before the next time."
        case FixerTestDue(code):
            return f"Half of what the fixer in {code} may take is used: test it on a piece of film first."
        case OtherTime(film, time_s, temp_c, was_s, was_c):
            now, was = (
                f"{time_text(seconds)} at {temperature_text(there, preferences)}"
                for seconds, there in ((time_s, temp_c), (was_s, was_c))
            )
            return f"{film} is timed by {now}, no longer by {was}."
        case OtherFilm(film):
            return f"{film} did not go last time; it is timed by its own leaflet."
        case OwnTimeLeft(time_s):
            return f"The {time_text(time_s)} of your own is left out: the time is worked out again."
        case Corrected(because):
            return changed_words(because.proposal, preferences)
        case _:
            assert_never(one)


def rolls_wait(count: int) -> str:
    """How many wait, for the first screen.

    >>> rolls_wait(0), rolls_wait(1), rolls_wait(3)
    ('No roll is waiting.', 'One roll is waiting.', '3 rolls are waiting.')
    """
    return {0: "No roll is waiting.", 1: "One roll is waiting."}.get(count, f"{count} rolls are waiting.")
