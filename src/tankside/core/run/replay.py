"""A run from its rows, whole or as more rows arrive."""

from __future__ import annotations

from collections.abc import Sequence

from tankside.core.run.envelope import Event
from tankside.core.run.evolve import after, fold
from tankside.core.run.settle import settle, settled_with
from tankside.core.run.state import Run


def replay(events: Sequence[Event]) -> Run:
    """The run that these rows are, in order of their sequence numbers; ValueError without an opening."""
    settled = settle(events)
    return Run(events[0].run, tuple(events), settled, fold(settled))


def follow(run: Run | None, more: Sequence[Event]) -> Run:
    """The run after `more` rows: in place where they only add at the end, else folded again."""
    if run is None:
        return replay(more)
    if not more:
        return run
    events = (*run.events, *more)
    settled = settled_with(run.settled, more)
    if settled is None:
        return replay(events)
    return Run(run.key, events, settled, after(run.state, settled.notes[len(run.settled.notes) :]))
