"""Volumes as people write them."""

from __future__ import annotations

import re

from tankside.core.quantities.convert import IMPERIAL_FL_OZ_ML, US_FL_OZ_ML, ml_each
from tankside.core.quantities.limits import USUAL_VOLUME_ML, VOLUME_ML, Limits, check_volume
from tankside.core.quantities.preferences import Preferences
from tankside.core.quantities.typed import MIXED, Candidate, number, one_of, plain, unreadable

_TYPED = re.compile(
    rf"(?P<number>{MIXED}|\d+(?: \d{{3}})*(?:[.,]\d+)?|\d*[.,]\d+) ?"
    r"(?:(?P<kind>us|u\.s\.|american|imperial|imp\.?|uk) ?)?(?P<unit>[a-z][a-z. ]*\d?)?"
)
_METRIC_ML = {
    **dict.fromkeys(("ml", "cc", "cm3", "millilitre", "millilitres", "milliliter", "milliliters"), 1.0),
    **dict.fromkeys(("cl", "centilitre", "centilitres"), 10.0),
    **dict.fromkeys(("dl", "decilitre", "decilitres"), 100.0),
    **dict.fromkeys(("l", "litre", "litres", "liter", "liters"), 1000.0),
}
_FLUID_OUNCES = ("fl oz", "fl. oz.", "fl. oz", "floz", "oz", "oz.", "fluid ounce", "fluid ounces", "ounces")
_THOUSANDS = re.compile(r"([1-9]\d{0,2})[.,](\d{3})")


def read_volume(text: str, preferences: Preferences, *, usual: Limits = USUAL_VOLUME_ML) -> float:
    """Millilitres of a volume as typed: '500', '500 ml', '0.5 l', '17 fl oz', '17 imperial fl oz'.

    A bare number is in the person's unit. Asked back: a bare number that is `usual` only in another unit
    ('0.5'), a comma that may part thousands ('1,000 ml'), fluid ounces of a person who uses millilitres.
    Result: mL, within the limits. Own model: docs/how-to/amounts. Doubt: none.

    >>> read_volume("0,5 l", Preferences()), round(read_volume("17", Preferences(volume="us_fl_oz")))
    (500.0, 503)
    """
    found = _TYPED.fullmatch(plain(text))
    units = _units(found, preferences) if found is not None else {}
    if found is None or not units:
        raise unreadable("volume-unreadable", text)
    candidates = [
        Candidate(f"{written} {name}", value * each)
        for written, value in _numbers(found["number"])
        for name, each in units.items()
    ]
    readable = [one for one in candidates if VOLUME_ML.hold(one.value)]
    if found["unit"] is None:
        readable = _bare(readable, usual)
    return (
        one_of(readable, code="volume-two-readings", typed=text)
        if readable
        else check_volume(candidates[0].value)
    )


def _numbers(typed: str) -> list[tuple[str, float]]:
    """The one or two numbers that `typed` may be, each with a text that says it without doubt."""
    joined = typed if "/" in typed else typed.replace(" ", "")
    thousands = _THOUSANDS.fullmatch(joined)
    if thousands is None:
        told = number(f"0{joined}" if joined[0] in ".," else joined)
        return [(joined, told)]
    whole, rest = thousands.groups()
    return [(whole + rest, float(whole + rest)), (f"{number(joined):g}", number(joined))]


def _units(found: re.Match[str], preferences: Preferences) -> dict[str, float]:
    """The units that may be meant, in mL, the likeliest first; none if the word is no unit."""
    unit, kind = (found["unit"] or "").strip(), found["kind"]
    if not unit:
        own = {"ml": "mL", "us_fl_oz": "US fl oz", "imperial_fl_oz": "imperial fl oz"}[preferences.volume]
        also = {"US fl oz": US_FL_OZ_ML} if preferences.volume == "ml" else {"mL": 1.0}
        return {} if kind else {own: ml_each(preferences.volume), "L": 1000.0, **also}
    if unit in _METRIC_ML:
        return {} if kind else {unit: _METRIC_ML[unit]}
    if unit not in _FLUID_OUNCES:
        return {}
    both = {"US fl oz": US_FL_OZ_ML, "imperial fl oz": IMPERIAL_FL_OZ_ML}
    told = kind or {"ml": "", "us_fl_oz": "us", "imperial_fl_oz": "imperial"}[preferences.volume]
    if not told:
        return both
    name = "imperial fl oz" if told[0] == "i" or told == "uk" else "US fl oz"
    return {name: both[name]}


def _bare(readable: list[Candidate], usual: Limits) -> list[Candidate]:
    """Readings of a bare number: its own unit, or what it would usually be beside what it says."""
    own = [one for one in readable if _unit_of(one) == _unit_of(readable[0])]
    if len(own) != 1 or usual.hold(own[0].value):
        return own
    likely = next((one for one in readable if usual.hold(one.value)), None)
    return own if likely is None else [likely, *own]


def _unit_of(one: Candidate) -> str:
    """The unit of a reading."""
    return one.entry.split(" ", 1)[1]
