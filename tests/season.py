"""Invented runs on a desk that remembers: planned from six answers, tapped through, closed, and judged."""

from __future__ import annotations

from dataclasses import replace
from typing import Any
from uuid import UUID

from evening_clock import at
from fakes import memory_house
from planned import ANSWERS

from tankside.core.planning.plan import Plan
from tankside.core.run.commands import (
    ChangeWater,
    CloseRun,
    Command,
    DrainBath,
    HangFilm,
    PourBath,
    TakeReading,
)
from tankside.workflows.begin_first_evening import begin_first_evening
from tankside.workflows.house import House
from tankside.workflows.make_plan import Chosen, make_plan
from tankside.workflows.open_run import open_run
from tankside.workflows.read_journal import Which

UNMIXED = replace(ANSWERS, reads_c=None)
DAY_S = 86_400.0


class Season:
    """A house with one film and one developer, in which evening follows evening."""

    def __init__(self, house: House | None = None) -> None:
        self.house = house or memory_house()
        self.evenings = 0
        self.taps = 0
        self.first = begin_first_evening(self.house.desk, self.house.dice, UNMIXED, at(0.0))

    def next_plan(self) -> Plan:
        """A plan for the same roll, a day later, as the desk now knows it."""
        roll = self.house.desk.rolls.all()[0]
        now = at(DAY_S * self.evenings)
        return make_plan(self.house.desk, self.house.dice, Chosen([roll.key]), now)

    def evening(
        self, *, reads_c: float | None = 20.0, developed_s: float = 570.0, fix_s: float = 300.0
    ) -> Which:
        """A whole tankful: read at 3:00, poured out after `developed_s`, hung and closed."""
        plan = self.first if self.evenings == 0 else self.next_plan()
        run, begins_s = UUID(int=700 + self.evenings), DAY_S * self.evenings + 900.0
        self.evenings += 1
        open_run(self.house.desk, self.house.live_runs, run, plan.key, at(begins_s - 60))
        stop_s = developed_s + 15
        fixed_s = stop_s + 75 + fix_s
        acts: list[tuple[Any, float]] = [
            (PourBath("A.develop"), 0.0),
            *([(TakeReading("tank", "A", reads_c), 180.0)] if reads_c is not None else []),
            (DrainBath("A.develop", "drain", held=True), developed_s),
            (PourBath("A.stop"), stop_s),
            (DrainBath("A.stop", "drain"), stop_s + 60),
            (PourBath("A.fix"), stop_s + 75),
            (DrainBath("A.fix", "drain", held=True), fixed_s),
            (PourBath("A.wash"), fixed_s + 15),
            *((ChangeWater("A.wash", n), fixed_s + 15 + 300 * (n - 1)) for n in (2, 3, 4)),
            (PourBath("A.wetting"), fixed_s + 1215),
            (DrainBath("A.wetting", "drain"), fixed_s + 1275),
            (HangFilm("A"), fixed_s + 1290),
            (CloseRun(), fixed_s + 1400),
        ]
        for asked, seconds in acts:
            self.tap(run, asked, begins_s + seconds)
        return Which(run, "A")

    def tap(self, run: UUID, asked: Any, seconds: float) -> None:
        """One command of the phone, with what its screen has seen."""
        self.taps += 1
        seen = self.house.live_runs.look(run)
        command = Command(
            id=f"phone:{self.taps}", asked=asked, device="phone", run=run,
            saw_seq=seen.last_seq if seen else None,
        )  # fmt: skip
        self.house.live_runs.note(run, command, at(seconds))
