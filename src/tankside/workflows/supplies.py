"""Which bottle each reused bath of a session comes from: what holds enough and is not done."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date

from tankside.core.permanence.fixer_standing import judge_fixer
from tankside.core.planning.first_evening import SUPPLIES
from tankside.core.planning.fixer import fixer_takes, fixer_wanted, may_fix
from tankside.core.planning.fixer_known import fixer_known
from tankside.core.planning.wish import Supply
from tankside.core.refusals import refuse
from tankside.core.rolls.roll import Roll
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bath_tests import indicator_turned
from tankside.core.shelf.bookings import Booking
from tankside.core.solutions.kinds import SolutionKind
from tankside.workflows.look_at_shelf import last_days
from tankside.workflows.ports import Desk


def supplies_on_the_shelf(
    desk: Desk, *, least_ml: float, rolls: Sequence[Roll], today: date
) -> tuple[Supply, ...]:
    """The default baths, each from a bottle that holds enough and may be used, or to be made.

    A fixer that may still take these rolls goes before one that may not by the source planned on; one that
    may not by either source, or that is done by its test or look, is passed over and named. A bottle past
    its date comes last, and of the others the one that ends first goes first.
    """
    return tuple(_from_shelf(desk, one, least_ml, rolls, today=today) for one in SUPPLIES)


def again_from_shelf(
    desk: Desk, supply: Supply, *, least_ml: float, rolls: Sequence[Roll], today: date
) -> Supply:
    """A bath of a plan as the shelf now knows it: the same bottle if it still may be used, else another.

    What is to be mixed fresh stays so, and so does what was made for this session and is used once.
    """
    bottle = desk.bottles.by_code(supply.bottle) if supply.bottle else None
    batch = desk.batches.by_key(bottle.batch) if bottle else None
    if batch is None or not batch.reusable:
        return supply
    same = next((one for one in _that_hold(desk, supply, least_ml) if one.bottle == supply.bottle), None)
    if same is not None and _offered(same, rolls):
        return same
    return _from_shelf(desk, fresh(supply.kind), least_ml, rolls, today=today)


def fresh(kind: SolutionKind) -> Supply:
    """A bath to be mixed fresh though a bottle of it stands there."""
    return next(one for one in SUPPLIES if one.kind == kind)


def must_hold(desk: Desk, supply: Supply) -> None:
    """Refuse a fixer that its test piece or its look has ended since the plan was made."""
    bottle = desk.bottles.by_code(supply.bottle) if supply.bottle else None
    batch = desk.batches.by_key(bottle.batch) if bottle else None
    if bottle is None or batch is None:
        return
    known = fixer_known(batch, desk.ledger.of_bottle(bottle.code))
    if known is not None and judge_fixer(known).done:
        raise refuse("fixer-done", ways_on=("mix-fresh", "look-at-the-shelf"), bottle=bottle.code)


def _from_shelf(desk: Desk, supply: Supply, least_ml: float, rolls: Sequence[Roll], *, today: date) -> Supply:
    """One bath from the shelf, or to be made."""
    standing = list(_that_hold(desk, supply, least_ml))
    found = [one for one in standing if _offered(one, rolls)]
    found.sort(key=lambda one: ((until := one.until or date.max) < today, until))
    if supply.kind == "fixer":
        found.sort(key=lambda one: _worse(one, fixer_wanted(rolls)))
    over = tuple(one.bottle for one in standing if one not in found and one.bottle)
    return found[0] if found else replace(supply, passed_over=over)


def _worse(supply: Supply, wanted: float) -> tuple[bool, bool]:
    """Too little left by the source planned on goes last; what is still to be tested after what is not."""
    left = fixer_takes(supply)
    due = supply.fixer is not None and judge_fixer(supply.fixer).test_due
    return left is not None and left.left_planned + 1e-9 < wanted, due


def _offered(supply: Supply, rolls: Sequence[Roll]) -> bool:
    """Whether a plan takes a bath from this bottle."""
    if supply.fixer is None:
        return True
    stands = may_fix(supply.fixer, [one.film.grain for one in rolls])
    return stands is not None and stands.left.left_named + 1e-9 >= fixer_wanted(rolls)


def _that_hold(desk: Desk, supply: Supply, least_ml: float) -> Iterator[Supply]:
    """The bath from each bottle that holds enough of it and is not spoilt."""
    batches = {one.key: one for one in desk.batches.all() if one.kind == supply.kind and one.reusable}
    until = last_days(desk)
    for bottle in desk.bottles.all():
        batch = batches.get(bottle.batch)
        booked = desk.ledger.of_bottle(bottle.code)
        stands = account(booked)
        if batch is None or stands.ml is None or stands.ml < least_ml or _spoilt(booked):
            continue
        yield replace(
            supply,
            name=batch.name,
            dilution=batch.dilution or supply.dilution,
            volume_ml=stands.ml,
            bottle=bottle.code,
            rolls_used=max(stands.counted_units, 0.0),
            fixer=fixer_known(batch, booked),
            until=until[bottle.code],
        )


def _spoilt(booked: Sequence[Booking]) -> bool:
    """Something else got in, it was poured away, or its indicator has turned."""
    stands = account(booked)
    return stands.contaminated or stands.discarded or indicator_turned(booked)
