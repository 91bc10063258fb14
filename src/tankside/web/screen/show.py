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


def screen_of(house: House, run: Run, *, since_us: int | None = None) -> Screen:
    """What every screen of this run shows now, in the household's units; one last looked at `since_us`.

    Whoever asks is taken to follow the run too, so the others that watch are one fewer.
    """
    preferences = preferences_from(house.desk.preferences.all())
    return screen(
        run,
        house.clock.now(),
        preferences=preferences,
        pace=house.pace,
        watching=max(0, house.broadcast.watching(run.key) - 1),
        since_us=since_us,
    )


def first_screen(house: House, run: Run) -> Screen:
    """The screen for a page that cannot tell when it last looked.

    If the program has begun anew since the last note, nobody is known to have looked after that note.
    """
    last_us = max((note.at_us for note in run.settled.notes), default=None)
    began = house.began
    if last_us is None or began is None or run.state.timeline.at_us(began) <= last_us:
        return screen_of(house, run)
    return screen_of(house, run, since_us=last_us)


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
