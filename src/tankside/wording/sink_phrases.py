"""Words that the page at the sink fills with figures of its own, so that no sentence lives in a script."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

PHRASES: Mapping[str, str] = MappingProxyType(
    {
        "tankful": "Tankful {letter}",
        "next-tankful": "next: {letter}, {tank}",
        "in-touch": "in touch",
        "out-of-touch": "out of touch",
        "watching-one": "in touch, one other screen watching",
        "watching": "in touch, {n} other screens watching",
        "minutes-left": "minutes left",
        "seconds-left": "seconds left",
        "seconds": "seconds",
        "residual": "g/m² left",
        "in": "in {t}",
        "now": "now",
        "ago": "{t} ago",
        "at-left": "at {t} left",
        "at-end": "at 0:00",
        "left": "{t} left",
        "over": "{t} over",
        "or-left": "or {t} left: a clock is doubted",
        "due-in": "due in {t}",
        "due-now": "due now",
        "due-ago": "due {t} ago",
        "hold": "hold for a second: it is early",
        "press-again": "press once more to do it early",
        "pour": "Pour",
        "stay-until": "may stay until {t}",
        "longer-harmless": "longer does no harm",
        "too-long": "over by {t}: drain now",
        "timer": "{name}: {m} minutes {s} seconds left",
        "timer-over": "{name}: {m} minutes {s} seconds over",
        "timer-waiting": "{name}: not poured yet",
        "empty-for": "Tank empty for {t}. Pour now:",
        "pour-before": "pour before",
        "kept-here": "{n} kept on this device, sent when in touch again.",
        "requests-off": "Out of touch. What you note is kept here and sent later; "
        "bottles, changes of plan and skipping wait until then.",
        "not-stored": "The server could not write that down. It is kept on this device and sent again.",
        "noted": "Noted {t}: {what}.",
        "clocks-parted": "This screen's clock jumped. The time was asked again.",
        "no-wake-lock": "This page cannot keep the screen on here. Set a long screen time-out.",
        "screen-stays-on": "This screen stays on while the page is open.",
        "sound-check": "Sound check",
        "hands-next": "What the hands do next",
        "nothing-next": "Nothing more to do",
        "bench": "The bottles on the bench, from the left",
        "other-tanks": "The other tanks",
        "refused-earlier": "A number of seconds, from 0 to 7200.",
        "refused-scan": "No bottle on this bench has that code.",
        "refused-skip": "Say why, in a word or two.",
        "right-earlier": "10 s earlier",
        "right-later": "10 s later",
        "right-not": "It did not happen",
        "away-read": "I have read it",
        "all-hung": "Everything hangs",
    }
)
