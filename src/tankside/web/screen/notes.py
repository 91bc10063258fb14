"""What was noted before and can be put right, the latest first."""

from __future__ import annotations

from tankside.core.run.events import BathDrained, BathPoured, ReadingTaken, WaterChanged
from tankside.core.run.state import Run
from tankside.web.screen.values import EarlierNote
from tankside.wording.cues import BATHS

KEPT = 8


def earlier_notes(run: Run) -> tuple[EarlierNote, ...]:
    """The last notes that moved something and still stand."""
    kinds = {bath.id: bath.kind for one in run.state.tankfuls for bath in (*one.plan.baths, *one.former)}
    found = []
    for note in reversed(run.settled.notes):
        words = _words(note.body, {key: BATHS[kind].lower() for key, kind in kinds.items()})
        if words:
            found.append(EarlierNote(note.id, note.at_us, f"{note.tankful or ''} {words}".strip()))
        if len(found) == KEPT:
            break
    return tuple(found)


def _words(body: object, names: dict[str, str]) -> str:
    match body:
        case BathPoured(bath=bath):
            return f"{names[bath]} poured"
        case BathDrained(bath=bath):
            return f"{names[bath]} drained"
        case WaterChanged(bath=bath, n=n):
            return f"water changed, fill {n}"
        case ReadingTaken(of=of, temp_c=temp_c):
            return f"{of} read, {temp_c:.1f} °C"
        case _:
            return ""
