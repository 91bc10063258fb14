"""Why a number of a bottle is what it is, from its batch and its ledger."""

from __future__ import annotations

from datetime import date, tzinfo

from tankside.core.permanence.fixer_standing import judge_fixer
from tankside.core.planning.developer_left import why_developer_left
from tankside.core.planning.explain_fixer import why_fixer_left
from tankside.core.planning.explain_shelf import why_good_until
from tankside.core.planning.explain_stop import why_stop_left
from tankside.core.planning.fixer_known import fixer_known
from tankside.core.planning.why import AboutBottle, Why
from tankside.core.refusals import refuse
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bath_tests import indicator_turned
from tankside.core.shelf.bottles import Bottle
from tankside.core.shelf.stop_count import stop_count
from tankside.workflows.developer_used import how_used
from tankside.workflows.look_at_shelf import bottle_now
from tankside.workflows.ports import Desk


def why_bottle(desk: Desk, bottle: Bottle, about: AboutBottle, *, zone: tzinfo) -> Why:
    """Why the number `about` of a bottle is what it is; refused where there is no such number.

    `zone` is that of the place, whose days count.
    """
    if about == "good-until":
        return _good_until(desk, bottle, zone)
    if about == "developer-left":
        return _developer_left(desk, bottle, zone)
    if about == "stop-left":
        return _stop_left(desk, bottle)
    batch = desk.batches.by_key(bottle.batch)
    booked = desk.ledger.of_bottle(bottle.code)
    stands = account(booked)
    known = fixer_known(batch, booked) if batch is not None else None
    if about == "fixer-left" and known and not stands.contaminated and not stands.discarded:
        return why_fixer_left(judge_fixer(known).left, working_ml=known.working_ml)
    raise refuse("no-why", about=about)


def _good_until(desk: Desk, bottle: Bottle, zone: tzinfo) -> Why:
    """Why a bottle is good until its day."""
    one = bottle_now(desk, bottle.code, zone, date.min)
    if one is None or one.batch.keeps is None:
        raise refuse("no-why", about="good-until")
    return why_good_until(one.contents, one.batch.keeps, developer=one.batch.kind == "developer")


def _developer_left(desk: Desk, bottle: Bottle, zone: tzinfo) -> Why:
    """Why a bottle of stock is enough for so many rolls."""
    one = bottle_now(desk, bottle.code, zone, date.min)
    use = how_used(desk, one) if one else None
    if one is None or use is None:
        raise refuse("no-why", about="developer-left")
    return why_developer_left(one.contents.ml, use)


def _stop_left(desk: Desk, bottle: Bottle) -> Why:
    """Why a stop bath may still take so many rolls."""
    batch = desk.batches.by_key(bottle.batch)
    booked = desk.ledger.of_bottle(bottle.code)
    stands = account(booked)
    counts = batch is not None and batch.kind == "stop bath" and batch.strength == "working"
    if not counts or stands.put_in_ml <= 0 or stands.contaminated or stands.discarded:
        raise refuse("no-why", about="stop-left")
    count = stop_count(
        used_units=max(stands.area_units, 0.0), put_in_ml=stands.put_in_ml, label_per_l=bottle.rolls_per_l
    )
    return why_stop_left(count, put_in_ml=stands.put_in_ml, turned=indicator_turned(booked))
