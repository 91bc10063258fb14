"""Commands as an evening may bring them, sensible or not, in any order, from whatever chooses."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from bench import phone

from tankside.core.run.commands import (
    ChangeWater,
    CloseRun,
    Command,
    ConfirmBottle,
    DrainBath,
    HangFilm,
    PourBath,
    PrepareLiquid,
    RestateNote,
    RetimeNote,
    SkipBath,
    TakeReading,
    TimeTest,
    WithdrawNote,
    WriteNote,
)
from tankside.core.run.events import BathPoured

Choose = Callable[[Sequence[Any]], Any]

BATHS = ("A.develop", "A.stop", "A.fix", "A.wash", "A.wetting")
BOTTLES = ("K7M4-T", "F9QD-2", "9ZZ9-Z")
MADE: tuple[Callable[[Choose, str, str, str], Any], ...] = (
    lambda pick, bath, bottle, _: PourBath(bath, pick((None, bottle)), pick((None, 600.0, 250.0))),
    lambda pick, bath, bottle, _: PourBath(bath, bottle, pick((None, 600.0, 250.0))),
    lambda pick, bath, bottle, _: DrainBath(bath, pick((None, "drain", bottle)), held=pick((True, False))),
    lambda _, bath, bottle, __: DrainBath(bath, bottle, held=True),
    lambda _, __, ___, about: WithdrawNote(about),
    lambda pick, _, __, about: RetimeNote(about, pick((0.0, 30.0, 400.0))),
    lambda pick, bath, bottle, about: RestateNote(about, BathPoured(bath, bottle, pick((None, 300.0)))),
    lambda _, bath, bottle, __: ConfirmBottle(bath, bottle),
    lambda _, bath, __, ___: ChangeWater(bath),
    lambda pick, _, __, ___: TakeReading("tank", "A", pick((18.0, 19.5, 21.0))),
    lambda pick, _, bottle, __: PrepareLiquid(
        "stop", 600.0, bottle, pick((None, *BOTTLES)), pick((0.0, 30.0))
    ),
    lambda _, __, bottle, ___: TimeTest(bottle, "Ferry 125", "clearing", 45.0),
    lambda _, bath, __, ___: SkipBath(bath, "none left"),
    lambda _, __, ___, ____: HangFilm("A"),
    lambda pick, _, __, ___: CloseRun(pick(("finished", "broken off"))),
    lambda _, __, ___, ____: WriteNote("fan on"),
)
"""What can be asked, each about a bath, a bottle and an earlier note."""


def deed(pick: Choose, number: int) -> Command:
    """Command `number` of the phone, as `pick` picks it."""
    about = f"phone:{pick(range(1, number + 1))}/{pick((0, 0, 1))}"
    asked = pick(MADE)(pick, pick(BATHS), pick(BOTTLES), about)
    return phone(number, asked, age_s=pick((0.0, 0.0, 15.0)))
