"""What the workflows ask of whoever remembers: one Protocol for each noun, collected in one `Desk`.

Every method is a whole act. Acts that belong together stand inside `with desk.together():`, which commits
all of them durably or none; inside it reading sees what was written.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol, TypeVar
from uuid import UUID

from tankside.core.methods.combinations import Combination
from tankside.core.methods.step_strips import StepStrip, Tablet
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.plan import Plan
from tankside.core.rolls.roll import Film, Roll
from tankside.core.run.envelope import Event
from tankside.core.run.instants import Instant
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.workflows.records import KeptAnswer, KeptEvidence, KeptProposal, Photograph, RunHeading

Thing = TypeVar("Thing")


class Clock(Protocol):
    """Whatever tells the time."""

    def now(self) -> Instant:
        """The present instant."""


class Dice(Protocol):
    """Whatever gives identity and chance."""

    def key(self) -> UUID:
        """A fresh key."""

    def below(self, count: int) -> int:
        """A whole number from 0 to `count` - 1, each as likely."""


class Kept(Protocol[Thing]):
    """Things with a key that may be written over: tanks, thermometers, places."""

    def all(self) -> tuple[Thing, ...]:
        """All of them, by name."""

    def by_key(self, key: UUID) -> Thing | None:
        """The one under `key`."""

    def keep(self, thing: Thing) -> None:
        """Write it down, new or changed."""


class Films(Protocol):
    """Kinds of film, by name."""

    def all(self) -> tuple[Film, ...]:
        """All of them, by name."""

    def called(self, name: str) -> Film | None:
        """The one of that name."""

    def keep(self, film: Film) -> None:
        """Write it down, new or changed."""


class Rolls(Protocol):
    """Exposed rolls, waiting or done."""

    def all(self) -> tuple[Roll, ...]:
        """All of them, the latest first."""

    def by_key(self, key: UUID) -> Roll | None:
        """The one under `key`."""

    def by_code(self, code: str) -> Roll | None:
        """The one with `code` on its sticker."""

    def add(self, roll: Roll, added: datetime) -> None:
        """Add a roll and its film; raises `CodeTaken`."""

    def keep(self, roll: Roll) -> None:
        """Write over all but the code of a known roll."""


class Combinations(Protocol):
    """Combinations; their rows are kept, never overwritten."""

    def all(self) -> tuple[Combination, ...]:
        """All of them, by film and developer, rows in the order they came."""

    def by_key(self, key: UUID) -> Combination | None:
        """The one under `key`."""

    def keep(self, combination: Combination) -> Combination:
        """Take in a combination, or the new rows of a known one; returns it as it now stands.

        A combination is known by film, developer, parts, agitation, tank and convention, whatever its key.
        """


class Plans(Protocol):
    """Plans by key and number; a number once kept never changes."""

    def keep(self, plan: Plan) -> None:
        """Write down a plan or its next number; raises `Conflict` where that number says otherwise."""

    def by_key(self, key: UUID, number: int | None = None) -> Plan | None:
        """The plan under `key`, its highest number unless told."""

    def latest(self) -> Plan | None:
        """The plan made last."""


class Batches(Protocol):
    """Mixed lots."""

    def all(self) -> tuple[Batch, ...]:
        """All of them, the latest first."""

    def by_key(self, key: UUID) -> Batch | None:
        """The one under `key`."""

    def add(self, batch: Batch) -> None:
        """Add a batch; what it is never changes."""

    def keep(self, batch: Batch) -> None:
        """Write over how long a known batch keeps and what it cost."""


class Bottles(Protocol):
    """Bottles; what is in them is the ledger's to say."""

    def all(self) -> tuple[Bottle, ...]:
        """All of them, by code."""

    def by_code(self, code: str) -> Bottle | None:
        """The one with that code."""

    def add(self, bottle: Bottle) -> None:
        """Add a bottle of a known batch; raises `CodeTaken`."""

    def keep(self, bottle: Bottle) -> None:
        """Write over all but the code of a known bottle."""


