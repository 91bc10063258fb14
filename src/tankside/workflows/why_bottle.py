"""Why a number of a bottle is what it is, from its batch and its ledger."""

from __future__ import annotations

from tankside.core.permanence.capacity import Fixed, capacity_left
from tankside.core.planning.explain_fixer import why_fixer_left
from tankside.core.planning.why import AboutBottle, Why
from tankside.core.refusals import refuse
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bottles import Bottle
from tankside.workflows.ports import Desk


def why_bottle(desk: Desk, bottle: Bottle, about: AboutBottle) -> Why:
    """Why the number `about` of a bottle is what it is; refused where there is no such number."""
    batch = desk.batches.by_key(bottle.batch)
    stands = account(desk.ledger.of_bottle(bottle.code))
    counted = batch is not None and batch.kind == "fixer" and batch.strength == "working"
    if about == "fixer-left" and counted and not stands.contaminated and not stands.discarded:
        left = capacity_left([Fixed(max(stands.area_units, 0.0))], working_ml=bottle.holds_ml)
        return why_fixer_left(left, working_ml=bottle.holds_ml)
    raise refuse("no-why", about=about)
