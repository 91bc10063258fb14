"""Notes that were put right afterwards, and changes of plan: what the log says about itself."""

from __future__ import annotations

from collections.abc import Iterator

from tankside.core.review.differed import Deviation, PutRight, Replanned
from tankside.core.run.envelope import Event
from tankside.core.run.events import NoteRestated, NoteRetimed, NoteWithdrawn, PlanAmended
from tankside.core.run.state import Run

BESIDE = ("bath-returned", "bath-discarded")
"""Notes that came with a draining are put right with it, and said with it."""


def put_right(run: Run, letter: str) -> Iterator[Deviation]:
    """Every putting right that touches the tankful `letter`, and every change of plan, as it was noted.

    Source: the run's own log, which keeps what was noted first. Doubt: none.
    """
    known = {event.id: event for event in run.events}
    line = run.settled.timeline
    for event in run.events:
        at_us = line.at_us(event.happened)
        match event.body:
            case PlanAmended(because=because, changes=changes):
                yield Deviation(at_us, None, None, Replanned(because, changes))
            case NoteRetimed() | NoteRestated() | NoteWithdrawn():
                about = known.get(event.body.about)
                if about is not None and about.tankful in (None, letter) and about.kind not in BESIDE:
                    yield _put_right(run, event, about)
            case _:
                pass


def _put_right(run: Run, event: Event, about: Event) -> Deviation:
    """One note put right, placed where it now stands."""
    line = run.settled.timeline
    first_us = line.at_us(about.happened)
    bath = getattr(about.body, "bath", None)
    match event.body:
        case NoteRetimed(happened=happened, why=why):
            now_us = line.at_us(happened)
            what = PutRight("retimed", about.kind, (now_us - first_us) / 1e6, why)
        case NoteRestated(why=why):
            now_us, what = first_us, PutRight("restated", about.kind, 0.0, why)
        case NoteWithdrawn(why=why):
            now_us, what = first_us, PutRight("withdrawn", about.kind, 0.0, why)
        case _:
            raise ValueError(event.kind)
    return Deviation(now_us, about.tankful, bath, what)
