"""Why a tank holds enough developer for its film, in words."""

from __future__ import annotations

from tankside.core.planning.why import Length, Why
from tankside.core.quantities.display import volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.words import WhyWords


def _sentence(why: Why, preferences: Preferences) -> str:
    """Enough, or unknown."""
    needed = next((one for one in why.lengths if one.code == "stock-needed"), None)
    if needed is None:
        return "The stock in the tank; how much the film needs is on no leaflet noted here."
    needs = volume_text(needed.estimate.value, preferences)
    return f"Stock in the tank, enough for the {needs} that its film needs."


def _held(length: Length, preferences: Preferences) -> tuple[str, str]:
    """What the tank holds."""
    stock, water = (length.figure(one) for one in ("stock_parts", "water_parts"))
    return "The tank holds", f"{volume_text(length.figure('volume_ml'), preferences)} at {stock:g}+{water:g}."


def _needed(length: Length, preferences: Preferences) -> tuple[str, str]:
    """What the film needs."""
    each = volume_text(length.figure("each_ml"), preferences)
    return "The film needs", f"{each} a roll by the leaflet, for {length.figure('units'):g}."


WORDS = WhyWords(
    sentences={"least-stock": _sentence},
    lengths={"stock-held": _held, "stock-needed": _needed},
    narrows={"note-least-stock": "Note the leaflet's least stock for a roll."},
    names={
        "stock_parts": "parts of stock", "water_parts": "parts of water", "each_ml": "least stock a roll",
    },
    leaves_out={
        "leaflet-has-the-word": "The leaflet's own figure has the last word; weak developer gives thin, "
        "flat negatives without a warning.",
    },
)  # fmt: skip
