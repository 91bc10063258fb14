"""The Sink page."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.addresses import go_to
from tankside.web.desk import AtDesk, InHouse
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.pages.sink_wire import KnownRun
from tankside.web.screen.show import first_screen, run_page
from tankside.web.templating import page

router = APIRouter()

VESSEL = empty_vessel(graduation(low=0, high=9.5, unit=1 / 6, middle=3, long=6, length_px=380, upward=True))


@router.get("/sink")
def show(request: Request, desk: AtDesk) -> Response:
    """The run that is open, the latest if there are several; else an empty vessel."""
    open_runs = [one.run for one in desk.run_log.headings() if not one.closed]
    if open_runs:
        return go_to(request, f"/sink/{open_runs[0]}")
    return page(request, "pages/sink.html", here="Sink", vessel=VESSEL)


@router.get("/sink/{run}")
def lead(request: Request, run: KnownRun, house: InHouse) -> Response:
    """The page that leads a run."""
    return run_page(request, first_screen(house, run))
