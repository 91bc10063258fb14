"""What has gone otherwise than planned, what it means for film and bath, and what is best now."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from tankside.core.run.advise import ContrastAdvice, advise_contrast, developing, outside_times
from tankside.core.run.bath_ends import end_after_s, home_of
from tankside.core.run.change_of_plan import rinse_first
from tankside.core.run.commands import Asked, DrainBath, EndTankful
from tankside.core.run.fixer_used import FixerUsed, fixer_used
from tankside.core.run.standing import Standing, really, standing
from tankside.core.run.state import RunState, TankfulState
from tankside.core.run.wrong_bottle import Contamination, contaminations

ConsequenceCode = Literal[
    "over-time", "image-gone", "before-developer", "unfixed", "unwashed", "wrong-bottle", "contaminated",
    "outside-times", "fixer-past",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Consequence:
    """Something that went otherwise: `best` is a command that is ready to be sent, with its words' key.

    `urgent` belongs on the first screen. `over_s` is how long the bath is over its end; `poured` the bath
    that really was poured and `owed` the one that should have been; `reads_c` what the tank reads.
    """

    code: ConsequenceCode
    tankful: str
    bath: str
    at_us: int
    urgent: bool
    best: Asked | None = None
    best_words: str = ""
    over_s: float = 0.0
    contrast: ContrastAdvice | None = None
    poured: str | None = None
    owed: str | None = None
    contamination: Contamination | None = None
    reads_c: float | None = None
    fixer: FixerUsed | None = None


def consequences(state: RunState, now_us: int) -> tuple[Consequence, ...]:
    """Everything that went otherwise, the urgent first, then in order of time."""
    found = [
        Consequence("contaminated", one.tankful, one.bath, one.at_us, False, contamination=one)
        for one in contaminations(state)
    ]
    for tankful in state.tankfuls:
        stands = standing(state, tankful)
        found.extend(_over_time(state, tankful, now_us))
        found.extend(_outside_times(state, tankful))
        found.extend(_out_of_order(state, tankful, stands))
        found.extend(_wrong_bottle(state, tankful))
        found.extend(_fixer_past(state, tankful))
    return tuple(sorted(found, key=lambda one: (not one.urgent, one.at_us, one.code)))


def _over_time(state: RunState, one: TankfulState, now_us: int) -> Iterator[Consequence]:
    """A developer past its latest pour-out: what it makes of the contrast so far, or made of it."""
    there = developing(state, one)
    if there is None:
        return
    bath = one.bath(there.bath)
    if bath.times.most_s is None:
        return
    end_s = end_after_s(one, bath)
    ended_us = there.ended_us
    had_s = ((now_us if ended_us is None else ended_us) - there.poured.at_us) / 1e6
    if had_s <= end_s + bath.drain_late_s or one.ended is not None:
        return
    end_us = there.poured.at_us + round(end_s * 1e6)
    out = DrainBath(bath.id, home_of(state, one, bath.id), held=True)
    yield Consequence(
        "over-time",
        one.letter,
        bath.id,
        end_us,
        urgent=ended_us is None,
        best=out if ended_us is None else None,
        best_words="pour-out-now" if ended_us is None else "",
        over_s=had_s - end_s,
        contrast=advise_contrast(state, one.letter, until_s=had_s),
    )


def _fixer_past(state: RunState, one: TankfulState) -> Iterator[Consequence]:
    """Film in a fixer that its count, its test piece or its look has ended: no wash can be told of it."""
    used = fixer_used(state, one.letter)
    if used is not None and used.stands.past:
        yield Consequence("fixer-past", one.letter, used.bath, used.at_us, urgent=False, fixer=used)


def _outside_times(state: RunState, one: TankfulState) -> Iterator[Consequence]:
    """A developer that reads colder or warmer than its times are known for: no end is told by that."""
    there, reading = developing(state, one), outside_times(state, one.letter)
    if there is None or reading is None or one.ended is not None:
        return
    at_us = there.poured.at_us + round(reading.time_s * 1e6)
    in_tank = there.ended_us is None
    yield Consequence("outside-times", one.letter, there.bath, at_us, urgent=in_tank, reads_c=reading.temp_c)


def _out_of_order(state: RunState, one: TankfulState, stands: Standing) -> Iterator[Consequence]:
    wrong = stands.misorder
    if stands.image_gone:
        at_us = wrong.at_us if wrong else one.passes[0].poured.at_us
        yield Consequence(
            "image-gone",
            one.letter,
            wrong.bath if wrong else one.passes[0].bath,
            at_us,
            urgent=one.ended is None,
            best=EndTankful(one.letter, "image lost") if one.ended is None else None,
            best_words="end-tankful" if one.ended is None else "",
        )
    elif wrong is not None:
        rinse = wrong.kind == "before-developer" and not wrong.settled and _not_water(one, wrong.bath)
        yield Consequence(
            wrong.kind,
            one.letter,
            wrong.bath,
            wrong.at_us,
            urgent=not wrong.settled and one.ended is None,
            best=rinse_first(state, one, wrong.owed) if rinse else None,
            best_words="rinse-then-develop" if rinse else "",
            poured=wrong.bath,
            owed=wrong.owed,
        )


def _wrong_bottle(state: RunState, one: TankfulState) -> Iterator[Consequence]:
    for there in one.passes:
        was = really(state, one, there)
        if was != there.bath:
            yield Consequence(
                "wrong-bottle",
                one.letter,
                there.bath,
                there.poured.at_us,
                urgent=there.ended_us is None,
                poured=was,
                owed=there.bath,
            )


def _not_water(one: TankfulState, bath: str) -> bool:
    return one.bath(bath).liquid is not None
