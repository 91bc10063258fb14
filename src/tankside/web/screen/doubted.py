"""A bath poured before the machine began anew with its clock behind: how much less may be left of it."""

from __future__ import annotations

from tankside.core.run.state import Run, TankfulState


def doubted_s(run: Run, one: TankfulState) -> float:
    """Seconds by which the clocks part over the bath in the tank; 0 where no doubt stands between.

    Within one start of the machine no jump touches a bath, so only a doubt across starts counts.
    """
    if one.in_tank is None:
        return 0.0
    number = {event.id: event.seq for event in run.events}
    poured = number.get(one.in_tank.poured.event, 0)
    return sum(
        -doubt.by_s
        for doubt in run.state.clock_doubts
        if doubt.across and not doubt.settled and poured < number.get(doubt.mark.event, 0)
    )
