"""The page of a run, filled for its first moment; the browser goes on from there."""

from __future__ import annotations

import json

from starlette.requests import Request
from starlette.responses import Response

from tankside.core.quantities.preferences import preferences_from
from tankside.core.run.state import Run
from tankside.web.plain_json import plain
from tankside.web.screen.compose import screen
from tankside.web.screen.values import Screen
from tankside.web.templating import page
from tankside.workflows.house import House


def screen_of(house: House, run: Run) -> Screen:
    """What every screen of this run shows now, in the household's units."""
    preferences = preferences_from(house.desk.preferences.all())
    return screen(run, house.clock.now(), preferences=preferences, pace=house.pace)


def run_page(request: Request, shown: Screen) -> Response:
    """The page at the sink for what is shown."""
    return page(
        request,
        "sink/run.html",
        here="Sink",
        run=shown.run,
        screen_json=json.dumps(plain(shown), separators=(",", ":"), ensure_ascii=False),
        tankful=shown.tankfuls[0],
        phrases=shown.phrases,
        shape="vessel",
    )
