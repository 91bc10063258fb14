"""The Negatives page."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.templating import page

router = APIRouter()

VESSEL = empty_vessel(graduation(low=0, high=165, unit=2, length_px=396))


@router.get("/negatives")
def show(request: Request) -> Response:
    """Negatives, empty."""
    return page(request, "pages/negatives.html", here="Negatives", vessel=VESSEL)
