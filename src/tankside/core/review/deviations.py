"""What differed between plan and run, found in the log: nothing where all went to plan."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from tankside.core.development.advice import size_of
from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.plan import PlannedBath
from tankside.core.review.beside import Beside, Stay, beside, first_plan
from tankside.core.review.differed import (
    Begun,
    Deviation,
    Disorder,
    Doubtful,
    Drained,
    EndMoved,
    LeftOut,
    Missed,
    Noted,
    OfContrast,
    OtherBottle,
    Spoilt,
    Stayed,
    Timed,
    Warmth,
)
from tankside.core.review.predicted import percent_of_extra, percent_of_warmth, planned_temperatures
from tankside.core.review.put_right import put_right
from tankside.core.review.washed import wash_deviations
from tankside.core.run.advise import developing, tank_readings
from tankside.core.run.consequences import consequences
from tankside.core.run.doubts import doubts
from tankside.core.run.standing import standing
from tankside.core.run.state import Mark, Run, TankfulState

TAP_S = 5.0
"""A tap this far from its time is on time: nobody taps better."""

BEGUN_S = 120.0
STAY_S = 15.0
"""How far a bath that is at least, not exact, may stay from its aim before that is worth a word."""

READ_OFF_K = 0.3
FIRST_MINUTE_CYCLES = 1


def deviations(run: Run, letter: str) -> tuple[Deviation, ...]:
    """Everything that differed in the tankful `letter` and in the session around it, in order of time.

    Own model: docs/science/review.md. Doubt: what touches contrast carries its interval; a stay is compared
    to the marks of a tap (5 s) or, where a bath is at least and not exact, to 15 s.
    """
    found = [*_of_tankful(run, letter), *put_right(run, letter), *_of_session(run, letter)]
    return tuple(sorted(found, key=lambda one: one.at_us))


def _of_tankful(run: Run, letter: str) -> Iterator[Deviation]:
    shown = beside(run, letter)
    if shown is None:
        return
    one = run.state.tankful(letter)
    if shown.begun_late_s is not None and abs(shown.begun_late_s) >= BEGUN_S:
        yield Deviation(shown.zero_us, letter, None, Begun(shown.begun_late_s))
    yield from _development(run, one)
    yield from _stays(run, one, shown)
    yield from _missed(one)
    yield from _left_out(run, one, shown)
    yield from wash_deviations(run.state, one)
    yield from _went_otherwise(run, one)


def _development(run: Run, one: TankfulState) -> Iterator[Deviation]:
    """The end told anew, the drain against it, and the temperature against the plan."""
    there = developing(run.state, one)
    if there is None:
        return
    told_s = one.bath(there.bath).times.aim_s
    for told in one.told:
        if told.bath == there.bath and abs(told.end_after_s - told_s) >= 1:
            moved = EndMoved(told_s, told.end_after_s, told.because)
            yield Deviation(told.mark.at_us, one.letter, there.bath, moved)
            told_s = told.end_after_s
    yield from _warmth(run, one, told_s)
    if there.drained is None or not there.pour_noted:
        return
    by_s = (there.drained.at_us - there.poured.at_us) / 1e6 - told_s
    if abs(by_s) >= TAP_S:
        meant = percent_of_extra(run.state, one.letter, told_s=told_s)
        drained = Drained(by_s, told_s, _contrast(meant))
        yield Deviation(there.drained.at_us, one.letter, there.bath, drained)


def _warmth(run: Run, one: TankfulState, told_s: float) -> Iterator[Deviation]:
    """The reading that lay furthest from the planned drift, once for the whole development."""
    there, plan = developing(run.state, one), one.plan.development
    readings = tank_readings(run.state, one, there) if there else []
    if there is None or not readings:
        return
    path = planned_temperatures(plan, max(plan.time_s.value, *(read.time_s + 1 for read in readings)))
    planned = np.interp([read.time_s for read in readings], path.times_s, path.temps_c)
    read, planned_c = max(
        zip(readings, map(float, planned), strict=True), key=lambda pair: abs(pair[0].temp_c - pair[1])
    )
    if abs(read.temp_c - planned_c) < READ_OFF_K - 1e-9:
        return
    left = percent_of_warmth(run.state, one.letter, told_s=told_s)
    at_us = there.poured.at_us + round(read.time_s * 1e6)
    yield Deviation(at_us, one.letter, there.bath, Warmth(read.temp_c, planned_c, _contrast(left)))


def _contrast(percent: Estimate | None) -> OfContrast | None:
    return None if percent is None else OfContrast(percent, size_of(percent.value))


def _stays(run: Run, one: TankfulState, shown: Beside) -> Iterator[Deviation]:
    """Baths other than developer and wash, against their least, aim and most."""
    drain_s = run.state.plan.hands.drain_s
    for planned, had in shown.pairs():
        if planned is None or had is None or not had.ended or had.kind in ("develop", "wash"):
            continue
        for_s = had.for_s - (0.0 if had.drained else drain_s)
        stayed = _stayed(for_s, one.bath(planned.bath))
        if stayed is not None:
            how, limit_s = stayed
            timed = Timed(had.kind, how, for_s - one.bath(planned.bath).times.aim_s, limit_s)
            yield Deviation(_at_us(shown, had), one.letter, planned.bath, timed)


def _stayed(for_s: float, bath: PlannedBath) -> tuple[Stayed, float] | None:
    """How a stay differs from its aim, and the limit it passed; None where it does not."""
    times = bath.times
    if for_s < times.least_s - TAP_S:
        return "too short", times.least_s
    if times.most_s is not None and for_s > times.most_s + TAP_S:
        return "too long", times.most_s
    if abs(for_s - times.aim_s) < STAY_S:
        return None
    return ("longer" if for_s > times.aim_s else "shorter"), times.aim_s


def _at_us(shown: Beside, stay: Stay) -> int:
    return shown.zero_us + round(stay.end_s * 1e6)


def _missed(one: TankfulState) -> Iterator[Deviation]:
    """Inversions noted as missed, bath by bath."""
    missed: dict[str, list[tuple[int, Mark]]] = {}
    for cycle in one.cycles:
        if not cycle.done:
            missed.setdefault(cycle.bath, []).append((cycle.cycle, cycle.mark))
    for bath, cycles in missed.items():
        numbers = tuple(sorted(number for number, _ in cycles))
        developing_bath = one.bath(bath).kind == "develop"
        early = developing_bath and numbers[0] < FIRST_MINUTE_CYCLES
        yield Deviation(min(mark.at_us for _, mark in cycles), one.letter, bath, Missed(numbers, early))


def _left_out(run: Run, one: TankfulState, shown: Beside) -> Iterator[Deviation]:
    """Baths skipped, and baths of the plan that nobody poured though later ones or the end came."""
    skipped = {was.bath: was for was in one.skipped}
    last_us = run.settled.notes[-1].at_us
    coming = {bath.id for bath in standing(run.state, one).coming}
    done = one.ended is not None or bool(one.hung) or run.state.closed is not None
    had = {stay.bath for stay in shown.happened}
    for bath in first_plan(run, one.letter).tankful(one.letter).baths:
        if bath.id in skipped:
            was = skipped[bath.id]
            yield Deviation(was.mark.at_us, one.letter, bath.id, LeftOut(bath.kind, was.why, noted=True))
        elif bath.id not in had and (done or bath.id not in coming):
            yield Deviation(last_us, one.letter, bath.id, LeftOut(bath.kind, "", noted=False))


def _went_otherwise(run: Run, one: TankfulState) -> Iterator[Deviation]:
    """Bottles and order, as the sink told them; overtime is told with the drain."""
    kinds = {bath.id: bath.kind for bath in (*one.plan.baths, *one.former)}
    for each in consequences(run.state, run.settled.notes[-1].at_us):
        if each.tankful != one.letter:
            continue
        match each.code:
            case "over-time" | "outside-times" | "fixer-past":
                continue
            case "contaminated":
                if each.contamination is not None:
                    yield Deviation(each.at_us, one.letter, each.bath, Spoilt(each.contamination))
            case "wrong-bottle":
                there = next(was for was in one.passes if was.poured.at_us == each.at_us)
                other = OtherBottle(
                    there.bottle or "", kinds[each.poured or each.bath], kinds[each.owed or each.bath]
                )
                yield Deviation(each.at_us, one.letter, each.bath, other)
            case "image-gone" | "before-developer" | "unfixed" | "unwashed":
                yield Deviation(each.at_us, one.letter, each.bath, Disorder(each.code))


def _of_session(run: Run, letter: str) -> Iterator[Deviation]:
    """Doubts that stand and words that were written, of this tankful and of the session as a whole."""
    rolls = {roll.code for roll in run.state.tankful(letter).plan.rolls}
    for doubt in doubts(run.state):
        if doubt.tankful in (None, letter):
            yield Deviation(doubt.at_us, doubt.tankful, doubt.bath, Doubtful(doubt))
    for written in run.state.written:
        if written.about in rolls:
            yield Deviation(written.mark.at_us, letter, None, Noted(written.text, written.about))
        elif written.about in ("", letter):
            yield Deviation(written.mark.at_us, letter, None, Noted(written.text))
