"""What the page 'Again' shows: rolls to tick, what changed, what to mind; and what the first screen says."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from zoneinfo import ZoneInfo

from tankside.core.planning.plan import Plan
from tankside.core.quantities.display import index_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.rolls.roll import Roll
from tankside.core.safety import Caution, cautions
from tankside.core.solutions.kinds import SolutionKind
from tankside.web.shown.minded import Said
from tankside.wording.again import NOTHING_CHANGED, changed_sentence, rolls_wait
from tankside.wording.cautions import caution_origin, caution_sentence
from tankside.wording.rolls import said_format
from tankside.workflows.as_last_time import LastTime
from tankside.workflows.house import House
from tankside.workflows.open_runs import open_runs
from tankside.workflows.since_last_time import SinceThen


@dataclass(frozen=True, slots=True)
class Ticked:
    """One roll that can go: its code, what it is, whether its box is ticked."""

    code: str
    words: str
    ticked: bool


@dataclass(frozen=True, slots=True)
class ShownAgain:
    """Everything the page shows."""

    rolls: tuple[Ticked, ...]
    developer: str
    changed: tuple[str, ...]
    timeless: int
    cautions: tuple[Said, ...]


@dataclass(frozen=True, slots=True)
class GoesOn:
    """What goes on in the house: one line, the main act and where it leads, and a smaller door."""

    line: str
    act: str
    path: str
    door: tuple[str, str] | None = None


def shown_again(
    last: LastTime, since: Iterable[SinceThen], preferences: Preferences, *, ticked: Iterable[str] | None
) -> ShownAgain:
    """The page for what waits; `ticked` are codes chosen before, None where nobody chose yet."""
    chosen = {one.code for one in last.offered} if ticked is None else set(ticked)
    developer = next(one for one in last.plan.liquids if one.kind == "developer")
    said = tuple(changed_sentence(one, preferences) for one in since)
    return ShownAgain(
        tuple(Ticked(one.code, _words(one), one.code in chosen) for one in last.rolls),
        f"{developer.name} {developer.parts}",
        tuple(dict.fromkeys(said)) or (NOTHING_CHANGED,),
        len(last.timeless),
        _minded(last.plan),
    )


def goes_on(house: House) -> GoesOn | None:
    """What the first screen says of this house, None where nothing was ever planned."""
    plan = house.desk.plans.latest()
    now = open_runs(house.desk, house.live_runs)
    for one in now:
        if not one.hung:
            since = f"{one.opened.astimezone(_zone(plan, one.opened)):%H:%M}"
            return GoesOn(f"A run is open at the sink since {since}.", "Go to the sink", f"/sink/{one.run}")
    if plan is None:
        return None
    waiting = sum(one.standing == "waiting" for one in house.desk.rolls.all())
    if now:
        line = f"The last film hangs; its session is not closed yet. {rolls_wait(waiting)}"
        return GoesOn(line, "Again", "/again", ("Close it", f"/sink/{now[0].run}"))
    return GoesOn(rolls_wait(waiting), "Again", "/again", ("The plan made last", "/plan"))


def _words(roll: Roll) -> str:
    """A roll beside its code."""
    told = (f"{roll.film.name}, {said_format(roll.format)}", index_text(roll.index), roll.camera)
    precious = ("precious",) if roll.precious else ()
    return ", ".join([*(one for one in told if one), *precious])


def _minded(plan: Plan) -> tuple[Said, ...]:
    """What to mind with the liquids of tonight: mixing what is fresh, pouring the rest, each once."""
    kinds: dict[SolutionKind, bool] = {one.kind: one.reusable for one in plan.liquids}
    mixed = (one for kind, reused in kinds.items() if not reused for one in cautions(kind, moment="mix"))
    poured = (one for kind in kinds for one in cautions(kind, moment="pour"))
    every: dict[str, Caution] = {one.code: one for one in (*poured, *mixed)}
    sheet = every.pop("makers-sheet", None)
    last = (sheet,) if sheet else ()
    return tuple(Said(caution_sentence(one), caution_origin(one)) for one in (*every.values(), *last))


def _zone(plan: Plan | None, moment: datetime) -> ZoneInfo:
    """The zone of the place worked in last."""
    return ZoneInfo(plan.place.zone if plan else str(moment.tzinfo))