class RunLog(Protocol):
    """What happened in every run, append-only."""

    def append(self, events: Sequence[Event]) -> None:
        """Add events; raises `Conflict` where a number of the run, or the id of an event, is taken."""

    def after(self, run: UUID, seq: int = 0) -> tuple[Event, ...]:
        """The events of `run` whose number is above `seq`, in order."""

    def headings(self) -> tuple[RunHeading, ...]:
        """All runs, the latest first."""


class Ledger(Protocol):
    """The append-only account of the bottles."""

    def append(self, bookings: Sequence[Booking]) -> None:
        """Book lines; raises `Conflict` where a line of that event stands already."""

    def of_bottle(self, code: str) -> tuple[Booking, ...]:
        """What was booked on one bottle, in order."""

    def of_run(self, run: UUID) -> tuple[Booking, ...]:
        """What one run has booked, in order."""

    def all(self) -> tuple[Booking, ...]:
        """Everything, in order."""


class Answers(Protocol):
    """Answers given to commands."""

    def find(self, command: str) -> KeptAnswer | None:
        """The answer to that command, if it was ever given one."""

    def keep(self, answer: KeptAnswer) -> None:
        """Write it down; raises `Conflict` where the command has one."""


class Proposals(Protocol):
    """What reviews proposed."""

    def all(self) -> tuple[KeptProposal, ...]:
        """All of them, the latest first."""

    def by_key(self, key: UUID) -> KeptProposal | None:
        """The one under `key`."""

    def keep(self, proposal: KeptProposal) -> None:
        """Write it down, offered or answered; what it offered never changes."""


class EvidenceBook(Protocol):
    """What the negatives of each tankful said, append-only."""

    def all(self) -> tuple[KeptEvidence, ...]:
        """All of it, in the order it was noted."""

    def of_run(self, run: UUID) -> tuple[KeptEvidence, ...]:
        """What was noted of one run, in order."""

    def keep(self, evidence: KeptEvidence) -> None:
        """Write it down; kept twice under one key it changes nothing."""


class StepStrips(Protocol):
    """Step strips as they were read, append-only; a correction is one more that replaces another."""

    def all(self) -> tuple[StepStrip, ...]:
        """All of them, replaced ones too, in the order they were noted."""

    def by_key(self, key: UUID) -> StepStrip | None:
        """The one under `key`."""

    def add(self, strip: StepStrip) -> None:
        """Add one; raises `Conflict` where its key is taken, or the one it replaces is replaced already."""


class Photographs(Protocol):
    """Photographs by what they show."""

    def of(self, about: UUID) -> tuple[Photograph, ...]:
        """Those attached to one thing, the earliest first."""

    def keep(self, photograph: Photograph, picture: bytes) -> None:
        """Keep the picture and what it shows; keeping it twice changes nothing."""

    def picture(self, sha256: str) -> bytes | None:
        """The picture itself."""


class PreferenceBook(Protocol):
    """Preferences of the household as texts by name; `core.quantities.preferences` reads them."""

    def all(self) -> Mapping[str, str]:
        """All that were ever chosen."""

    def keep(self, name: str, value: str) -> None:
        """Choose."""


@dataclass(frozen=True, slots=True)
class Desk:
    """Everything that remembers, behind its ports; `kept_at` is the data folder, for the person to read."""

    kept_at: str
    together: Callable[[], AbstractContextManager[object]]
    films: Films
    rolls: Rolls
    combinations: Combinations
    plans: Plans
    batches: Batches
    bottles: Bottles
    run_log: RunLog
    ledger: Ledger
    answers: Answers
    tanks: Kept[Tank]
    thermometers: Kept[Thermometer]
    places: Kept[Place]
    proposals: Proposals
    evidence: EvidenceBook
    tablets: Kept[Tablet]
    step_strips: StepStrips
    photographs: Photographs
    preferences: PreferenceBook
