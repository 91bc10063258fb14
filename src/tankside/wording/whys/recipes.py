"""Why a formula comes to these amounts, in words."""

from __future__ import annotations

from tankside.core.planning.why import Length, Narrowing, Why
from tankside.core.quantities.display import plain_number, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.words import WhyWords


def _headline(why: Why, preferences: Preferences) -> str:
    """'600 mL of D-76'."""
    asked = why.input("recipe_ml")
    return f"{volume_text(asked.value, preferences)} of {asked.origin}"


def _sentence(why: Why, _: Preferences) -> str:
    """Which part the scale knows least."""
    least = next(one for one in why.lengths if one.estimate == why.answer)
    substance = least.figures[0].code
    return f"Each part as published, for this volume; the scale knows {substance} least: {_off(least)}."


def _part(length: Length, _: Preferences) -> tuple[str, str]:
    """One part: as published, and what the scale makes of it."""
    published, swapped = length.figures
    form = f", weighed as {swapped.origin}" if swapped.value else ""
    per_l = plain_number(published.value, 0.1)
    head = published.code[0].upper() + published.code[1:]
    return head, f"{per_l} {published.unit} as published{form}, {_off(length)}."


def _off(length: Length) -> str:
    """By how much a part may be off."""
    of = length.estimate
    percent = 100 * (of.high - of.value) / of.value
    return f"±{percent:.0f} %" if percent >= 1 else "under ±1 %"


def _mix_more(told: Narrowing, preferences: Preferences) -> str:
    """A larger volume."""
    return f"Mix {volume_text(told.figure('larger_ml'), preferences)}, or use a finer scale."


WORDS = WhyWords(
    headlines={"recipe": _headline},
    sentences={"recipe": _sentence},
    lengths={"part": _part},
    narrows={"mix-more": _mix_more},
    names={"recipe_ml": "to mix", "litres": "in litres", "scale": "mark of the scale"},
)
