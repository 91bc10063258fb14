"""All step strips of one combination read back: curves, what is believed of contrast and time, what was had.

Nothing of it is kept: it is worked out from the readings each time, and the same ones give the same digits.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache
from uuid import UUID

from tankside.core.development.belief import Belief, Evidence
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.combinations import Combination, TimeRow
from tankside.core.methods.known_time import KnownTime, known_time
from tankside.core.methods.step_strips import StepStrip, curve_strip, latest
from tankside.core.planning.explain_contrast import aim_of
from tankside.core.rates import BelievedRate
from tankside.core.refusals import refuse
from tankside.core.review.evidence import NextMorning
from tankside.core.review.predicted import counted, developed_of
from tankside.core.review.proposals import Developed
from tankside.core.review.strips import Aimed, JudgedAnswer, JudgedStrip, belief_of, evidence_of
from tankside.core.run.replay import replay
from tankside.core.run.state import Run
from tankside.core.sensitometry.findings import Findings, findings_of
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk

KEPT_IN_MIND = 256


@dataclass(frozen=True, slots=True)
class Had:
    """The development of a strip: clock time, mean temperature, and the time that counted at `ref_c`.

    `aimed_s` is what was to count; `developed` what the log of its run says, None without one.
    """

    had_s: float
    mean_c: float
    counted_s: float
    aimed_s: float
    ref_c: float
    developed: Developed | None = None


@dataclass(frozen=True, slots=True)
class ReadStrip:
    """A strip, what its readings tell, the development it had; `day` is that of its run, else when noted."""

    strip: StepStrip
    found: Findings
    had: Had
    day: datetime

    @property
    def judged(self) -> JudgedStrip | None:
        """Its contrast as evidence of contrast and time; None where it has none."""
        contrast = self.found.contrast_index
        if not isinstance(contrast, Estimate):
            return None
        return JudgedStrip(contrast, self.had.counted_s, self.had.aimed_s)


@dataclass(frozen=True, slots=True)
class InUse:
    """The row of a combination that gives its time, the one it came from, and how its rate goes."""

    known: KnownTime
    first: TimeRow

    @property
    def row(self) -> TimeRow:
        """The row itself."""
        return self.known.row

    @property
    def rate(self) -> BelievedRate:
        """How its rate goes with temperature."""
        return self.known.rate.believed

    @property
    def aimed(self) -> Aimed:
        """The row as the time that strips are held against."""
        return Aimed(self.row.time_s, aim_of(self.known), self.first.time_s)


@dataclass(frozen=True, slots=True)
class ReadCombination:
    """A combination with its strips, the shortest first; `belief` is None without a time or a strip."""

    combination: Combination
    in_use: InUse | None
    strips: tuple[ReadStrip, ...]
    control: tuple[StepStrip, ...]
    answers: tuple[JudgedAnswer, ...]
    belief: Belief | None

    @property
    def judged(self) -> tuple[JudgedStrip, ...]:
        """Those of its strips that tell a contrast."""
        return tuple(one.judged for one in self.strips if one.judged is not None)


@dataclass(frozen=True, slots=True)
class Listed:
    """A combination that has strips, as a list names it."""

    combination: Combination
    strips: int
    control: int


def list_combinations(desk: Desk) -> tuple[Listed, ...]:
    """Every combination with a strip, by film and developer."""
    strips = latest(desk.step_strips.all())
    found = []
    for combination in desk.combinations.all():
        own = [one for one in strips if one.combination == combination.key]
        if own:
            found.append(
                Listed(combination, sum(not one.control for one in own), sum(one.control for one in own))
            )
    return tuple(found)


def read_combination(desk: Desk, key: UUID) -> ReadCombination:
    """One combination, its strips as they stand, and what they say together."""
    combination = desk.combinations.by_key(key)
    if combination is None:
        raise refuse("no-such-combination", ways_on=("look-at-densities",))
    own = [one for one in latest(desk.step_strips.all()) if one.combination == key]
    runs = _runs(desk, own)
    in_use = row_in_use(combination, _index(own, runs))
    read = [_read(one, runs, in_use) for one in own if not one.control]
    strips = tuple(sorted((one for one in read if one is not None), key=lambda one: one.had.counted_s))
    judged = tuple(one.judged for one in strips if one.judged is not None)
    answers = _answers(desk, key, own) if in_use else ()
    belief = belief_of(in_use.aimed, judged, answers) if in_use and (judged or answers) else None
    control = tuple(one for one in own if one.control)
    return ReadCombination(combination, in_use, strips, control, answers, belief)


def evidence_on(desk: Desk, key: UUID) -> tuple[Evidence, ...]:
    """What strips and answers have told of one combination, for whoever asks what it will make."""
    read = read_combination(desk, key)
    return evidence_of(read.in_use.aimed, read.judged, read.answers) if read.in_use else ()


def row_in_use(combination: Combination, index: float | None) -> InUse | None:
    """The row that gives the time at `index`, or at the first index there is; None without any row."""
    if not combination.rows:
        return None
    known = known_time(combination, combination.rows[0].index if index is None else index)
    by_key = {row.key: row for row in combination.rows}
    first = known.row
    while first.replaces is not None and first.replaces in by_key:
        first = by_key[first.replaces]
    return InUse(known, first)


@lru_cache(maxsize=KEPT_IN_MIND)
def found_on(strip: StepStrip) -> Findings:
    """What the readings of a strip tell."""
    return findings_of(curve_strip(strip))


def _runs(desk: Desk, strips: Sequence[StepStrip]) -> dict[UUID, Run]:
    """The runs that strips were developed in."""
    keys = {one.run for one in strips if one.run is not None}
    return {key: replay(events) for key in keys if (events := desk.run_log.after(key))}


def _index(strips: Sequence[StepStrip], runs: dict[UUID, Run]) -> float | None:
    """The exposure index of the latest run with a strip, by which the row in use is chosen."""
    for one in reversed(strips):
        if one.run in runs and one.tankful is not None:
            return runs[one.run].state.tankful(one.tankful).plan.index
    return None


def _read(strip: StepStrip, runs: dict[UUID, Run], in_use: InUse | None) -> ReadStrip | None:
    """One strip with its development; None while that of its run is not over."""
    if strip.run is None:
        return ReadStrip(strip, found_on(strip), _had_alone(strip, in_use), strip.noted)
    if strip.run not in runs or strip.tankful is None:
        return None
    run = runs[strip.run]
    had = _had_in_run(run, strip.tankful, in_use)
    return None if had is None else ReadStrip(strip, found_on(strip), had, moment_of(run.events[0].recorded))


def _had_alone(strip: StepStrip, in_use: InUse | None) -> Had:
    """The time and temperature that were told, brought to the reference by the factor of the combination."""
    assert strip.time_s is not None
    assert strip.temp_c is not None
    ref_c = in_use.row.temp_c if in_use else strip.temp_c
    factor = float(in_use.rate.law.factor(strip.temp_c)) if in_use else 1.0
    counted_s = strip.time_s * factor
    return Had(strip.time_s, strip.temp_c, counted_s, counted_s, ref_c)


def _had_in_run(run: Run, letter: str, in_use: InUse | None) -> Had | None:
    """What the log of a run says, brought to the reference of the row in use."""
    found = counted(run.state, letter)
    if found is None:
        return None
    ref_c = in_use.row.temp_c if in_use else found.ref_c
    share = float(in_use.rate.law.factor(found.ref_c)) if in_use else 1.0
    return Had(
        found.had_s, found.mean_c, found.counted_s * share, found.due_s * share, ref_c,
        developed_of(run.state, letter),
    )  # fmt: skip


def _answers(desk: Desk, key: UUID, strips: Sequence[StepStrip]) -> tuple[JudgedAnswer, ...]:
    """The latest answer on each tankful of the combination that has no strip."""
    with_strip = {(one.run, one.tankful) for one in strips}
    said = {(one.run, one.tankful): one.said for one in desk.evidence.all()}
    found = []
    for (run_key, letter), answer in said.items():
        if (run_key, letter) in with_strip or not isinstance(answer, NextMorning):
            continue
        run = replay(desk.run_log.after(run_key))
        had = counted(run.state, letter)
        if had is not None and run.state.tankful(letter).plan.combination == key:
            found.append(JudgedAnswer(answer, had.counted_s))
    return tuple(found)
