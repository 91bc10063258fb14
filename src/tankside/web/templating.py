"""Templates, and what every page is given: its place among the contents, its theme, where its styles lie."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.requests import Request
from starlette.responses import HTMLResponse

from tankside.web.addresses import prefix_of
from tankside.web.assets import static_url
from tankside.web.device import theme_of
from tankside.web.drawing.kinds import BATH_NAMES

FOLDER = Path(__file__).parent / "templates"
SHEETS = (
    "tokens",
    "type",
    "page",
    "contents",
    "scale",
    "vessel",
    "bottle",
    "stock",
    "controls",
    "forms",
    "plates",
    "tables",
    "start",
    "again",
    "invented",
    "begin",
    "session",
    "rolls",
    "plan",
    "bench",
    "ready",
    "journal",
    "beside",
    "plot",
    "why",
    "change",
    "leaflets",
    "shelf",
    "curves",
    "densities",
    "print",
)


@dataclass(frozen=True, slots=True)
class Place:
    """One of the seven pages on the scale of contents: its name, where it is, what one finds there."""

    name: str
    path: str
    holds: str


CONTENTS = (
    Place("Rolls", "/rolls", "exposed rolls, waiting and done"),
    Place("Shelf", "/shelf", "bottles, tanks, measures, thermometers"),
    Place("Plan", "/plan", "one evening worked out"),
    Place("Sink", "/sink", "the run, one act at a time"),
    Place("Journal", "/journal", "what was planned and what happened"),
    Place("Densities", "/densities", "step strips and curves"),
    Place("Negatives", "/negatives", "evenness and faults of scans"),
)


@cache
def environment(prefix: str) -> Environment:
    """Strict templates of the house under `prefix`: a name nobody gave is an error, never an empty space.

    `to(path)` is the address of a path of the same house, `outside(path)` of the person's own; macros know
    no request, so each prefix has an environment.
    """
    made = Environment(
        loader=FileSystemLoader(FOLDER),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals.update(
        to=lambda path: prefix + path,
        outside=lambda path: path,
        static_url=lambda name: prefix + static_url(name),
        contents=CONTENTS,
        sheets=SHEETS,
        bath_names=BATH_NAMES,
    )
    return made


ENVIRONMENT = environment("")


def page(request: Request, template: str, *, status: int = 200, **values: Any) -> HTMLResponse:
    """The page `template` filled with `values`; `here` names the open one of the seven, if it is one."""
    given = {"here": None, "form": None, "refusals": (), "invented": request.app.state.invented, **values}
    text = (
        environment(prefix_of(request))
        .get_template(template)
        .render(request=request, theme=theme_of(request), address=request.url.path, **given)
    )
    return HTMLResponse(text, status_code=status)
