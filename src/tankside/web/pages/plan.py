"""The Plan page."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.templating import page

router = APIRouter()


def clock(value: float) -> str:
    """Minutes since midnight as a clock reads."""
    hour, minute = divmod(int(value), 60)
    return f"{hour}:{minute:02d}"


VESSEL = empty_vessel(graduation(low=20 * 60, high=21 * 60 + 30, unit=1, length_px=396, words=clock))


@router.get("/plan")
def show(request: Request) -> Response:
    """Plan, empty."""
    return page(request, "pages/plan.html", here="Plan", vessel=VESSEL)
