"""The Shelf page."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.templating import page

router = APIRouter()

VESSEL = empty_vessel(graduation(low=0, high=1000, unit=50, long=5, middle=5, length_px=380, upward=True))


@router.get("/shelf")
def show(request: Request) -> Response:
    """Shelf, empty."""
    return page(request, "pages/shelf.html", here="Shelf", vessel=VESSEL)
