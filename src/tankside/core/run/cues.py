"""A cue is one thing to do now; a script is all of them, with the acts that they hang on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from tankside.core.methods.baths import BathKind
from tankside.core.run.anchors import Anchors, drained, poured
from tankside.core.run.commands import Asked

CueKind = Literal["measure", "pour", "invert", "rotate", "drain", "water", "hang"]


@dataclass(frozen=True, slots=True)
class Cue:
    """One thing to do `after_s` seconds after `anchor` was noted, give or take `soft_s`.

    It may be done from `least_s` to `most_s` after the anchor (None: as late as one likes). `command` notes
    it (None: taken as done), `gives` is the anchor that noting it makes known. `n` counts fills and cycles.
    """

    id: str
    tankful: str
    bath: str | None
    bath_kind: BathKind | None
    kind: CueKind
    anchor: str
    after_s: float
    lasts_s: float
    soft_s: float = 0.0
    least_s: float = 0.0
    most_s: float | None = None
    bottle: str | None = None
    liquid: str | None = None
    ml: float | None = None
    to: str | None = None
    n: int = 0
    of: int = 0
    command: Asked | None = None
    gives: str | None = None

    @property
    def aim_s(self) -> float:
        """When it should be done, in seconds after its anchor."""
        return self.after_s


@dataclass(frozen=True, slots=True)
class Script:
    """The cues of a run in order of tankful and bath; `anchors` are the acts known so far, by name."""

    cues: tuple[Cue, ...]
    anchors: Anchors

    def done(self, cue: Cue) -> bool:
        """Whether what a cue asks for has been noted, or its bath has gone on without it."""
        known = self.anchors.known_us
        if cue.gives is not None and cue.gives in known:
            return True
        match cue.kind:
            case "measure":
                return poured(cue.bath or "") in known
            case "invert" | "rotate" | "water":
                return drained(cue.bath or "") in known
            case _:
                return False

    def at_us(self, cue: Cue) -> int | None:
        """When a cue falls due by what is known and expected, None where even its anchor is not expected."""
        anchor_us = self.anchors.at_us(cue.anchor)
        return None if anchor_us is None else anchor_us + round(cue.after_s * 1e6)

    def told_us(self, cue: Cue) -> int | None:
        """When a cue is given: only once its anchor has been noted."""
        anchor_us = self.anchors.known_us.get(cue.anchor)
        return None if anchor_us is None else anchor_us + round(cue.after_s * 1e6)

    def as_of(self, now_us: int) -> Script:
        """The same, expecting nothing that is not done before now."""
        return replace(self, anchors=self.anchors.expecting(links(self.cues), from_us=now_us))


def links(cues: Iterable[Cue]) -> list[tuple[str, float, str | None]]:
    """What follows from what: anchor, seconds after it, and the anchor that it gives."""
    return [(cue.anchor, cue.after_s, cue.gives) for cue in cues]
