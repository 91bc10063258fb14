"""One file per page."""

from tankside.web.pages import (
    begin,
    densities,
    journal,
    negatives,
    plan,
    rolls,
    settings,
    shelf,
    sink,
    start,
)

ROUTERS = (
    start.router,
    begin.router,
    rolls.router,
    shelf.router,
    plan.router,
    sink.router,
    journal.router,
    densities.router,
    negatives.router,
    settings.router,
)
