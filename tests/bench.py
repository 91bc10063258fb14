"""The invented evening laid out on a desk, its run opened, and commands as a phone sends them."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from evening import BATCHES, BOTTLES, MADE, PLAN, ROLLS, key
from evening_clock import CountingDice, at

from tankside.core.run.charges import charges, difference
from tankside.core.run.commands import Command
from tankside.core.run.replay import replay
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.ledger import LedgerLine
from tankside.sink.live_runs import LiveRuns, charge_of
from tankside.store.connection import Database
from tankside.store.desk import stored_desk
from tankside.workflows.open_run import open_run
from tankside.workflows.ports import Desk

RUN = key(7)


class Bench:
    """A desk over a database, a live shell, and the runs that this shell told of."""

    def __init__(self, database: Database) -> None:
        self.database = database
        self.desk = stored_desk(database)
        self.told: list[UUID] = []
        self.live = self.shell()

    def shell(self, first_key: int = 1_000_000) -> LiveRuns:
        """Another shell over the same file, as another process would have."""
        return LiveRuns(self.desk, CountingDice(first_key), written=self.told.append)

    def open(self) -> None:
        """Lay out rolls, bottles and plan, and open the run."""
        lay_out(self.desk)
        open_run(self.desk, self.live, RUN, PLAN.key, at(0.0))
        self.told.clear()


def lay_out(desk: Desk) -> None:
    """Rolls, two bottles of a litre, and the plan."""
    with desk.together():
        for roll in ROLLS:
            desk.rolls.add(roll, MADE)
        for batch in BATCHES:
            desk.batches.add(batch)
        for number, bottle in enumerate(BOTTLES):
            desk.bottles.add(bottle)
            line = LedgerLine(bottle.code, "mixed", ml=1000.0)
            desk.ledger.append([Booking(key(80 + number), line, f"shelf:{number}", 0, MADE)])
        desk.plans.keep(PLAN)


def phone(number: int, asked: Any, **more: Any) -> Command:
    """Command `number` of the phone."""
    return Command(id=f"phone:{number}", asked=asked, device="phone", run=RUN, **more)


def stands(desk: Desk, code: str) -> tuple[float, float]:
    """What is in a bottle by its ledger, in mL, and the film area it has taken."""
    lines = [one.line for one in desk.ledger.of_bottle(code)]
    return sum(line.ml for line in lines), sum(line.area_units for line in lines)


def left_to_book(desk: Desk, run: UUID = RUN) -> tuple[object, ...]:
    """What the ledger still lacks of what the log of a run says is owed: nothing, if all is well."""
    owed = charges(replay(desk.run_log.after(run)).state)
    return difference(owed, map(charge_of, desk.ledger.of_run(run)))
