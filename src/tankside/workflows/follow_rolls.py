"""What a run changes about where its rolls stand, written with the note that changed it."""

from __future__ import annotations

from dataclasses import replace

from tankside.core.run.roll_standing import roll_standings
from tankside.core.run.state import Run
from tankside.workflows.ports import Desk


def follow_rolls(desk: Desk, before: Run | None, after: Run) -> None:
    """Write down each roll whose standing the last note moved; what a person set by hand otherwise stays."""
    was = roll_standings((before or after).state)
    for key, standing in roll_standings(after.state).items():
        roll = desk.rolls.by_key(key) if was.get(key, "waiting") != standing else None
        if roll is not None:
            desk.rolls.keep(replace(roll, standing=standing))
