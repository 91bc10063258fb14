"""From a plan to a run: the plan is frozen into the first event, and the bench as it stands."""

from __future__ import annotations

from uuid import NAMESPACE_URL, UUID, uuid5

from tankside.core.refusals import Refusal, Refused, refuse
from tankside.core.run.commands import Command, OpenRun
from tankside.core.run.events import BenchBottle
from tankside.core.run.instants import Instant
from tankside.core.shelf.accounts import Account, account
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.workflows.note_at_sink import Sink
from tankside.workflows.ports import Desk


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
    accounts = [(bottle, account(desk.ledger.of_bottle(bottle.code))) for bottle in desk.bottles.all()]
    return tuple(
        _on_the_bench(bottle, batches[bottle.batch], stands)
        for bottle, stands in accounts
        if not stands.discarded
    )


def _on_the_bench(bottle: Bottle, batch: Batch, stands: Account) -> BenchBottle:
    return BenchBottle(
        code=bottle.code,
        kind=batch.kind,
        name=batch.name,
        ml=stands.ml,
        stock_share=stock_share(batch),
        cap=bottle.cap,
        place=bottle.place,
        contaminated=stands.contaminated,
    )


def stock_share(batch: Batch) -> float:
    """Share of stock in a batch: 1.0 for stock or concentrate, 0.2 for a working strength of 1+4."""
    return batch.dilution.stock_fraction if batch.dilution else 1.0
