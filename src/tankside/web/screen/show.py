"""The page of a run, filled for its first moment; the browser goes on from there."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from tankside.web.screen.values import Screen
from tankside.web.screen.wire import as_json
from tankside.web.templating import page


def run_page(request: Request, screen: Screen) -> Response:
    """The page at the sink for `screen`."""
    return page(
        request,
        "sink/run.html",
        here="Sink",
        run=screen.run,
        screen_json=as_json(screen),
        tankful=screen.tankfuls[0],
        phrases=screen.phrases,
        shape="vessel",
    )
