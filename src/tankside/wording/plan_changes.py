"""What a change of plan changed, in words."""

from __future__ import annotations

from tankside.core.planning.change import Difference, What
from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences

BATHS = {
    "presoak": "Presoak",
    "develop": "Develop",
    "stop": "Stop bath",
    "fix": "Fix",
    "aid": "Washing aid",
    "wash": "Wash",
    "wetting": "Wetting bath",
    "rinse": "Rinse",
}
SENTENCES: dict[What, str] = {
    "starts": "{tankful} is poured {after} after A instead of {before}.",
    "ends": "It ends {apart} {way}.",
    "rolls": "{tankful} holds {after} rolls instead of {before}.",
    "tankful-added": "{tankful} is added.",
    "tankful-gone": "{tankful} is left out.",
    "aim": "{bath} of {tankful} takes {after} instead of {before}.",
    "bath-added": "{bath} of {tankful} is added.",
    "bath-gone": "{bath} of {tankful} is left out.",
    "mix-to": "Mix the developer to {after}.",
}


def difference_sentence(one: Difference, preferences: Preferences) -> str:
    """One thing that a change of plan changed.

    >>> difference_sentence(Difference("starts", 3045.0, 600.0, "s", "B"), Preferences())
    'B is poured 10:00 after A instead of 50:45.'
    """
    if one.what == "mix-to" and one.after is None:
        return "The developer is mixed already."
    after = one.after or 0.0
    return SENTENCES[one.what].format(
        tankful=one.tankful or "",
        bath=BATHS.get(one.about.partition(".")[2], ""),
        before=_text(one.before or 0.0, one.unit, preferences),
        after=_text(after, one.unit, preferences),
        apart=_text(abs(after), one.unit, preferences),
        way="later" if after > 0 else "earlier",
    )


def _text(value: float, unit: str, preferences: Preferences) -> str:
    """A number in its unit."""
    if unit == "s":
        return time_text(value)
    return temperature_text(value, preferences) if unit == "C" else f"{value:g}"
