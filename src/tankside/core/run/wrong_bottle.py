"""A bottle taken or filled by mistake: what it holds now, and that it is never offered again."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.run.charges import Charge, charges, liquid_of, poured_ml
from tankside.core.run.standing import bottle_for
from tankside.core.run.state import Pass, RunState, TankfulState
from tankside.core.solutions.kinds import SolutionKind


@dataclass(frozen=True, slots=True)
class Contamination:
    """`poured_ml` of `kind` went into `bottle`; `most_strength` of what it was is left, None if unknown.

    Own model: strength by the stock that is in it, as if what came back were unused, so an upper bound.
    """

    bottle: str
    tankful: str
    bath: str
    at_us: int
    kind: SolutionKind | None
    poured_ml: float
    held_ml: float | None
    most_strength: float | None


def contaminations(state: RunState) -> tuple[Contamination, ...]:
    """Every bottle that something wrong was poured into, in order of time."""
    owed = charges(state)
    wrong = {one.event: one for one in owed if one.line.kind == "contaminated"}
    found = [
        _contamination(state, tankful, one, wrong[one.fate.mark.event], owed)
        for tankful in state.tankfuls
        for one in tankful.passes
        if one.fate is not None and one.fate.mark.event in wrong
    ]
    return tuple(sorted(found, key=lambda one: one.at_us))


def contaminated_bottles(state: RunState) -> frozenset[str]:
    """Codes that are never offered again: spoilt in this run, or before it was opened."""
    before = frozenset(one.code for one in state.bench if one.contaminated)
    return before | {one.line.bottle for one in charges(state) if one.line.kind == "contaminated"}


def offered_bottle(state: RunState, tankful: TankfulState, bath: str, spoilt: frozenset[str]) -> str | None:
    """The bottle to measure a bath from: the planned one, one of its kind once that is spoilt, or none."""
    planned = bottle_for(state, tankful, bath)
    if planned is None or planned not in spoilt:
        return planned
    kind = kind_of_bottle(state, planned)
    in_plan = {one.bottle for one in state.plan.liquids}
    alike = (one.code for one in state.bench if one.kind == kind and one.code not in spoilt | in_plan)
    return next(alike, None)


def kind_of_bottle(state: RunState, code: str) -> SolutionKind | None:
    """What stands in a bottle, by the bench, the plan or what was made in this run."""
    seen = state.bench_bottle(code)
    if seen is not None:
        return seen.kind
    made = {one.body.liquid for one in state.prepared if one.body.bottle == code}
    for liquid in state.plan.liquids:
        if liquid.bottle == code or liquid.key in made:
            return liquid.kind
    return None


def _contamination(
    state: RunState, tankful: TankfulState, one: Pass, charge: Charge, owed: tuple[Charge, ...]
) -> Contamination:
    assert one.fate is not None
    code, ml = charge.line.bottle, charge.line.ml
    liquid = liquid_of(state, tankful, one.bath)
    held_ml = _held_before(state, code, charge, owed)
    was_share = _share_in_bottle(state, code)
    same = liquid is not None and liquid.kind == kind_of_bottle(state, code)
    in_share = liquid.stock_ml / liquid.volume_ml if liquid and same and liquid.volume_ml > 0 else 0.0
    strength = None
    if held_ml is not None and held_ml + ml > 0 and was_share > 0:
        strength = min(1.0, (held_ml * was_share + ml * in_share) / ((held_ml + ml) * was_share))
    return Contamination(
        bottle=code,
        tankful=tankful.letter,
        bath=one.bath,
        at_us=one.fate.mark.at_us,
        kind=liquid.kind if liquid else None,
        poured_ml=min(ml, poured_ml(tankful, one)),
        held_ml=held_ml,
        most_strength=strength,
    )


def _held_before(state: RunState, code: str, charge: Charge, owed: tuple[Charge, ...]) -> float | None:
    seen = state.bench_bottle(code)
    mixed = any(one.line.bottle == code and one.line.kind == "mixed" for one in owed)
    if (seen is None or seen.ml is None) and not mixed:
        return None
    before = owed[: owed.index(charge)]
    start_ml = seen.ml if seen is not None and seen.ml is not None else 0.0
    return start_ml + sum(one.line.ml for one in before if one.line.bottle == code)


def _share_in_bottle(state: RunState, code: str) -> float:
    """Share of stock in what a bottle held; working strength made in this run by its own parts."""
    seen = state.bench_bottle(code)
    if seen is not None:
        return seen.stock_share
    made = {one.body.liquid for one in state.prepared if one.body.bottle == code}
    for liquid in state.plan.liquids:
        if (liquid.bottle == code or liquid.key in made) and liquid.volume_ml > 0:
            return liquid.stock_ml / liquid.volume_ml
    return 1.0
