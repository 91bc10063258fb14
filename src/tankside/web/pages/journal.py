"""The Journal page."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.templating import page

router = APIRouter()

VESSEL = empty_vessel(graduation(low=0, high=70, unit=1, length_px=392))


@router.get("/journal")
def show(request: Request) -> Response:
    """Journal, empty."""
    return page(request, "pages/journal.html", here="Journal", vessel=VESSEL)
