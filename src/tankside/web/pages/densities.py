"""The Densities page."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.templating import page

router = APIRouter()


def density(value: float) -> str:
    """A density with its tenth."""
    return f"{value:.1f}"


VESSEL = empty_vessel(graduation(low=0, high=2.4, unit=0.1, length_px=384, upward=True, words=density))


@router.get("/densities")
def show(request: Request) -> Response:
    """Densities, empty."""
    return page(request, "pages/densities.html", here="Densities", vessel=VESSEL)
