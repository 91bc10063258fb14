"""The ways on of a refusal as doors: what stands on each and where it leads."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal
from tankside.wording.refusals import say_refusal


@dataclass(frozen=True, slots=True)
class Door:
    """One way on that is a page."""

    label: str
    path: str


def _leaflet(refusal: Refusal) -> str:
    """The form of a leaflet's row, filled with what the refusal knows."""
    told = {name: refusal.numbers[name] for name in ("film", "index") if name in refusal.numbers}
    return "/leaflets/new?" + urlencode(told)


PAGES: Mapping[str, str | Callable[[Refusal], str]] = {
    "begin-first-evening": "/begin",
    "choose-rolls": "/rolls",
    "look-at-the-rolls": "/rolls",
    "another-roll-first": "/rolls",
    "look-at-the-shelf": "/shelf",
    "get-ready": "/plan/ready",
    "plan": "/plan",
    "read-taps": "/place",
    "add-a-tank": "/place",
    "larger-tank": "/place",
    "more-volume": "/place",
    "say-the-agent": "/leaflets",
    "add-leaflet-row": _leaflet,
    "enter-a-time": _leaflet,
}


def doors(refusals: Iterable[Refusal], preferences: Preferences) -> tuple[Door, ...]:
    """Every way on that is a page of its own, each once."""
    found = [
        Door(way.label, page(one) if callable(page) else page)
        for one in refusals
        for way in say_refusal(one, preferences).ways_on
        if (page := PAGES.get(way.code)) is not None
    ]
    return tuple(dict.fromkeys(found))
