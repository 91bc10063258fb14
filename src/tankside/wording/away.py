"""What is said after an outage: how long nobody looked, what fell due and what was noted meanwhile."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tankside.core.quantities.display import time_text
from tankside.core.run.cues import Cue
from tankside.wording.sink_acts import act_words
from tankside.wording.sink_answers import clock_words

COUNTED = {"invert": "inversion", "rotate": "rotation"}


def out_of_touch(from_us: int, to_us: int, zone: str) -> str:
    """From when to when, by the clock of the place.

    >>> out_of_touch(72_370_000_000, 72_700_000_000, "UTC")
    'Out of touch from 20:06:10 to 20:11:40.'
    """
    return f"Out of touch from {clock_words(from_us, zone)} to {clock_words(to_us, zone)}."


def what_happened(cues: Sequence[Cue], noted: int, *, several: bool = False) -> str:
    """'Due meanwhile: 3 inversions, measure stop bath, drain. 2 notes from then are kept.'"""
    fell = ", ".join(_fell(cues, several=several))
    due = f"Due meanwhile: {fell}." if fell else "Nothing fell due meanwhile."
    if not noted:
        return due
    kept = "One note from then is kept." if noted == 1 else f"{noted} notes from then are kept."
    return f"{due} {kept}"


def best_now(cue: Cue, due_us: int | None, now_us: int) -> str:
    """The next thing to note: at once, or in how long."""
    button = act_words(cue).button
    if due_us is None or due_us <= now_us:
        return f"Best now: {button}."
    return f"Nothing is late. Next: {button}, in {time_text((due_us - now_us) / 1e6)}."


def _fell(cues: Sequence[Cue], *, several: bool) -> Iterator[str]:
    """Inversions counted, everything else by name, tankful by tankful."""
    for letter in sorted({cue.tankful for cue in cues}):
        own = [cue for cue in cues if cue.tankful == letter]
        said = [*_counted(own), *(act_words(cue).on_mark for cue in own if cue.kind not in COUNTED)]
        yield f"{letter} {', '.join(said)}" if several else ", ".join(said)


def _counted(cues: Sequence[Cue]) -> Iterator[str]:
    for kind, name in COUNTED.items():
        count = sum(cue.kind == kind for cue in cues)
        if count:
            yield f"one {name}" if count == 1 else f"{count} {name}s"
