"""Notes about baths, hands and film: recorded, never refused save where they cannot be read."""

from __future__ import annotations

from tankside.core.agitation.hands import cycle_at
from tankside.core.refusals import refuse
from tankside.core.run.bath_ends import home_of, least_s
from tankside.core.run.commands import (
    ChangeWater,
    DrainBath,
    HangFilm,
    LoadTank,
    MarkRoll,
    NoteAgitation,
    PourBath,
    PrepareLiquid,
    WriteNote,
)
from tankside.core.run.decide.drafts import Draft, tankful_of, with_bath
from tankside.core.run.events import (
    AgitationNoted,
    BathDiscarded,
    BathDrained,
    BathPoured,
    BathReturned,
    BottleConfirmed,
    FilmHung,
    LiquidPrepared,
    NoteWritten,
    RollMarked,
    TankLoaded,
    WaterChanged,
)
from tankside.core.run.standing import bottle_for, standing
from tankside.core.run.state import Pass, Run, TankfulState


def pour(run: Run, asked: PourBath, at_us: int) -> list[Draft]:
    """'K7M4-T, pouring': poured, and confirmed if it was not at measuring."""
    one = with_bath(run, asked.bath)
    some_volume(asked.ml, "ml")
    bottle = asked.bottle or (None if asked.jug else bottle_for(run.state, one, asked.bath))
    drafts = [Draft(BathPoured(asked.bath, bottle, asked.ml, asked.took_s), one.letter)]
    if bottle is not None and not _measured_for_it(one, asked.bath, bottle, at_us):
        drafts.append(Draft(BottleConfirmed(asked.bath, bottle), one.letter))
    return drafts


def drain(run: Run, asked: DrainBath, at_us: int, *, fresh: bool) -> list[Draft]:
    """'Draining', with where it goes; a fresh touch before the least time must have been held."""
    one = with_bath(run, asked.bath)
    some_volume(asked.ml, "ml")
    if fresh:
        held_long_enough(run, one, asked, at_us)
    where = asked.to or home_of(run.state, one, asked.bath)
    fate = BathDiscarded(asked.bath, asked.ml)
    drafts = [Draft(BathDrained(asked.bath), one.letter)]
    if where != "drain":
        drafts.append(Draft(BathReturned(asked.bath, where, asked.ml), one.letter))
    elif one.bath(asked.bath).liquid is not None:
        drafts.append(Draft(fate, one.letter))
    return drafts


def held_long_enough(run: Run, one: TankfulState, asked: DrainBath, at_us: int) -> None:
    """Refuse to end a bath before its least time by a touch that was not held; one out of order has none."""
    there = _there_at(one, asked.bath, at_us)
    if there is None or asked.held or standing(run.state, one).stray is there:
        return
    bath = one.bath(asked.bath)
    from_us = there.filled_us if bath.kind == "wash" else there.poured.at_us
    had_s, least = (at_us - from_us) / 1e6, least_s(one, bath)
    if had_s < least:
        raise refuse("hold-to-drain", bath=asked.bath, had_s=had_s, least_s=least, ways_on=("hold",))


def change_water(run: Run, asked: ChangeWater, at_us: int) -> list[Draft]:
    """'Water changed': the next fill, or the one it names."""
    one = with_bath(run, asked.bath)
    readable_liquid(asked.temp_c, "temp_c")
    there = _there_at(one, asked.bath, at_us)
    before = [fill.n for fill in there.fills if fill.mark.at_us <= at_us] if there else []
    n = asked.n if asked.n is not None else (1 + max(before, default=1) if there else 1)
    if n < 1:
        raise refuse("no-such-fill", n=n, at="n")
    return [Draft(WaterChanged(asked.bath, n, asked.temp_c), one.letter)]


def agitation(run: Run, asked: NoteAgitation, at_us: int) -> list[Draft]:
    """'I missed one': the cycle it names, or the last that was due."""
    one = with_bath(run, asked.bath)
    planned = one.bath(asked.bath).agitation
    there = _there_at(one, asked.bath, at_us)
    cycle = asked.cycle
    if cycle is None:
        had_s = (at_us - there.poured.at_us) / 1e6 if there else 0.0
        cycle = cycle_at(planned, had_s)
    return [Draft(AgitationNoted(asked.bath, max(cycle, 0), asked.done), one.letter)]


def prepare(asked: PrepareLiquid) -> list[Draft]:
    """A liquid stands ready."""
    some_volume(asked.ml, "ml")
    readable_liquid(asked.temp_c, "temp_c")
    if not 0 <= asked.drawn_ml < float("inf"):
        raise refuse("no-volume", at="drawn_ml", volume_ml=asked.drawn_ml)
    body = LiquidPrepared(
        asked.liquid,
        asked.ml,
        asked.bottle,
        asked.drawn_from,
        asked.drawn_ml,
        asked.parts,
        asked.temp_c,
        asked.measure,
    )
    return [Draft(body)]


def load(run: Run, asked: LoadTank) -> list[Draft]:
    """Rolls are in the tank, all of the tankful's unless named."""
    one = tankful_of(run, asked.tankful)
    rolls = asked.rolls or tuple(roll.code for roll in one.plan.rolls)
    return [Draft(TankLoaded(one.plan.tank.name, rolls, asked.jammed), one.letter)]


def hang(run: Run, asked: HangFilm) -> list[Draft]:
    """'Hung': one event a roll."""
    one = tankful_of(run, asked.tankful)
    rolls = asked.rolls or tuple(roll.code for roll in one.plan.rolls)
    return [Draft(FilmHung(roll, asked.place), one.letter) for roll in rolls]


def words(run: Run, asked: WriteNote | MarkRoll) -> list[Draft]:
    """Free words, or what was seen on one roll."""
    if isinstance(asked, MarkRoll):
        return [Draft(RollMarked(asked.roll, asked.mark))]
    if asked.tankful is not None:
        tankful_of(run, asked.tankful)
    return [Draft(NoteWritten(asked.text), asked.tankful)]


def some_volume(ml: float | None, at: str) -> None:
    """Refuse a volume of nothing."""
    if ml is not None and not 0 < ml < float("inf"):
        raise refuse("no-volume", at=at, volume_ml=ml)


def readable_liquid(temp_c: float | None, at: str) -> None:
    """Refuse a liquid that would be ice or steam."""
    if temp_c is not None and not 0 <= temp_c <= 100:
        raise refuse("not-a-liquid", at=at, temp_c=temp_c)


def _measured_for_it(one: TankfulState, bath: str, bottle: str, at_us: int) -> bool:
    """Whether that bottle was confirmed for this very pour: before it, and after the bath's last pour."""
    last_us = max(
        (was.poured.at_us for was in one.passes if was.bath == bath and was.poured.at_us < at_us), default=-1
    )
    return any(
        was.bath == bath and was.bottle == bottle and last_us < was.mark.at_us <= at_us
        for was in one.confirmed
    )


def _there_at(one: TankfulState, bath: str, at_us: int) -> Pass | None:
    """The pass of a bath that was in the tank at that time."""
    return next((was for was in reversed(one.passes) if was.bath == bath and was.poured.at_us <= at_us), None)
