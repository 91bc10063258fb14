"""What the Change page offers: rolls, tanks, when, what is assumed, and the ways on of a refusal."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from urllib.parse import urlencode

from tankside.core.planning.assumptions import Assumption
from tankside.core.planning.plan import Held, Plan
from tankside.core.planning.wish import Wish
from tankside.core.quantities.display import index_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refused
from tankside.web.ways_on import PAGES
from tankside.wording.assumed import assumed_words
from tankside.wording.plan import at_place, held_sentence
from tankside.wording.refusals import WayOn, say_refusal

FORMS = {
    "agitation": "agitation", "stop": "time", "fix": "time", "wetting": "time", "wash": "wash",
    "fixer-parts": "parts", "stop-parts": "parts", "wetting-parts": "parts", "room": "room",
    "tank-worth": "place", "thermometer-true": "place", "tank-at-room": "place",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class InPlan:
    """A roll of the plan."""

    key: str
    code: str
    film: str


@dataclass(frozen=True, slots=True)
class HeldBack:
    """A precious roll that waits for its owner's word."""

    key: str
    code: str
    sentence: str


@dataclass(frozen=True, slots=True)
class Changeable:
    """One thing assumed: `form` names the fields that change it, empty where nothing here can."""

    code: str
    words: str
    form: str


@dataclass(frozen=True, slots=True)
class Way:
    """A way on of a refusal: a link where `path` is set, else a button that sends `before` and `change`."""

    label: str
    path: str = ""
    change: str = ""
    before: str = ""
    volume: str = ""


@dataclass(frozen=True, slots=True)
class No:
    """A refusal with its ways on."""

    sentence: str
    ways: tuple[Way, ...]


@dataclass(frozen=True, slots=True)
class ShownChange:
    """The whole page."""

    rolls: tuple[InPlan, ...]
    held: tuple[HeldBack, ...]
    starts: str
    assumed: tuple[Changeable, ...]


def shown_change(plan: Plan, wish: Wish, preferences: Preferences) -> ShownChange:
    """Everything about a plan that can be changed."""
    held = {one.roll for one in plan.held}
    return ShownChange(
        tuple(
            InPlan(str(one.roll.key), one.roll.code, f"{one.roll.film.name}, {index_text(one.roll.index)}")
            for one in wish.rolls
            if one.roll.key not in held
        ),
        tuple(_held(one) for one in plan.held),
        f"{at_place(plan, wish.starts):%H:%M}",
        tuple(_changeable(one, preferences) for one in wish.assumed),
    )


def _held(one: Held) -> HeldBack:
    """A roll held back, and why."""
    return HeldBack(str(one.roll), one.code, held_sentence(one))


def _changeable(one: Assumption, preferences: Preferences) -> Changeable:
    """A thing assumed, with what changes it."""
    words = assumed_words(one, preferences)
    return Changeable(one.code, words[0].upper() + words[1:], FORMS.get(one.code, ""))


def refusal_with_ways(refused: Refused, wish: Wish, change: str, preferences: Preferences) -> No:
    """The first refusal as a plate, each way on a button or a link."""
    said = say_refusal(refused.refusal, preferences)
    ways = (way for one in said.ways_on for way in _ways(one, refused, wish, change))
    return No(said.sentence, tuple(ways))


def _ways(way: WayOn, refused: Refused, wish: Wish, change: str) -> Iterator[Way]:
    """What one way on comes to on this page."""
    numbers = refused.refusal.numbers
    if way.code == "fewer-rolls":
        yield Way(way.label, path="/plan")
    elif way.code == "more-volume":
        yield Way(way.label, change=change, before="larger-tank", volume=f"{float(numbers['needs_ml']):g} ml")
    elif way.code == "stronger-dilution":
        yield Way(way.label, path=_other_dilution(wish, str(numbers["stronger"])))
    elif way.code == "take-it-anyway" and (held := _held_roll(wish, str(numbers.get("roll_code", "")))):
        yield Way(way.label, change=f"take-anyway:{held}")
    elif isinstance(path := PAGES.get(way.code), str):
        yield Way(way.label, path=path)


def _held_roll(wish: Wish, code: str) -> str:
    """The key of the roll with that code."""
    return next((str(one.roll.key) for one in wish.rolls if one.roll.code == code), "")


def _other_dilution(wish: Wish, parts: str) -> str:
    """The form of a leaflet's row for another dilution, whose time is asked for and never computed."""
    first = wish.rolls[0]
    asked = [
        ("film", first.roll.film.name),
        ("index", f"{first.roll.index:g}"),
        ("developer", first.combination.developer),
        ("dilution", parts),
        *(("roll", one.roll.code) for one in wish.rolls),
    ]
    return f"/leaflets/new?{urlencode(asked)}"
