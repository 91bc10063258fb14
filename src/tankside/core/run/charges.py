"""What a run owes the shelf ledger: pure arithmetic of its settled notes, line by line."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from tankside.core.planning.fixer import tankful_wants
from tankside.core.planning.plan import Liquid
from tankside.core.run.events import TestTimed
from tankside.core.run.state import Fate, Pass, RunState, TankfulState
from tankside.core.shelf.ledger import BathTest, LedgerLine, LineKind

LEAST_ML = 1e-6


@dataclass(frozen=True, slots=True)
class Charge:
    """One ledger line that a run owes, keyed by the event it follows and its place among that event's."""

    event: str
    n: int
    line: LedgerLine

    @property
    def key(self) -> tuple[str, int, str, str]:
        """What a booked row is compared by."""
        return (self.event, self.n, self.line.bottle, self.line.kind)


def charges(state: RunState) -> tuple[Charge, ...]:
    """All that a run owes, in order of time: prepared, poured, returned, contaminated, discarded.

    No bottle that was seen at the opening, or was filled since, is charged below nothing: what was poured
    beyond its contents did not come out of it.
    """
    due: list[tuple[int, int, Charge]] = []
    for order, (at_us, made) in enumerate(_claims(state)):
        due.extend((at_us, order, one) for one in made)
    due.sort(key=lambda one: (one[0], one[1]))
    return _within_bottles(state, [one for _, _, one in due])


def difference(owed: Iterable[Charge], booked: Iterable[Charge]) -> tuple[Charge, ...]:
    """The lines to append so that what is booked comes to what is owed; nothing booked is ever changed."""
    owes = {one.key: one for one in owed}
    stands: dict[tuple[str, int, str, str], Charge] = {}
    for one in booked:
        so_far = _plus(stands[one.key], one, 1.0) if one.key in stands else one
        stands[one.key] = _saying(so_far, one)
    more: list[Charge] = []
    for key in dict.fromkeys((*stands, *owes)):
        wanted, held = owes.get(key), stands.get(key)
        template = wanted or held
        assert template is not None
        blank = replace(template, line=replace(template.line, ml=0.0, area_units=0.0, counted_units=0.0))
        change = _saying(_plus(_plus(blank, wanted, 1.0), held, -1.0), wanted)
        if held is None or _moves(change.line) or change.line.test != held.line.test:
            more.append(change)
    return tuple(more)


def _plus(one: Charge, other: Charge | None, sign: float) -> Charge:
    if other is None:
        return one
    line = replace(
        one.line,
        ml=one.line.ml + sign * other.line.ml,
        area_units=one.line.area_units + sign * other.line.area_units,
        counted_units=one.line.counted_units + sign * other.line.counted_units,
    )
    return replace(one, line=line)


def _moves(line: LedgerLine) -> bool:
    """Whether a line changes any sum."""
    return any(abs(one) > LEAST_ML for one in (line.ml, line.area_units, line.counted_units))


def _saying(one: Charge, wanted: Charge | None) -> Charge:
    """The same charge with the test that is owed: what a debt says is what its last line says."""
    return replace(one, line=replace(one.line, test=wanted.line.test if wanted else None))


def _claims(state: RunState) -> Iterable[tuple[int, list[Charge]]]:
    for prepared in state.prepared:
        body, event = prepared.body, prepared.mark.event
        made: list[Charge] = []
        if body.bottle is not None:
            made.append(_charge(event, 0, body.bottle, "mixed", body.ml))
        if body.drawn_from is not None and body.drawn_ml > 0:
            made.append(_charge(event, 1, body.drawn_from, "drawn", -body.drawn_ml))
        yield prepared.mark.at_us, made
    for tested in state.tests:
        yield tested.mark.at_us, [Charge(tested.mark.event, 0, _tested(tested.mark.event, tested.body))]
    for tankful in state.tankfuls:
        for one in tankful.passes:
            yield one.poured.at_us, _poured(state, tankful, one)
            if one.fate is not None:
                yield one.fate.mark.at_us, _went(state, tankful, one, one.fate)


def _poured(state: RunState, tankful: TankfulState, one: Pass) -> list[Charge]:
    if one.bottle is None:
        return []
    ml = poured_ml(tankful, one) * share_drawn(state, tankful, one)
    return [_charge(one.poured.event, 0, one.bottle, "drawn", -ml)] if ml > 0 else []


