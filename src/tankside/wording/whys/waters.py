"""Why so much hot and so much cold water."""

from __future__ import annotations

from tankside.core.planning.why import Length
from tankside.core.quantities.display import temperature_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.words import WhyWords


def _taps(length: Length, preferences: Preferences) -> tuple[str, str]:
    """What the waters are for."""
    target = temperature_text(length.figure("target_c"), preferences)
    return "From the taps", f"What brings stock and jug to {target}."


WORDS = WhyWords(
    means={"hot": "the right amount", "cold": "the right amount"},
    lengths={"taps": _taps},
    parts={
        "hot-reading": "reading of the hot water",
        "cold-reading": "reading of the cold water",
        "stock-reading": "warmth of the stock",
        "jug": "what the jug takes",
    },
    narrows={
        "read-taps": "Read both taps again just before mixing.",
        "weigh-jug": "Say what the jug weighs.",
        "hold-back": "Hold back the last 50 mL and read.",
    },
    names={
        "target_c": "wanted in the jug", "hot_c": "hot water", "cold_c": "cold water", "stock_c": "stock",
        "stock_ml": "stock", "jug_ml": "jug, as water",
    },
)  # fmt: skip
