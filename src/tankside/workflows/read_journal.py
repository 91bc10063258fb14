"""Runs and tankfuls read back: planned beside happened, what differed, what the negatives said."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from tankside.core.methods.step_strips import latest
from tankside.core.planning.plan import PlannedTankful
from tankside.core.refusals import refuse
from tankside.core.review.beside import Beside, beside, first_plan
from tankside.core.review.deviations import deviations
from tankside.core.review.differed import Deviation
from tankside.core.review.evidence import Evidence, NotAsked
from tankside.core.review.predicted import Counted, counted, planned_temperatures, temperatures
from tankside.core.review.washed import washed_to
from tankside.core.run.advise import developing, tank_readings
from tankside.core.run.advise_wash import WashAdvice
from tankside.core.run.replay import replay
from tankside.core.run.state import Run
from tankside.core.thermal.drift import Reading
from tankside.core.thermal.trace import Trace
from tankside.workflows.ports import Desk
from tankside.workflows.records import KeptProposal, Photograph

LEAST_PREFIX = 4


@dataclass(frozen=True, slots=True)
class Which:
    """One tankful of one run."""

    run: UUID
    letter: str


@dataclass(frozen=True, slots=True)
class ListedTankful:
    """One tankful of a run as a list shows it; `asked` while its negatives may still be asked about."""

    letter: str
    tank: str
    rolls: tuple[str, ...]
    film: str
    poured: bool
    asked: bool


@dataclass(frozen=True, slots=True)
class ListedRun:
    """A run as a list shows it; `opened` on the clock of its place, whose zone is `zone`."""

    run: UUID
    opened: datetime
    zone: str
    closed: bool
    tankfuls: tuple[ListedTankful, ...]


@dataclass(frozen=True, slots=True)
class Heat:
    """The developer's temperature: as planned, as it was (None before it is out), and what was read.

    `water` are wash temperatures at seconds after the first pour; everything else counts from `from_s`, the
    developer's own pour.
    """

    planned: Trace
    happened: Trace | None
    readings: tuple[Reading, ...]
    water: tuple[tuple[float, float], ...]
    band_k: float
    from_s: float


@dataclass(frozen=True, slots=True)
class ReadTankful:
    """Everything the journal knows of one tankful; `beside` is None before anything was poured."""

    run: Run
    planned: PlannedTankful
    beside: Beside | None
    deviations: tuple[Deviation, ...]
    counted: Counted | None
    wash: WashAdvice | None
    heat: Heat | None
    said: Evidence | NotAsked | None
    strips: int
    proposals: tuple[KeptProposal, ...]
    photographs: tuple[Photograph, ...]

    @property
    def letter(self) -> str:
        """Its letter."""
        return self.planned.letter

    @property
    def may_be_asked(self) -> bool:
        """Whether the next morning's questions are still open."""
        return self.said is None and self.strips == 0 and self.counted is not None


def years_of_runs(desk: Desk) -> tuple[int, ...]:
    """Every year in which a run was opened, the latest first."""
    return tuple(sorted({one.opened.year for one in desk.run_log.headings()}, reverse=True))


def list_runs(desk: Desk, year: int | None = None) -> tuple[ListedRun, ...]:
    """Every run (of one year, where it is told), the latest first."""
    said = {(one.run, one.tankful) for one in desk.evidence.all()}
    said |= {(one.run, one.tankful) for one in desk.step_strips.all() if one.run and one.tankful}
    found = []
    for heading in desk.run_log.headings():
        if year is not None and heading.opened.year != year:
            continue
        run = replay(desk.run_log.after(heading.run))
        tankfuls = tuple(_listed(run, letter, said) for letter in letters(run))
        found.append(ListedRun(run.key, heading.opened, run.state.zone, heading.closed, tankfuls))
    return tuple(found)


def read_run(desk: Desk, key: UUID) -> Run:
    """The run under `key`."""
    events = desk.run_log.after(key)
    if not events:
        raise refuse("no-such-run", ways_on=("look-at-the-journal",))
    return replay(events)


def run_of(desk: Desk, which: Which) -> Run:
    """The run of a tankful; refused where it has none of that letter."""
    run = read_run(desk, which.run)
    if which.letter not in letters(run):
        raise refuse("no-such-tankful", letter=which.letter, ways_on=("look-at-the-journal",))
    return run


def find_run(desk: Desk, typed: str) -> UUID:
    """The run whose key begins with what was typed."""
    wanted = typed.strip().casefold().replace("-", "")
    found = [one.run for one in desk.run_log.headings() if one.run.hex.startswith(wanted)]
    if len(wanted) < LEAST_PREFIX or len(found) != 1:
        raise refuse("no-such-run", at="run", ways_on=("look-at-the-journal",))
    return found[0]


def letters(run: Run) -> tuple[str, ...]:
    """The letters of every tankful that was ever planned in a run."""
    return tuple(one.letter for one in run.state.tankfuls)


def read_tankful(desk: Desk, which: Which) -> ReadTankful:
    """One tankful of a run, read back."""
    key, letter, run = which.run, which.letter, run_of(desk, which)
    said = [one.said for one in desk.evidence.of_run(key) if one.tankful == letter]
    return ReadTankful(
        run=run,
        planned=first_plan(run, letter).tankful(letter),
        beside=beside(run, letter),
        deviations=deviations(run, letter),
        counted=counted(run.state, letter),
        wash=washed_to(run, letter),
        heat=_heat(run, letter),
        said=said[-1] if said else None,
        strips=sum((one.run, one.tankful) == (key, letter) for one in latest(desk.step_strips.all())),
        proposals=tuple(one for one in desk.proposals.all() if (one.run, one.tankful) == (key, letter)),
        photographs=tuple(one for one in desk.photographs.of(key) if one.noun == noun_of(letter)),
    )


def noun_of(letter: str) -> str:
    """What a photograph of the negatives of a tankful is attached to, beside the key of its run."""
    return f"tankful {letter}"


def _listed(run: Run, letter: str, said: set[tuple[UUID, str]]) -> ListedTankful:
    one = run.state.tankful(letter)
    rolls = one.plan.rolls
    return ListedTankful(
        letter=letter,
        tank=one.plan.tank.name,
        rolls=tuple(roll.code for roll in rolls),
        film=", ".join(dict.fromkeys(roll.film for roll in rolls)),
        poured=bool(one.passes),
        asked=(run.key, letter) not in said and counted(run.state, letter) is not None,
    )


def _heat(run: Run, letter: str) -> Heat | None:
    """The developer's temperatures, in seconds after its pour."""
    one = run.state.tankful(letter)
    there = developing(run.state, one)
    if there is None:
        return None
    plan = first_plan(run, letter).tankful(letter)
    until_s = next(bath.times.aim_s for bath in plan.baths if bath.kind == "develop")
    mixed = next((each.mix_to_c for each in run.state.plan.liquids if each.key == f"develop-{letter}"), None)
    spread_k = (mixed.high - mixed.low) / 2 if mixed is not None else 0.0
    return Heat(
        planned=planned_temperatures(plan.development, until_s),
        happened=temperatures(run.state, letter),
        readings=tuple(tank_readings(run.state, one, there)),
        water=tuple(
            ((fill.mark.at_us - one.passes[0].poured.at_us) / 1e6, fill.temp_c)
            for was in one.passes
            for fill in was.fills
            if fill.temp_c is not None
        ),
        band_k=max(spread_k, run.state.plan.thermometer.step_c / 2, 0.2),
        from_s=(there.poured.at_us - one.passes[0].poured.at_us) / 1e6,
    )
