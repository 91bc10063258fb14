"""A step strip read: kept as it was typed, held to its tablet, and asked what it means for the next roll."""

from __future__ import annotations

from dataclasses import dataclass, replace
from uuid import UUID

from tankside.core.methods.step_strips import Exposed, StepStrip, curve_strip, latest, read_through
from tankside.core.quantities.limits import INDEX
from tankside.core.refusals import Refused, refuse
from tankside.core.run.instants import Instant
from tankside.core.sensitometry.curve import READING_SD, curve_of
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.propose_from_strips import propose_if_strips_can
from tankside.workflows.read_densities import row_in_use
from tankside.workflows.read_journal import Which, run_of
from tankside.workflows.records import Conflict, KeptProposal

LEAST_LOG_H0, MOST_LOG_H0 = -4.0, 4.0


@dataclass(frozen=True, slots=True)
class Typed:
    """What a person typed of one strip, and of how it was read and exposed; `tablet` is its name."""

    readings: str
    tablet: str
    patches: tuple[float, ...]
    base_fog: float | None = None
    reading_sd: float = READING_SD
    instrument: str = ""
    exposed: Exposed = Exposed()
    control: bool = False
    words: str = ""


@dataclass(frozen=True, slots=True)
class Alone:
    """A strip that belongs to no run here: its combination, and how long and how warm it was developed."""

    combination: UUID
    time_s: float
    temp_c: float


def read_step_strip(
    desk: Desk, dice: Dice, typed: Typed, of: Which | Alone, now: Instant, *, replaces: UUID | None = None
) -> tuple[StepStrip, tuple[KeptProposal, ...]]:
    """Keep a strip, and say what all strips of its combination ask of the next roll.

    Refused with the numbers where its readings cannot be a strip; nothing that was worked out is kept.
    """
    strip = _strip(desk, dice, typed, of, now)
    if isinstance(of, Alone):
        _rate_known(desk, of)
    if replaces is not None:
        strip = replace(strip, replaces=_standing(desk, replaces).key)
    _could_be_a_curve(strip)
    with desk.together():
        try:
            desk.step_strips.add(strip)
        except Conflict:
            raise refuse("strip-read-again", ways_on=("look-at-densities",)) from None
        proposed = () if strip.control else propose_if_strips_can(desk, dice, strip.combination, now)
    return strip, proposed


def _strip(desk: Desk, dice: Dice, typed: Typed, of: Which | Alone, now: Instant) -> StepStrip:
    """What was typed as a strip, with the combination that it belongs to."""
    _exposure(typed.exposed)
    read = read_through(typed.readings, typed.patches)
    return StepStrip(
        key=dice.key(),
        noted=moment_of(now),
        combination=of.combination if isinstance(of, Alone) else _combination_of(desk, of),
        typed=typed.readings,
        densities=read.densities,
        tablet=typed.tablet,
        patches=() if read.log_h is not None else typed.patches,
        log_h=read.log_h,
        base_fog=typed.base_fog,
        reading_sd=typed.reading_sd,
        instrument=typed.instrument,
        exposed=typed.exposed,
        control=typed.control,
        run=None if isinstance(of, Alone) else of.run,
        tankful=None if isinstance(of, Alone) else of.letter,
        time_s=of.time_s if isinstance(of, Alone) else None,
        temp_c=of.temp_c if isinstance(of, Alone) else None,
        words=typed.words,
    )


def _combination_of(desk: Desk, which: Which) -> UUID:
    """What a tankful was developed by."""
    found = run_of(desk, which).state.tankful(which.letter).plan.combination
    if found is None or desk.combinations.by_key(found) is None:
        raise refuse("no-combination-judged", ways_on=("look-at-the-journal",))
    return found


def _rate_known(desk: Desk, of: Alone) -> None:
    """Refuse a temperature at which nothing tells what a minute is worth."""
    combination = desk.combinations.by_key(of.combination)
    if combination is None:
        raise refuse("no-such-combination", ways_on=("look-at-densities",))
    in_use = row_in_use(combination, None)
    if in_use is not None and not in_use.rate.knows(of.temp_c):
        raise refuse("rate-not-known-there", at="temp", temp_c=of.temp_c,
                     least_c=in_use.rate.least_c, most_c=in_use.rate.most_c)  # fmt: skip


def _exposure(exposed: Exposed) -> None:
    """Refuse an exposure that no tablet had."""
    if exposed.log_h0 is not None and not LEAST_LOG_H0 <= exposed.log_h0 <= MOST_LOG_H0:
        raise refuse("log-exposure-out-of-range", at="log_h0", log_h=exposed.log_h0,
                     least=LEAST_LOG_H0, most=MOST_LOG_H0)  # fmt: skip
    if exposed.metered_index is not None and not INDEX.hold(exposed.metered_index):
        raise refuse("index-not-readable", at="metered_index", index=exposed.metered_index)


def _standing(desk: Desk, key: UUID) -> StepStrip:
    """The strip that is put right, which nothing has replaced yet."""
    strips = desk.step_strips.all()
    if key not in {one.key for one in strips}:
        raise refuse("no-such-strip", ways_on=("look-at-densities",))
    found = next((one for one in latest(strips) if one.key == key), None)
    if found is None:
        raise refuse("strip-read-again", ways_on=("look-at-densities",))
    return found


def _could_be_a_curve(strip: StepStrip) -> None:
    """Refuse what no curve goes through, at its field; of a control strip only its steps are asked."""
    try:
        readings = curve_strip(strip)
        if not strip.control:
            curve_of(readings)
    except Refused as no:
        at = "readings" if no.refusal.at in {None, "density"} else no.refusal.at
        raise Refused(no.refusal.placed(at or "readings")) from None
