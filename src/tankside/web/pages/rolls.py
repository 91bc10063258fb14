"""The Rolls page."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.templating import page

router = APIRouter()
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def month(value: float) -> str:
    """The short name of a month, the year beginning at 0."""
    return MONTHS[int(value) % 12]


VESSEL = empty_vessel(graduation(low=0, high=12, unit=0.25, middle=2, long=4, length_px=384, words=month))


@router.get("/rolls")
def show(request: Request) -> Response:
    """Rolls, empty."""
    return page(request, "pages/rolls.html", here="Rolls", vessel=VESSEL)
