"""Old versions of stored bodies brought up to the present one, step by step."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from tankside.core.planning.stored_plans import with_rates
from tankside.core.run.events import EVENTS

Stored = Mapping[str, Any]


def _with_rates(body: Stored) -> Stored:
    """A body that holds a plan, whose developments carry a whole rate."""
    return {**body, "plan": with_rates(body["plan"])}


STEPS: Mapping[tuple[str, int], Callable[[Stored], Stored]] = MappingProxyType(
    {("run-opened", 1): _with_rates, ("plan-amended", 1): _with_rates}
)
"""(kind, version) to what makes the next version of it."""


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
