"""One file per page."""

from tankside.web.pages import (
    begin,
    densities,
    journal,
    negatives,
    next_morning,
    phone,
    plan,
    ready,
    rolls,
    settings,
    shelf,
    sink,
    sink_wire,
    start,
    why,
)

ROUTERS = (
    start.router,
    phone.router,
    begin.router,
    rolls.router,
    shelf.router,
    plan.router,
    ready.router,
    why.router,
    sink.router,
    sink_wire.router,
    next_morning.router,
    journal.router,
    densities.router,
    negatives.router,
    settings.router,
)
