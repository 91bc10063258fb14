"""What does not fit together in what was noted: derived, never stored, each with ways to clear it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from tankside.core.run.commands import AnswerDoubt, Asked, SettleClock, WithdrawNote
from tankside.core.run.state import Mark, RunState, TankfulState

DoubtCode = Literal[
    "poured-twice", "pour-not-noted", "drain-not-noted", "drained-again", "fate-again",
    "fate-of-nothing", "reading-odd", "clock", "clock-across",
]  # fmt: skip
ODD_K = 8.0
"""A tank this far from what was expected is asked about (ours)."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to clear a doubt: its words' key and what to send."""

    words: str
    asked: Asked


@dataclass(frozen=True, slots=True)
class Doubt:
    """Something doubtful about `tankful` (None: the session); `by_s` or `by_k` how far apart things are."""

    id: str
    code: DoubtCode
    tankful: str | None
    bath: str | None
    at_us: int
    ways: tuple[Way, ...]
    by_s: float | None = None
    by_k: float | None = None


def doubts(state: RunState) -> tuple[Doubt, ...]:
    """Every doubt that stands, in order of time."""
    answered = {about for about, _ in state.answered}
    found = [*_clock_doubts(state), *_odd_readings(state)]
    for one in state.tankfuls:
        found.extend(_of_passes(one))
        found.extend(_loose(one))
    standing = (one for one in found if one.id not in answered)
    return tuple(sorted(standing, key=lambda one: (one.at_us, one.id)))


def _of_passes(one: TankfulState) -> Iterator[Doubt]:
    for there in one.passes:
        for again in there.repeats:
            apart_s = (again.at_us - there.poured.at_us) / 1e6
            ways = (
                Way("the-first-is-right", WithdrawNote(again.event)),
                Way("the-second-is-right", WithdrawNote(there.poured.event)),
            )
            yield _doubt("poured-twice", one, there.bath, again, ways, by_s=apart_s)
        if not there.pour_noted:
            yield _doubt("pour-not-noted", one, there.bath, there.poured, ())
        emptied = there.drained is not None or there.fate is not None
        if there.left_us is not None and not emptied and one.bath(there.bath).liquid is not None:
            yield _doubt("drain-not-noted", one, there.bath, there.poured, ())


def _loose(one: TankfulState) -> Iterator[Doubt]:
    for code, bath, mark in one.loose:
        match code:
            case "drained-again" | "fate-again" | "fate-of-nothing":
                yield _doubt(code, one, bath, mark, (Way("take-it-back", WithdrawNote(mark.event)),))
            case _:
                raise ValueError(code)


def _odd_readings(state: RunState) -> Iterator[Doubt]:
    for reading in state.readings:
        if reading.body.of != "tank":
            continue
        one = next((each for each in state.tankfuls if each.letter == reading.body.which), None)
        if one is None:
            continue
        off_k = reading.body.temp_c - one.plan.development.start_c
        if abs(off_k) > ODD_K:
            ways = (Way("take-it-back", WithdrawNote(reading.mark.event)),)
            yield _doubt("reading-odd", one, None, reading.mark, ways, by_k=off_k)


def _clock_doubts(state: RunState) -> Iterator[Doubt]:
    for one in state.clock_doubts:
        if not one.settled:
            ways = (
                Way("elapsed-is-right", SettleClock("elapsed", one.mark.event)),
                Way("wall-is-right", SettleClock("wall", one.mark.event)),
            )
            code: DoubtCode = "clock-across" if one.across else "clock"
            name = f"{code}:{one.mark.event}"
            yield Doubt(name, code, None, None, one.mark.at_us, ways, by_s=one.by_s)


def _doubt(
    code: DoubtCode,
    one: TankfulState,
    bath: str | None,
    mark: Mark,
    ways: tuple[Way, ...],
    *,
    by_s: float | None = None,
    by_k: float | None = None,
) -> Doubt:
    """A doubt that may also be let stand as it is."""
    name = f"{code}:{mark.event}"
    stays = Way("let-it-stand", AnswerDoubt(name, "as noted"))
    return Doubt(name, code, one.letter, bath, mark.at_us, (*ways, stays), by_s=by_s, by_k=by_k)
