"""What was planned beside what happened in one tankful, on one clock that is 0 at its first pour."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from tankside.core.agitation.hands import hand_movements
from tankside.core.methods.baths import BathKind
from tankside.core.planning.acts import fillings, hung_s
from tankside.core.planning.plan import Plan, PlannedBath, PlannedTankful
from tankside.core.run.events import PlanAmended, RunOpened
from tankside.core.run.standing import really
from tankside.core.run.state import Pass, Run, RunState, TankfulState


@dataclass(frozen=True, slots=True)
class Stay:
    """One bath in the tank, from the start of pour-in to the start of pour-out, in seconds.

    `inversions` are those of each full interval with whether they were done (a miss is what was noted).
    `fills_s` are the starts of the fills of a wash. `ended` is false while it is in the tank; where nobody
    noted the draining (`drained` False) it ended when the next bath was poured.
    """

    bath: str
    kind: BathKind
    start_s: float
    end_s: float
    fills_s: tuple[float, ...] = ()
    inversions: tuple[tuple[float, bool], ...] = ()
    ended: bool = True
    drained: bool = True

    @property
    def for_s(self) -> float:
        """How long it was, or was to be, in the tank."""
        return self.end_s - self.start_s


@dataclass(frozen=True, slots=True)
class Beside:
    """Planned and happened stays of one tankful; seconds count from `zero_us`, its first pour.

    Both begin at that pour, so that what differs is the work and not the hour; how much later than planned
    the work was begun is `begun_late_s`. Hung is when the last roll hung, None where that was not noted.
    """

    letter: str
    zero_us: int
    planned: tuple[Stay, ...]
    happened: tuple[Stay, ...]
    planned_hung_s: float
    hung_s: float | None
    begun_late_s: float | None

    @property
    def last_s(self) -> float:
        """When the later of the two columns ends."""
        ends = [stay.end_s for stay in (*self.planned, *self.happened)]
        return max(*ends, self.planned_hung_s, self.hung_s or 0.0)

    def pairs(self) -> tuple[tuple[Stay | None, Stay | None], ...]:
        """Each bath as planned and as it happened last, in the order of the plan; extra ones come after."""
        had = {stay.bath: stay for stay in self.happened}
        planned = {stay.bath for stay in self.planned}
        wanted = tuple((stay, had.get(stay.bath)) for stay in self.planned)
        return (*wanted, *((None, stay) for stay in self.happened if stay.bath not in planned))


def first_plan(run: Run, letter: str) -> Plan:
    """The plan in which that tankful was planned first; a later change of plan is a difference, not a plan.

    Source: the run's own log. Doubt: none.
    """
    for event in run.events:
        if isinstance(event.body, RunOpened | PlanAmended):
            plan = event.body.plan
            if any(one.letter == letter for one in plan.tankfuls):
                return plan
    return run.state.plan


def beside(run: Run, letter: str) -> Beside | None:
    """Planned and happened stays of the tankful `letter`; None before anything was poured.

    Source: the plan's own times, the run's own log. Doubt: a noted time is good to a second or what it says.
    """
    one, plan = run.state.tankful(letter), first_plan(run, letter)
    if not one.passes:
        return None
    zero_us = one.passes[0].poured.at_us
    wanted = plan.tankful(letter)
    planned, begins_s = _planned(wanted, plan)
    last_us = max(run.settled.notes[-1].at_us, zero_us)
    happened = tuple(_stay(run.state, one, there, zero_us, last_us) for there in one.passes)
    hung = [was.mark.at_us for was in one.hung]
    return Beside(
        letter=letter,
        zero_us=zero_us,
        planned=planned,
        happened=happened,
        planned_hung_s=hung_s(wanted, plan.hands) - begins_s,
        hung_s=(max(hung) - zero_us) / 1e6 if hung else None,
        begun_late_s=_late_s(run.state, plan, wanted, zero_us),
    )


def _planned(wanted: PlannedTankful, plan: Plan) -> tuple[tuple[Stay, ...], float]:
    """The planned stays from the first pour on, and where that pour lies on the plan's own clock."""
    filled = fillings(wanted, plan.hands)
    begins_s = filled[0].start_s
    return tuple(_planned_stays(wanted, plan, begins_s)), begins_s


def _planned_stays(wanted: PlannedTankful, plan: Plan, begins_s: float) -> Iterator[Stay]:
    for bath, group in groupby(fillings(wanted, plan.hands), key=lambda one: one.bath):
        starts = [(one.start_s - begins_s, one.end_s - begins_s) for one in group]
        fills = tuple(start_s for start_s, _ in starts) if len(starts) > 1 else ()
        yield Stay(bath.id, bath.kind, starts[0][0], starts[-1][1], fills)


def _stay(state: RunState, one: TankfulState, there: Pass, zero_us: int, last_us: int) -> Stay:
    """One pass as it happened; the bath is the one that it really was, by the bottle poured."""
    was = one.bath(really(state, one, there))
    ended_us = there.ended_us
    fills = {there.poured.at_us, *(fill.mark.at_us for fill in there.fills if fill.n > 1)}
    return Stay(
        was.id,
        was.kind,
        (there.poured.at_us - zero_us) / 1e6,
        ((last_us if ended_us is None else ended_us) - zero_us) / 1e6,
        tuple((at_us - zero_us) / 1e6 for at_us in sorted(fills)) if len(fills) > 1 else (),
        inversions=_inversions(one, there, was, zero_us, last_us),
        ended=ended_us is not None,
        drained=there.drained is not None,
    )


def _inversions(
    one: TankfulState, there: Pass, was: PlannedBath, zero_us: int, last_us: int
) -> tuple[tuple[float, bool], ...]:
    """When inversions fell due while a bath was in the tank; they count as done unless a miss was noted."""
    pattern = was.agitation
    if pattern is None or pattern.movement != "inversion":
        return ()
    missed = {cycle.cycle for cycle in one.cycles if cycle.bath == was.id and not cycle.done}
    begins_s = (there.poured.at_us - zero_us) / 1e6
    ends_s = ((there.ended_us or last_us) - zero_us) / 1e6
    moved = hand_movements(pattern, pour_s=0.0, end_s=max(0.0, ends_s - begins_s))
    return tuple((begins_s + each.start_s, each.n not in missed) for each in moved if each.n > 0)


def _late_s(state: RunState, plan: Plan, wanted: PlannedTankful, zero_us: int) -> float | None:
    """How much later than planned the first pour was; a later tankful counts from what it hangs on."""
    if wanted.starts_after is not None:
        bath = wanted.starts_after.removesuffix(":poured")
        first = next((one for each in state.tankfuls for one in each.passes if one.bath == bath), None)
        return None if first is None else (zero_us - first.poured.at_us) / 1e6 - wanted.starts_s
    if plan.starts is None:
        return None
    return zero_us / 1e6 - plan.starts.timestamp() - wanted.starts_s
