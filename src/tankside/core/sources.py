"""Where a number comes from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

How = Literal["published", "common practice", "from memory", "own"]


@dataclass(frozen=True, slots=True)
class Source:
    """One work that values are taken from, as the bibliography lists it under `key`.

    `number` is that of the standard, report or volume, `date` as printed on it, `place` the publisher or
    journal; `how` says whether it was read ('published') or is quoted from memory.
    """

    key: str
    title: str
    number: str
    date: str
    place: str
    how: How

    def __str__(self) -> str:
        told = ", ".join(part for part in (self.title, self.number, self.place, self.date) if part)
        return told if self.how == "published" else f"{told} ({self.how})"


@dataclass(frozen=True, slots=True)
class Provenance:
    """How one value came: the `key` of its source and the page or table `at` which it stands there.

    Without a source (`key` empty) the value is common practice, from memory, or our own.

    >>> Provenance("published", "washing-1970", "table 2").told
    'published, washing-1970, table 2'
    """

    how: How
    key: str = ""
    at: str = ""

    def __post_init__(self) -> None:
        if self.how == "published" and not self.key:
            raise ValueError("a published value names its source")

    @property
    def told(self) -> str:
        """All three in one line."""
        return ", ".join(part for part in (self.how, self.key, self.at) if part)


OWN = Provenance("own")
COMMON_PRACTICE = Provenance("common practice")
