"""The Sink page."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.templating import page

router = APIRouter()

VESSEL = empty_vessel(graduation(low=0, high=9.5, unit=1 / 6, middle=3, long=6, length_px=380, upward=True))


@router.get("/sink")
def show(request: Request) -> Response:
    """Sink, empty."""
    return page(request, "pages/sink.html", here="Sink", vessel=VESSEL)
