"""Before the first pour: each liquid made becomes a batch in one bottle with a fresh code."""

from __future__ import annotations

from dataclasses import dataclass, replace
from uuid import UUID

from tankside.core.codes import COUNT, code_from
from tankside.core.planning.get_ready import ToMake, to_make, with_bottle
from tankside.core.planning.plan import Liquid, Plan
from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle, Strength
from tankside.core.shelf.ledger import LedgerLine, LineKind
from tankside.core.solutions.cost import Price, cost_of
from tankside.workflows.keep_rolls import DRAWS
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.records import CodeTaken
from tankside.workflows.shelf_acts import book_act


@dataclass(frozen=True, slots=True)
class HaveAlready:
    """A bottle that stood there before: what it holds (mL) and how many rolls (units) went through it."""

    volume_ml: float
    rolls_used: float = 0.0


@dataclass(frozen=True, slots=True)
class Marks:
    """The person's own signs on a bottle, and what it holds when full (mL); all optional."""

    cap: str = ""
    place: str = ""
    holds_ml: float | None = None


@dataclass(frozen=True, slots=True)
class Made:
    """The plan with its liquid in a bottle, and the code to write on it."""

    plan: Plan
    code: str


def get_ready(desk: Desk, plan: UUID) -> tuple[ToMake, ...]:
    """What is to be made for a plan, in order, with the taps of its place as they are known now."""
    found = _plan(desk, plan)
    return to_make(found, desk.places.by_key(found.place.key) or found.place)


def liquid_made(
    desk: Desk,
    dice: Dice,
    plan: UUID,
    liquid: str,
    now: Instant,
    *,
    already: HaveAlready | None = None,
    marks: Marks | None = None,
) -> Made:
    """Book one liquid of a plan as a batch in a bottle; the plan's next number names the bottle."""
    found = _plan(desk, plan)
    if all(one.key != liquid for one in found.liquids):
        raise refuse("no-such-liquid", liquid=liquid, ways_on=("get-ready",))
    wanted = found.liquid(liquid)
    if wanted.bottle is not None:
        return Made(found, wanted.bottle)
    if already is not None and already.volume_ml < wanted.volume_ml:
        raise refuse(
            "bottle-holds-too-little", at="volume_ml", ways_on=("mix-more",),
            volume_ml=already.volume_ml, needed_ml=wanted.volume_ml,
        )  # fmt: skip
    with desk.together():
        batch = _batch(dice, wanted, now, already)
        if already is None:
            batch = replace(batch, price_minor=_price(desk, wanted))
        desk.batches.add(batch)
        bottle = fresh_bottle(desk, dice, batch, marks or Marks(), now)
        desk.ledger.append(first_lines(dice, batch, bottle, now, already))
        if already is None and wanted.stock_from is not None:
            _draw_stock(desk, dice, wanted, bottle, now)
        made = with_bottle(found, liquid, bottle.code, holds_ml=batch.made_ml)
        made = replace(made, made=moment_of(now))
        desk.plans.keep(made)
    return Made(made, bottle.code)


def _draw_stock(desk: Desk, dice: Dice, liquid: Liquid, into: Bottle, now: Instant) -> None:
    """Book what a liquid took from its bottle of stock, no more than was there."""
    code = liquid.stock_from or ""
    there_ml = account(desk.ledger.of_bottle(code)).ml or 0.0
    line = LedgerLine(code, "drawn", ml=-min(liquid.stock_ml, there_ml), words=f"for {into.code}")
    book_act(desk, dice, [line], now)


def _price(desk: Desk, liquid: Liquid) -> int | None:
    """What a liquid costs by the price of the stock in it; water is free, an unknown price stays unknown."""
    source = desk.bottles.by_code(liquid.stock_from) if liquid.stock_from else None
    stock = desk.batches.by_key(source.batch) if source else None
    if stock is None or stock.price_minor is None:
        return None
    return cost_of([(liquid.stock_ml, Price(stock.price_minor, stock.made_ml))])


def _plan(desk: Desk, key: UUID) -> Plan:
    """The plan as it stands."""
    found = desk.plans.by_key(key)
    if found is None:
        raise refuse("no-such-plan", ways_on=("plan",))
    return found


def _batch(dice: Dice, liquid: Liquid, now: Instant, already: HaveAlready | None) -> Batch:
    """The lot that was mixed, or that stood there."""
    strength: Strength = "working" if liquid.water_ml > 0 else "stock"
    made_ml = already.volume_ml if already else liquid.volume_ml
    return Batch(
        dice.key(), liquid.kind, liquid.name, strength, liquid.parts, moment_of(now), made_ml, liquid.reusable
    )


def fresh_bottle(desk: Desk, dice: Dice, batch: Batch, marks: Marks, now: Instant) -> Bottle:
    """A bottle under a fresh code that holds all of a batch: as large as told, else full with it."""
    holds_ml = batch.made_ml if marks.holds_ml is None else marks.holds_ml
    if holds_ml < batch.made_ml:
        raise refuse("bottle-too-small", at="holds", volume_ml=batch.made_ml, holds_ml=holds_ml)
    return empty_bottle(desk, dice, batch, marks, now, holds_ml=holds_ml)


def empty_bottle(
    desk: Desk, dice: Dice, batch: Batch, marks: Marks, now: Instant, *, holds_ml: float
) -> Bottle:
    """A bottle under a fresh code, nothing booked yet; a code that is taken is drawn again."""
    for _ in range(DRAWS):
        code = str(code_from(dice.below(COUNT)))
        bottle = Bottle(dice.key(), code, batch.key, holds_ml, marks.cap, marks.place, moment_of(now))
        try:
            desk.bottles.add(bottle)
        except CodeTaken:
            continue
        return bottle
    raise refuse("no-free-code", draws=DRAWS, ways_on=("try-again",))


def first_lines(
    dice: Dice, batch: Batch, bottle: Bottle, now: Instant, already: HaveAlready | None
) -> list[Booking]:
    """Mixed; and, for a bottle that stood there before, charged with the film that went through it."""
    event = f"get-ready:{batch.key}"
    lines: list[tuple[LineKind, float, float]] = [("mixed", batch.made_ml, 0.0)]
    if already is not None and already.rolls_used > 0:
        lines.append(("charged", 0.0, already.rolls_used))
    moment = moment_of(now)
    owed = [LedgerLine(bottle.code, kind, ml, area, event, counted_units=area) for kind, ml, area in lines]
    return [
        Booking(dice.key(), line, event, number, moment, place=number) for number, line in enumerate(owed)
    ]
