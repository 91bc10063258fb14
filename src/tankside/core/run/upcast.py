"""Old versions of stored bodies brought up to the present one, step by step."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from tankside.core.run.events import EVENTS

Stored = Mapping[str, object]

STEPS: Mapping[tuple[str, int], Callable[[Stored], Stored]] = MappingProxyType({})
"""(kind, version) to what makes the next version of it; none has been needed yet."""


def upcast(kind: str, version: int, stored: Stored) -> Stored:
    """A stored body at the present version of its kind; ValueError if this program is too old for it.

    >>> upcast("note-written", 1, {"text": "fan on"})
    {'text': 'fan on'}
    """
    known = EVENTS.get(kind)
    if known is None or version > known.version:
        raise ValueError(f"{kind} version {version} was written by a newer program")
    while version < known.version:
        stored = STEPS[kind, version](stored)
        version += 1
    return stored
