"""First start: one screen, no tour, and the doors that lead on from it."""

from __future__ import annotations

from dataclasses import dataclass

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.desk import InHouse
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.leaders import Words, elbow, spread
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.shown.again import goes_on
from tankside.web.templating import page
from tankside.web.units import chosen_units

router = APIRouter()

# Minutes of an ordinary evening, for the picture alone: nothing is computed from it.
EVENING = (
    (3, "choose the rolls"),
    (8, "plan the evening"),
    (14, "mix and temper"),
    (24, "develop"),
    (34, "stop bath"),
    (37, "fix"),
    (44, "wash"),
    (66, "wetting bath"),
    (69, "hang"),
)
VESSEL = empty_vessel(graduation(low=0, high=75, unit=1, length_px=640), left=8, width_px=150, above_px=64)


@dataclass(frozen=True, slots=True)
class Joined:
    """Words joined to a mark of the vessel."""

    path: str
    x: float
    y: float
    text: str


def _evening() -> tuple[Joined, ...]:
    """The acts of the evening to come, on leaders out of the right wall."""
    scale, top, wall = VESSEL.scale, VESSEL.inside.y, VESSEL.inside.right
    wishes = [Words(scale.at(minute) + top, 26) for minute, _ in EVENING]
    placed = spread(wishes, top_px=top, bottom_px=top + scale.length_px)
    return tuple(
        Joined(
            elbow(from_x=wall, from_y=one.at_px, to_x=wall + 40, to_y=one.words_px),
            wall + 48,
            one.words_px,
            text,
        )
        for one, (_, text) in zip(placed, EVENING, strict=True)
        if one.words_px is not None
    )


LEADERS = _evening()


@router.get("/")
def first_start(request: Request, house: InHouse) -> Response:
    """What goes on in this house, or what Tankside does and how to begin; in the demo what to look at."""
    if request.app.state.invented:
        return page(request, "pages/demo_front.html")
    return page(
        request,
        "pages/start.html",
        kept_at=house.desk.kept_at,
        units_words=chosen_units(house.desk.preferences).words,
        going=goes_on(house),
        vessel=VESSEL,
        leaders=LEADERS,
    )


@router.get("/contents")
def contents(request: Request) -> Response:
    """The seven pages on one scale, filling the screen."""
    return page(request, "pages/contents.html", here="Contents")


@router.get("/start/demo")
def demo(request: Request) -> Response:
    """How the demo is opened."""
    return page(request, "pages/start_demo.html", there=request.app.state.demo is not None)


@router.get("/start/restore")
def restore(request: Request) -> Response:
    """How a backup is brought back."""
    return page(request, "pages/start_restore.html")
