"""A desk that remembers in memory: fast, and held to the same contract as the one on the disk."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Generic, TypeVar
from uuid import UUID

from evening_clock import CountingDice, SetClock
from memory import InMemory, Memory

from tankside.core.methods.combinations import Combination
from tankside.core.methods.step_strips import StepStrip, Tablet
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.plan import Plan
from tankside.core.rolls.roll import Film, Roll
from tankside.core.run.envelope import Event
from tankside.core.run.settle import taken_back
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.sink.broadcast import Broadcast
from tankside.sink.live_runs import LiveRuns
from tankside.workflows.house import House
from tankside.workflows.ports import Desk
from tankside.workflows.records import (
    Conflict,
    KeptAnswer,
    KeptEvidence,
    KeptProposal,
    Photograph,
    RunHeading,
)

Thing = TypeVar("Thing", bound=Tank | Thermometer | Place | Tablet)


class MemoryFilms(InMemory):
    """Films in memory."""

    def all(self) -> tuple[Film, ...]:
        """All, by name."""
        return tuple(sorted(self._memory.films.values(), key=lambda film: film.name))

    def called(self, name: str) -> Film | None:
        """By name."""
        return self._memory.films.get(name)

    def keep(self, film: Film) -> None:
        """New or changed."""
        self._memory.films[film.name] = film


class MemoryRolls(InMemory):
    """Rolls in memory."""

    def _whole(self, roll: Roll) -> Roll:
        return replace(roll, film=self._memory.films[roll.film.name])

    def all(self) -> tuple[Roll, ...]:
        """The latest first."""
        by_code = sorted(self._memory.rolls.values(), key=lambda kept: kept[1].code)
        latest_first = sorted(by_code, key=lambda kept: kept[0], reverse=True)
        return tuple(self._whole(roll) for _, roll in latest_first)

    def by_key(self, key: UUID) -> Roll | None:
        """By key."""
        return next((roll for roll in self.all() if roll.key == key), None)

    def by_code(self, code: str) -> Roll | None:
        """By code."""
        return next((roll for roll in self.all() if roll.code == code), None)

    def add(self, roll: Roll, added: datetime) -> None:
        """Add."""
        self._memory.take_code(roll.code)
        self._memory.films[roll.film.name] = roll.film
        self._memory.rolls[roll.key] = (added, roll)

    def keep(self, roll: Roll) -> None:
        """Write over all but the code."""
        added, known = self._memory.rolls[roll.key]
        self._memory.films[roll.film.name] = roll.film
        self._memory.rolls[roll.key] = (added, replace(roll, code=known.code))


def _identity(combination: Combination) -> tuple[object, ...]:
    one = combination
    return (one.film, one.developer, one.dilution, one.agitation, one.tank, one.convention)


class MemoryCombinations(InMemory):
    """Combinations in memory."""

    def all(self) -> tuple[Combination, ...]:
        """By film and developer."""
        return tuple(sorted(self._memory.combinations.values(), key=lambda one: (one.film, one.developer)))

    def by_key(self, key: UUID) -> Combination | None:
        """By key."""
        return self._memory.combinations.get(key)

    def keep(self, combination: Combination) -> Combination:
        """Take in new rows."""
        known = next((one for one in self.all() if _identity(one) == _identity(combination)), None)
        kept = {row.key: row for row in (known.rows if known else ())}
        if any(kept.get(row.key, row) != row for row in combination.rows):
            raise ValueError("a row of a combination is never overwritten")
        new = tuple(row for row in combination.rows if row.key not in kept)
        if known is not None:
            least_ml = combination.least_stock_ml
            combination = replace(
                combination,
                key=known.key,
                rows=known.rows + new,
                least_stock_ml=known.least_stock_ml if least_ml is None else least_ml,
            )
        self._memory.combinations[combination.key] = combination
        return combination


class MemoryPlans(InMemory):
    """Plans in memory."""

    def keep(self, plan: Plan) -> None:
        """Once per number."""
        if self._memory.plans.setdefault((plan.key, plan.number), plan) != plan:
            raise Conflict(str(plan.key))

    def by_key(self, key: UUID, number: int | None = None) -> Plan | None:
        """By key, its highest number unless told."""
        found = [one for one in self._memory.plans.values() if one.key == key]
        wanted = [one for one in found if number is None or one.number == number]
        return max(wanted, key=lambda one: one.number, default=None)

    def latest(self) -> Plan | None:
        """The plan made last."""
        return max(self._memory.plans.values(), key=lambda one: (one.made, one.number), default=None)


class MemoryBatches(InMemory):
    """Batches in memory."""

    def all(self) -> tuple[Batch, ...]:
        """The latest first."""
        by_name = sorted(self._memory.batches.values(), key=lambda one: one.name)
        return tuple(sorted(by_name, key=lambda one: one.made, reverse=True))

    def by_key(self, key: UUID) -> Batch | None:
        """By key."""
        return self._memory.batches.get(key)

    def add(self, batch: Batch) -> None:
        """Add."""
        self._memory.batches[batch.key] = batch

    def keep(self, batch: Batch) -> None:
        """Write over what was typed of it."""
        known = self._memory.batches[batch.key]
        typed = replace(known, keeping=batch.keeping, price_minor=batch.price_minor)
        self._memory.batches[batch.key] = typed


class MemoryBottles(InMemory):
    """Bottles in memory."""

    def all(self) -> tuple[Bottle, ...]:
        """By code."""
        return tuple(sorted(self._memory.bottles.values(), key=lambda one: one.code))

    def by_code(self, code: str) -> Bottle | None:
        """By code."""
        return next((one for one in self.all() if one.code == code), None)

    def add(self, bottle: Bottle) -> None:
        """Add."""
        self._memory.take_code(bottle.code)
        self._memory.bottles[bottle.key] = bottle

    def keep(self, bottle: Bottle) -> None:
        """Write over all but the code."""
        self._memory.bottles[bottle.key] = replace(bottle, code=self._memory.bottles[bottle.key].code)


class MemoryRunLog(InMemory):
    """The run log in memory."""

    def append(self, events: Sequence[Event]) -> None:
        """Add, each number and id once."""
        numbers = {(one.run, one.seq) for one in self._memory.events}
        ids = {one.id for one in self._memory.events}
        if any((one.run, one.seq) in numbers or one.id in ids for one in events):
            raise Conflict(str(events[0].run))
        self._memory.events.extend(events)

    def after(self, run: UUID, seq: int = 0) -> tuple[Event, ...]:
        """In order."""
        found = [one for one in self._memory.events if one.run == run and one.seq > seq]
        return tuple(sorted(found, key=lambda one: one.seq))

    def headings(self) -> tuple[RunHeading, ...]:
        """The latest first."""
        runs = {one.run for one in self._memory.events}
        return tuple(sorted(map(self._heading, runs), key=lambda one: one.opened, reverse=True))

    def _heading(self, run: UUID) -> RunHeading:
        events = self.after(run)
        opened = next(one for one in events if one.kind == "run-opened").happened.wall_us
        gone = taken_back(events)
        closed = any(one.kind == "run-closed" and one.id not in gone for one in events)
        at = datetime(1970, 1, 1, tzinfo=UTC) + timedelta(microseconds=opened)
        return RunHeading(run, at, events[-1].seq, closed)


class MemoryLedger(InMemory):
    """The ledger in memory."""

    def append(self, bookings: Sequence[Booking]) -> None:
        """Book, each line of an event once, each line taken back once."""
        booked = {(one.event, one.number) for one in self._memory.ledger}
        reversed_already = {one.line.reverses for one in self._memory.ledger} - {None}
        for one in bookings:
            if (one.event, one.number) in booked or one.line.reverses in reversed_already:
                raise Conflict(one.event)
        self._memory.ledger.extend(bookings)

    def of_bottle(self, code: str) -> tuple[Booking, ...]:
        """In order."""
        return tuple(one for one in self._memory.ledger if one.line.bottle == code)

    def of_run(self, run: UUID) -> tuple[Booking, ...]:
        """In order."""
        return tuple(one for one in self._memory.ledger if one.run == run)

    def all(self) -> tuple[Booking, ...]:
        """In order."""
        return tuple(self._memory.ledger)


class MemoryAnswers(InMemory):
    """Answers in memory."""

    def find(self, command: str) -> KeptAnswer | None:
        """By command."""
        return self._memory.answers.get(command)

    def keep(self, answer: KeptAnswer) -> None:
        """Once per command."""
        if answer.command in self._memory.answers:
            raise Conflict(answer.command)
        self._memory.answers[answer.command] = answer


class MemoryThings(Generic[Thing]):
    """Tanks, thermometers or places in memory."""

    def __init__(self, things: dict[UUID, Thing]) -> None:
        self._things = things

    def all(self) -> tuple[Thing, ...]:
        """By name."""
        return tuple(sorted(self._things.values(), key=lambda one: (one.name, str(one.key))))

    def by_key(self, key: UUID) -> Thing | None:
        """By key."""
        return self._things.get(key)

    def keep(self, thing: Thing) -> None:
        """New or changed."""
        self._things[thing.key] = thing


class MemoryProposals(InMemory):
    """Proposals in memory."""

    def all(self) -> tuple[KeptProposal, ...]:
        """The latest first."""
        return tuple(sorted(self._memory.proposals.values(), key=lambda one: one.made, reverse=True))

    def by_key(self, key: UUID) -> KeptProposal | None:
        """By key."""
        return self._memory.proposals.get(key)

    def keep(self, proposal: KeptProposal) -> None:
        """New, or its answer."""
        known = self._memory.proposals.get(proposal.key, proposal)
        self._memory.proposals[proposal.key] = replace(
            known, standing=proposal.standing, decided=proposal.decided
        )


class MemoryEvidence(InMemory):
    """Evidence in memory."""

    def all(self) -> tuple[KeptEvidence, ...]:
        """In order."""
        return tuple(sorted(self._memory.evidence.values(), key=lambda one: one.noted))

    def of_run(self, run: UUID) -> tuple[KeptEvidence, ...]:
        """In order."""
        return tuple(one for one in self.all() if one.run == run)

    def keep(self, evidence: KeptEvidence) -> None:
        """Once."""
        self._memory.evidence.setdefault(evidence.key, evidence)


class MemoryStepStrips(InMemory):
    """Step strips in memory."""

    def all(self) -> tuple[StepStrip, ...]:
        """In order."""
        return tuple(sorted(self._memory.step_strips.values(), key=lambda one: one.noted))

    def by_key(self, key: UUID) -> StepStrip | None:
        """By key."""
        return self._memory.step_strips.get(key)

    def add(self, strip: StepStrip) -> None:
        """Once, and one for each that it replaces."""
        taken = {one.replaces for one in self._memory.step_strips.values()} - {None}
        if strip.key in self._memory.step_strips or strip.replaces in taken:
            raise Conflict(f"step strip {strip.key}")
        self._memory.step_strips[strip.key] = strip


class MemoryPhotographs(InMemory):
    """Photographs in memory."""

    def of(self, about: UUID) -> tuple[Photograph, ...]:
        """The earliest first."""
        found = [one for one in self._memory.photographs.values() if one.about == about]
        return tuple(sorted(found, key=lambda one: (one.kept, one.sha256)))

    def keep(self, photograph: Photograph, picture: bytes) -> None:
        """Once."""
        self._memory.pictures[photograph.sha256] = picture
        self._memory.photographs.setdefault(
            (photograph.sha256, photograph.noun, photograph.about), photograph
        )

    def picture(self, sha256: str) -> bytes | None:
        """By hash."""
        return self._memory.pictures.get(sha256)


class MemoryPreferences(InMemory):
    """Preferences in memory."""

    def all(self) -> Mapping[str, str]:
        """All."""
        return dict(sorted(self._memory.preferences.items()))

    def keep(self, name: str, value: str) -> None:
        """Choose."""
        self._memory.preferences[name] = value


def memory_desk() -> Desk:
    """A desk with nothing on it."""
    memory = Memory()
    return Desk(
        kept_at="memory",
        together=memory.together,
        films=MemoryFilms(memory),
        rolls=MemoryRolls(memory),
        combinations=MemoryCombinations(memory),
        plans=MemoryPlans(memory),
        batches=MemoryBatches(memory),
        bottles=MemoryBottles(memory),
        run_log=MemoryRunLog(memory),
        ledger=MemoryLedger(memory),
        answers=MemoryAnswers(memory),
        tanks=MemoryThings(memory.tanks),
        thermometers=MemoryThings(memory.thermometers),
        places=MemoryThings(memory.places),
        proposals=MemoryProposals(memory),
        evidence=MemoryEvidence(memory),
        tablets=MemoryThings(memory.tablets),
        step_strips=MemoryStepStrips(memory),
        photographs=MemoryPhotographs(memory),
        preferences=MemoryPreferences(memory),
    )


def memory_house(desk: Desk | None = None) -> House:
    """A house whose runs are live over a desk in memory."""
    desk, dice = desk or memory_desk(), CountingDice()
    broadcast = Broadcast(lambda: 0)
    return House(desk, LiveRuns(desk, dice, written=broadcast.written), broadcast, SetClock(), dice)
