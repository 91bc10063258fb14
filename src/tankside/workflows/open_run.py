"""From a plan to a run: the plan is frozen into the first event, and the bench as it stands."""

from __future__ import annotations

from collections.abc import Sequence
from uuid import NAMESPACE_URL, UUID, uuid5

from tankside.core.planning.fixer_known import fixer_known
from tankside.core.refusals import Refusal, Refused, refuse
from tankside.core.run.commands import Command, OpenRun
from tankside.core.run.events import BenchBottle
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bookings import Booking
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.workflows.note_at_sink import Sink
from tankside.workflows.ports import Desk
from tankside.workflows.supplies import must_hold


def open_run(
    desk: Desk,
    sink: Sink,
    run: UUID,
    plan: UUID,
    now: Instant,
    *,
    people: tuple[str, ...] = (),
    models: tuple[str, ...] = (),
    app: str = "",
    device: str = "",
) -> UUID:
    """Open the run `run` with the latest number of `plan`; asked twice it is opened once.

    The key of the run is drawn when the page is made, so that a second press opens no second run.
    """
    found = desk.plans.by_key(plan)
    if found is None:
        raise refuse("no-such-plan", ways_on=("plan",))
    if found.wish is not None and not desk.run_log.after(run):
        must_hold(desk, found.wish.supply("fixer"))
    asked = OpenRun(found, found.place.zone, people, models, app, bench(desk))
    answer = sink.note(run, Command(id=f"open:{run}", asked=asked, device=device, run=run), now)
    if isinstance(answer.said, Refusal):
        raise Refused(answer.said)
    return run


def run_for(plan: UUID) -> UUID:
    """The key of the one run that a plan is opened as."""
    return uuid5(NAMESPACE_URL, f"run-of:{plan}")


def bench(desk: Desk) -> tuple[BenchBottle, ...]:
    """Every bottle that was not poured away, with what the ledger says is in it."""
    batches = {batch.key: batch for batch in desk.batches.all()}
    booked = [(bottle, desk.ledger.of_bottle(bottle.code)) for bottle in desk.bottles.all()]
    return tuple(
        _on_the_bench(bottle, batches[bottle.batch], lines)
        for bottle, lines in booked
        if not account(lines).discarded
    )


def _on_the_bench(bottle: Bottle, batch: Batch, booked: Sequence[Booking]) -> BenchBottle:
    stands = account(booked)
    return BenchBottle(
        code=bottle.code,
        kind=batch.kind,
        name=batch.name,
        ml=stands.ml,
        stock_share=stock_share(batch),
        cap=bottle.cap,
        place=bottle.place,
        contaminated=stands.contaminated,
        fixer=fixer_known(batch, booked),
    )


def stock_share(batch: Batch) -> float:
    """Share of stock in a batch: 1.0 for stock or concentrate, 0.2 for a working strength of 1+4."""
    return batch.dilution.stock_fraction if batch.dilution else 1.0
