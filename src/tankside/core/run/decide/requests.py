"""What is asked for and may be refused: bottle, skip, plan, end, close, answers."""

from __future__ import annotations

from itertools import takewhile

from tankside.core.planning.plan import Plan
from tankside.core.refusals import refuse
from tankside.core.run.commands import (
    AnswerDoubt,
    ChangePlan,
    CloseRun,
    ConfirmBottle,
    EndTankful,
    OpenRun,
    SettleClock,
    SkipBath,
)
from tankside.core.run.decide.drafts import Draft, tankful_of, with_bath
from tankside.core.run.doubts import doubts
from tankside.core.run.events import (
    BathSkipped,
    BottleConfirmed,
    ClockDoubted,
    ClockSettled,
    DoubtAnswered,
    EndMoved,
    PlanAmended,
    ReadingTaken,
    RunClosed,
    RunOpened,
    TankfulEnded,
)
from tankside.core.run.standing import bottle_for
from tankside.core.run.state import Run
from tankside.core.run.wrong_bottle import contaminated_bottles, kind_of_bottle


def opening(asked: OpenRun) -> list[Draft]:
    """A session opens with its plan frozen into it."""
    if not asked.plan.tankfuls:
        raise refuse("nothing-planned", ways_on=("plan",))
    body = RunOpened(asked.plan, asked.zone, asked.people, asked.models, asked.app, asked.bench)
    return [Draft(body)]


def seen(run: Run, saw_seq: int | None, tankful: str | None) -> None:
    """Refuse a request whose screen had not seen what changed under it."""
    if saw_seq is None:
        return
    unseen = takewhile(lambda event: event.seq > saw_seq, reversed(run.events))
    if any(
        not isinstance(event.body, EndMoved | ReadingTaken | ClockDoubted)
        and (event.tankful in (None, tankful) or tankful is None)
        for event in unseen
    ):
        raise refuse("screen-behind", saw_seq=saw_seq, last_seq=run.last_seq, ways_on=("look-again",))


def confirm(run: Run, asked: ConfirmBottle) -> list[Draft]:
    """The bottle in the hand is the wanted one, or another of its kind that was taken knowingly."""
    one = with_bath(run, asked.bath)
    wanted = bottle_for(run.state, one, asked.bath)
    if asked.bottle in contaminated_bottles(run.state):
        raise refuse("bottle-contaminated", bottle=asked.bottle, ways_on=("another-bottle",))
    if wanted is not None and asked.bottle != wanted:
        in_hand = kind_of_bottle(run.state, asked.bottle) or "unknown"
        same_kind = in_hand == kind_of_bottle(run.state, wanted)
        if not (asked.knowingly and (same_kind or in_hand == "unknown")):
            ways = ("put-it-back", "take-it-knowingly") if same_kind else ("put-it-back",)
            raise refuse("wrong-bottle", wanted=wanted, in_hand=asked.bottle, holds=in_hand, ways_on=ways)
    return [Draft(BottleConfirmed(asked.bath, asked.bottle, asked.by), one.letter)]


def skip(run: Run, asked: SkipBath) -> list[Draft]:
    """Leave a bath out, with why; not one that is in the tank, nor the developer itself."""
    one = with_bath(run, asked.bath)
    if not asked.why.strip():
        raise refuse("why-is-missing", at="why", bath=asked.bath)
    if one.bath(asked.bath).kind == "develop":
        raise refuse("developer-not-skipped", bath=asked.bath, ways_on=("end-tankful", "change-plan"))
    if one.in_tank is not None and one.in_tank.bath == asked.bath:
        raise refuse("already-poured", bath=asked.bath, ways_on=("drain",))
    if any(was.bath == asked.bath for was in one.skipped):
        raise refuse("already-skipped", bath=asked.bath)
    return [Draft(BathSkipped(asked.bath, asked.why.strip()), one.letter)]


def change_plan(run: Run, asked: ChangePlan) -> list[Draft]:
    """Go on with a whole new plan, which may not drop what is in a tank."""
    if not asked.because.strip():
        raise refuse("why-is-missing", at="because")
    if asked.plan.number <= run.state.plan_no:
        raise refuse("plan-outdated", number=asked.plan.number, is_now=run.state.plan_no)
    for one in run.state.tankfuls:
        if one.in_tank is not None and not _holds(asked.plan, one.letter, one.in_tank.bath):
            raise refuse("plan-drops-bath", bath=one.in_tank.bath, ways_on=("drain-first",))
    return [Draft(PlanAmended(asked.plan, asked.because.strip(), asked.changes))]


def end(run: Run, asked: EndTankful) -> list[Draft]:
    """Nothing more is done to a tankful."""
    one = tankful_of(run, asked.tankful)
    if one.ended is not None:
        raise refuse("already-ended", tankful=one.letter, outcome=one.ended.outcome)
    return [Draft(TankfulEnded(asked.outcome), one.letter)]


def close(run: Run, asked: CloseRun) -> list[Draft]:
    """The session ends; tankfuls still open are named and hinder unless it is broken off."""
    left = tuple(
        one.letter
        for one in run.state.tankfuls
        if one.ended is None and len({hung.roll for hung in one.hung}) < len(one.plan.rolls)
    )
    if left and asked.how != "broken off":
        raise refuse("tankfuls-open", tankfuls=", ".join(left), ways_on=("end-tankful", "break-off"))
    return [Draft(RunClosed(asked.how, left))]


def answer(run: Run, asked: AnswerDoubt) -> list[Draft]:
    """The answer to a doubt that stands."""
    found = next((one for one in doubts(run.state) if one.id == asked.about), None)
    if found is None:
        raise refuse("no-such-doubt", about=asked.about, ways_on=("look-again",))
    return [Draft(DoubtAnswered(asked.about, asked.answer), found.tankful)]


def settle_clock(run: Run, asked: SettleClock) -> list[Draft]:
    """Which clock is right, of the doubt it names or the one last raised."""
    open_doubts = [one for one in run.state.clock_doubts if not one.settled]
    asked_about = [one for one in open_doubts if asked.about in (None, one.mark.event)]
    if not asked_about:
        raise refuse("no-such-doubt", about=asked.about or "clock", ways_on=("look-again",))
    last = asked_about[-1]
    alike = [one for one in open_doubts if (one.boot, one.across) == (last.boot, last.across)]
    apart_s = sum(one.by_s for one in alike)
    if last.across:
        shift_s = -apart_s if asked.true_is == "elapsed" else 0.0
    else:
        shift_s = apart_s if asked.true_is == "wall" else 0.0
    settles = tuple(one.mark.event for one in alike)
    return [Draft(ClockSettled(asked.true_is, last.boot, shift_s, settles))]


def _holds(plan: Plan, letter: str, bath: str) -> bool:
    return any(
        one.letter == letter and any(planned.id == bath for planned in one.baths) for one in plan.tankfuls
    )