def _went(state: RunState, tankful: TankfulState, one: Pass, fate: Fate) -> list[Charge]:
    if fate.bottle is None:
        return []
    ml = min(fate.ml if fate.ml is not None else poured_ml(tankful, one), poured_ml(tankful, one))
    if is_right_return(state, tankful, one, fate.bottle):
        back = _charge(fate.mark.event, 0, fate.bottle, "returned", ml)
        return [_with_film(back, liquid_of(state, tankful, one.bath), tankful)]
    return [_charge(fate.mark.event, 0, fate.bottle, "contaminated", ml)]


def poured_ml(tankful: TankfulState, one: Pass) -> float:
    """How much went into the tank, the tank's own volume unless noted otherwise."""
    return one.ml if one.ml is not None else tankful.plan.tank.volume_ml


def share_drawn(state: RunState, tankful: TankfulState, one: Pass) -> float:
    """How much of a pour came out of its bottle: all of it, or only the stock where the rest was jug water.

    A bottle that was filled at 'Get ready' holds the mixed liquid, and the bench says so by its share of
    stock; one of stock gave only its part.
    """
    liquid = liquid_of(state, tankful, one.bath)
    if liquid is None or liquid.reusable:
        return 1.0
    ready = [prepared.body for prepared in state.prepared if prepared.body.liquid == liquid.key]
    if any(body.bottle == one.bottle for body in ready):
        return 1.0
    if any(body.drawn_from == one.bottle for body in ready):
        return 0.0
    if one.bottle != liquid.bottle or liquid.volume_ml <= 0:
        return 1.0
    held = next((bottle.stock_share for bottle in state.bench if bottle.code == one.bottle), 1.0)
    return min(1.0, liquid.stock_ml / liquid.volume_ml / held)


def is_right_return(state: RunState, tankful: TankfulState, one: Pass, bottle: str) -> bool:
    """Whether a bath that went back into `bottle` belongs there: reused, and poured from that very bottle."""
    liquid = liquid_of(state, tankful, one.bath)
    reusable = liquid is not None and liquid.reusable
    return reusable and bottle == (one.bottle or (planned_bottle(state, liquid) if liquid else None))


def liquid_of(state: RunState, tankful: TankfulState, bath: str) -> Liquid | None:
    """The planned liquid of a bath, None for water or a bath that the plan no longer holds."""
    key = next((one.liquid for one in tankful.plan.baths if one.id == bath), None)
    return next((one for one in state.plan.liquids if one.key == key), None) if key else None


def planned_bottle(state: RunState, liquid: Liquid | None) -> str | None:
    """The bottle that a liquid stands in: as planned, or as it was made at 'Get ready'."""
    if liquid is None:
        return None
    made = [one.body.bottle for one in state.prepared if one.body.liquid == liquid.key and one.body.bottle]
    return made[-1] if made else liquid.bottle


def _within_bottles(state: RunState, due: list[Charge]) -> tuple[Charge, ...]:
    """The same lines, none taking more out of a known bottle than is in it."""
    holds = {one.code: one.ml for one in state.bench if one.ml is not None}
    for one in due:
        if one.line.kind == "mixed":
            holds.setdefault(one.line.bottle, 0.0)
    capped: list[Charge] = []
    for one in due:
        code, ml = one.line.bottle, one.line.ml
        if code in holds:
            ml = max(ml, -holds[code])
            holds[code] += ml
        capped.append(replace(one, line=replace(one.line, ml=ml)))
    return tuple(capped)


def _charge(event: str, n: int, bottle: str, kind: LineKind, ml: float) -> Charge:
    return Charge(event, n, LedgerLine(bottle=bottle, kind=kind, ml=ml, because=event))


def _with_film(charge: Charge, liquid: Liquid | None, tankful: TankfulState) -> Charge:
    """The same charge with the film of a tankful, as that liquid counts it."""
    area = tankful.plan.area_units
    fixes = liquid is not None and liquid.kind == "fixer"
    counted = tankful_wants(tankful.plan) if fixes else area
    return replace(charge, line=replace(charge.line, area_units=area, counted_units=counted))


def _tested(event: str, told: TestTimed) -> LedgerLine:
    test = BathTest(told.test, told.film, told.seconds, told.temp_c, told.fresh)
    return LedgerLine(bottle=told.bottle, kind="tested", because=event, test=test)
