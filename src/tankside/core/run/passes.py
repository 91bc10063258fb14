"""How pouring, draining and new water move the baths of one tankful."""

from __future__ import annotations

from dataclasses import replace
from typing import assert_never

from tankside.core.run.events import (
    BathDiscarded,
    BathDrained,
    BathPoured,
    BathReturned,
    BottleConfirmed,
    WaterChanged,
)
from tankside.core.run.state import Confirmed, Fate, Fill, Mark, Pass, TankfulState

Passes = tuple[Pass, ...]
Moving = BottleConfirmed | BathPoured | BathDrained | BathReturned | BathDiscarded | WaterChanged
"""Bodies that move baths: each looks at what the one before it left."""


def moved(one: TankfulState, body: Moving, mark: Mark, plan_no: int) -> TankfulState:  # noqa: PLR0911
    """A bath in, out, back or away."""
    match body:
        case BottleConfirmed(bath=bath, bottle=bottle):
            return _confirmed(one, Confirmed(bath, bottle, mark))
        case BathPoured():
            after_pour = replace(one, passes=poured(one.passes, body, mark, plan_no))
            if body.bottle is None:
                return after_pour
            return _confirmed(after_pour, Confirmed(body.bath, body.bottle, mark))
        case BathDrained(bath=bath):
            return drained(one, bath, mark, plan_no)
        case BathReturned():
            return returned(one, body, mark)
        case BathDiscarded():
            return discarded(one, body, mark)
        case WaterChanged():
            return changed(one, body, mark, plan_no)
        case _:
            assert_never(body)


def poured(passes: Passes, body: BathPoured, mark: Mark, plan_no: int) -> Passes:
    """A pour begins a pass and ends whatever was left undrained; the same bath over itself is a doubt."""
    if passes and passes[-1].ended_us is None:
        last = passes[-1]
        if last.bath == body.bath:
            return (*passes[:-1], replace(last, repeats=(*last.repeats, mark)))
        passes = (*passes[:-1], replace(last, left_us=mark.at_us))
    return (*passes, Pass(body.bath, body.bottle, body.ml, mark, plan_no, took_s=body.took_s))


def drained(one: TankfulState, bath: str, mark: Mark, plan_no: int) -> TankfulState:
    """A drain ends its pass; without a pour it stands for a pass whose pour nobody noted."""
    at = _latest(one.passes, bath)
    if at is None:
        begun = Pass(bath, None, None, mark, plan_no, pour_noted=False, drained=mark)
        return replace(one, passes=(*_left(one.passes, mark), begun))
    if one.passes[at].ended_us is not None:
        return replace(one, loose=(*one.loose, ("drained-again", bath, mark)))
    return _changed(one, at, replace(one.passes[at], drained=mark))


def returned(one: TankfulState, body: BathReturned, mark: Mark) -> TankfulState:
    """A bath went back into a bottle."""
    return _fate(one, body.bath, Fate(mark, body.bottle, body.ml))


def discarded(one: TankfulState, body: BathDiscarded, mark: Mark) -> TankfulState:
    """A bath went away."""
    return _fate(one, body.bath, Fate(mark, None, body.ml))


def changed(one: TankfulState, body: WaterChanged, mark: Mark, plan_no: int) -> TankfulState:
    """New water; in a wash that nobody noted pouring it is the pour too."""
    at = _latest(one.passes, body.bath)
    fill = Fill(body.n, mark, body.temp_c)
    if at is None or one.passes[at].ended_us is not None:
        begun = Pass(body.bath, None, None, mark, plan_no, pour_noted=body.n == 1, fills=(fill,))
        return replace(one, passes=(*_left(one.passes, mark), begun))
    return _changed(one, at, replace(one.passes[at], fills=(*one.passes[at].fills, fill)))


def _confirmed(one: TankfulState, new: Confirmed) -> TankfulState:
    """A bottle is confirmed once for each pour: at measuring, at the latest by the pour itself."""
    last = next((was for was in reversed(one.confirmed) if _same_bottle(was, new)), None)
    if last is not None and not _used(one, last, new.mark.at_us):
        return one
    return replace(one, confirmed=(*one.confirmed, new))


def _same_bottle(one: Confirmed, other: Confirmed) -> bool:
    return (one.bath, one.bottle) == (other.bath, other.bottle)


def _used(one: TankfulState, confirmed: Confirmed, before_us: int) -> bool:
    """Whether its bath was poured between the confirming and then."""
    return any(
        there.bath == confirmed.bath and confirmed.mark.at_us <= there.poured.at_us < before_us
        for there in reversed(one.passes)
    )


def _fate(one: TankfulState, bath: str, fate: Fate) -> TankfulState:
    at = _latest(one.passes, bath)
    if at is None:
        return replace(one, loose=(*one.loose, ("fate-of-nothing", bath, fate.mark)))
    if one.passes[at].fate is not None:
        return replace(one, loose=(*one.loose, ("fate-again", bath, fate.mark)))
    return _changed(one, at, replace(one.passes[at], fate=fate))


def _latest(passes: Passes, bath: str) -> int | None:
    return next((at for at in reversed(range(len(passes))) if passes[at].bath == bath), None)


def _left(passes: Passes, mark: Mark) -> Passes:
    if passes and passes[-1].ended_us is None:
        return (*passes[:-1], replace(passes[-1], left_us=mark.at_us))
    return passes


def _changed(one: TankfulState, at: int, new: Pass) -> TankfulState:
    return replace(one, passes=(*one.passes[:at], new, *one.passes[at + 1 :]))
