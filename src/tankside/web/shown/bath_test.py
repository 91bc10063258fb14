"""What the page of a bath's test asks, and how to do the test."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.shelf.bottles import Batch, Bottle
from tankside.web.shown.minded import Said, at_the_shelf


@dataclass(frozen=True, slots=True)
class ShownTest:
    """One bottle to test; `asked` says whether a fresh time is kept, asked besides, or is timed tonight."""

    code: str
    name: str
    kind: str
    asked: str
    cautions: tuple[Said, ...]


def shown_test(bottle: Bottle, batch: Batch, *, asked: str) -> ShownTest:
    """The page for one bottle."""
    return ShownTest(bottle.code, batch.name, batch.kind, asked, at_the_shelf(batch.kind, "test"))
