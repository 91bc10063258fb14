"""What a plan does otherwise than the last one because something was learnt, for the plan that shows it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tankside.core.methods.known_time import rows_in_use
from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.workflows.ports import Desk
from tankside.workflows.records import KeptProposal


@dataclass(frozen=True, slots=True)
class Learnt:
    """A correction that the tankful `letter` is planned by, and the proposal that it was."""

    letter: str
    because: KeptProposal


def what_changed(desk: Desk, plan: Plan) -> tuple[Learnt, ...]:
    """Every accepted correction that this plan follows, tankful by tankful, the latest first."""
    accepted = [one for one in desk.proposals.all() if one.standing == "accepted"]
    return tuple(
        Learnt(tankful.letter, one)
        for tankful in plan.tankfuls
        for one in accepted
        if one.combination == tankful.combination and _followed(plan, tankful, one, accepted)
    )


def _followed(plan: Plan, tankful: PlannedTankful, one: KeptProposal, accepted: list[KeptProposal]) -> bool:
    """Whether the plan's own rows follow a proposal; tempering counts until something else was taken."""
    match one.proposal.what:
        case "time":
            return any(row == (one.old_row, one.proposal.new) for row in _replacing(plan, tankful))
        case "index":
            return tankful.index == one.proposal.new
        case "temper":
            return one == next(each for each in accepted if each.combination == one.combination)
        case "keep":
            return False


def _replacing(plan: Plan, tankful: PlannedTankful) -> Iterator[tuple[object, float]]:
    """The row that a tankful's time comes from: what it replaced, and its time."""
    wanted = plan.wish.rolls if plan.wish is not None else ()
    for each in wanted:
        if each.combination.key == tankful.combination and tankful.index is not None:
            best = next(iter(rows_in_use(each.combination, tankful.index)), None)
            if best is not None:
                yield best.replaces, best.time_s
