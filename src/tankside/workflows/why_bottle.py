"""Why a number of a bottle is what it is, from its batch and its ledger."""

from __future__ import annotations

from datetime import date, tzinfo

from tankside.core.permanence.capacity import Fixed, capacity_left
from tankside.core.planning.explain_fixer import why_fixer_left
from tankside.core.planning.explain_shelf import why_good_until
from tankside.core.planning.why import AboutBottle, Why
from tankside.core.refusals import refuse
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bottles import Bottle
from tankside.workflows.look_at_shelf import bottle_now
from tankside.workflows.ports import Desk


def why_bottle(desk: Desk, bottle: Bottle, about: AboutBottle, *, zone: tzinfo) -> Why:
    """Why the number `about` of a bottle is what it is; refused where there is no such number.

    `zone` is that of the place, whose days count.
    """
    if about == "good-until":
        return _good_until(desk, bottle, zone)
    batch = desk.batches.by_key(bottle.batch)
    stands = account(desk.ledger.of_bottle(bottle.code))
    counted = batch is not None and batch.kind == "fixer" and batch.strength == "working"
    if about == "fixer-left" and counted and not stands.contaminated and not stands.discarded:
        left = capacity_left([Fixed(max(stands.area_units, 0.0))], working_ml=bottle.holds_ml)
        return why_fixer_left(left, working_ml=bottle.holds_ml)
    raise refuse("no-why", about=about)


def _good_until(desk: Desk, bottle: Bottle, zone: tzinfo) -> Why:
    """Why a bottle is good until its day."""
    one = bottle_now(desk, bottle.code, zone, date.min)
    if one is None or one.batch.keeps is None:
        raise refuse("no-why", about="good-until")
    return why_good_until(one.contents, one.batch.keeps, developer=one.batch.kind == "developer")
