"""Every drawing on one page, with invented numbers, for the eye and for axe; no part of the product."""

from __future__ import annotations

from pathlib import Path

from fastapi import FastAPI
from jinja2 import ChoiceLoader, FileSystemLoader
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.refusals import Refusal, Refused
from tankside.web.drawing.doubt import doubt_length, lengths
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.kinds import BATH_NAMES, SIGNS
from tankside.web.drawing.leaders import Words, elbow, spread
from tankside.web.drawing.rings import Bead, rings
from tankside.web.drawing.shapes import liquid, stripe, surface
from tankside.web.drawing.stock import stock
from tankside.web.drawing.vessel import Layer, bottle, column, cylinder
from tankside.web.forms import Form
from tankside.web.templating import ENVIRONMENT, page

HERE = Path(__file__).parent / "specimen"
WASHES = [Layer("wash", 262 + 36 * n, 296 + 36 * n) for n in range(4)]
BATHS = [
    Layer("dev", 40, 130),
    Layer("stop", 134, 146),
    Layer("fix", 150, 220),
    Layer("aid", 224, 258),
    *WASHES,
    Layer("wet", 408, 424),
]
MARKS = {60: "Invert, 10 s", 66: "A: into wetting bath", 130: "B: drain, wash", 300: "last inversion"}


def _at_the_sink() -> dict[str, object]:
    """A small sink: scale, stripe, rings, beads, leaders."""
    scale = graduation(
        low=0, high=420, unit=10, middle=3, long=6, length_px=336, upward=True, words=lambda s: f"{s / 60:g}"
    )
    placed = spread([Words(at, 26) for at in MARKS], top_px=56, bottom_px=336)
    words = [
        (
            elbow(from_x=96 if at != 130 else 108, from_y=one.at_px, to_x=132, to_y=one.words_px),
            one.words_px,
            text,
        )
        for one, (at, text) in zip(placed, MARKS.items(), strict=True)
        if one.words_px is not None
    ]
    return {
        "scale": scale,
        "stripe": stripe(x=74, top=0, surface_y=48, bottom=336),
        "rings": rings([60, 108, 156, 204, 252, 300], [130]),
        "beads": [Bead(8, done=True), Bead(28, done=False)],
        "surface": surface(left=0, right=280, y=48),
        "body": liquid(left=0, right=280, y=48, bottom=336),
        "words": words,
    }


def add_specimen(app: FastAPI) -> FastAPI:
    """The app with its specimen at /specimen."""
    loader = ENVIRONMENT.loader
    assert loader is not None
    ENVIRONMENT.loader = ChoiceLoader([loader, FileSystemLoader(HERE)])
    clock = graduation(low=420, high=720, unit=10, middle=3, long=6, length_px=320, words=_clock)
    refused = Refused(Refusal("no-unit", at="temp"))
    form = Form.filled(volume="300", temp="68", kind="fix").refused_by(
        refused, say=lambda _: "68 of what? Write 68 F or 20 C.", fields=("volume", "temp")
    )

    def show(request: Request) -> Response:
        return page(
            request,
            "specimen.html",
            form=form,
            signs=SIGNS,
            names=BATH_NAMES,
            sink=_at_the_sink(),
            column=column(BATHS, left=40, minute_px=9),
            clock=clock,
            doubts=[
                doubt_length(clock, low=450, high=540, x=84),
                doubt_length(clock, low=490, high=530, value=510, x=104),
            ],
            parts=lengths({"rate with temperature": 8, "step strips": 20, "thermometer": 12}, longest_px=90),
            stocks=[
                (
                    "dev",
                    stock(capacity_ml=1000, holds_ml=780, rolls_at_most=6.7, rolls_left=(5, 5), after_ml=30),
                ),
                ("stop", stock(capacity_ml=1000, holds_ml=940, rolls_at_most=25, rolls_left=(9, 15))),
                ("wet", stock(capacity_ml=250, holds_ml=205, rolls_at_most=50, rolls_left=(40, 40))),
            ],
            glasses=[
                cylinder(high=300, unit=15, middle=4, long=4, holds=holds, left=28, top=30, width_px=44)
                for holds in (60, 75)
            ],
            bottles=[
                bottle(left=4, foot=230, height_px=160),
                bottle(left=100, foot=222, height_px=204, full=0.75),
            ],
        )

    app.add_api_route("/specimen", show)
    return app


def _clock(time_s: float) -> str:
    """Seconds as minutes and seconds."""
    minutes, seconds = divmod(round(time_s), 60)
    return f"{minutes}:{seconds:02d}"
