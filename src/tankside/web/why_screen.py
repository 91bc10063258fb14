"""The one page of every why, whatever number it is asked about."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from tankside.core.planning.why import Why
from tankside.core.quantities.preferences import Preferences
from tankside.web.forms import Form
from tankside.web.shown.why import shown_why
from tankside.web.templating import page
from tankside.wording.why import Say


@dataclass(frozen=True, slots=True)
class Back:
    """Where one came from: words and path."""

    label: str
    path: str


@dataclass(frozen=True, slots=True)
class OwnTime:
    """The form for a time of one's own; `is_set` while one stands."""

    form: Form
    is_set: bool


def why_screen(
    request: Request,
    why: Why,
    preferences: Preferences,
    *,
    here: str,
    back: Back,
    say: Say | None = None,
    own_time: OwnTime | None = None,
    status: int = 200,
) -> Response:
    """A why as a page; `say` tells how its values are said where the unit alone does not."""
    return page(
        request,
        "why/show.html",
        status=status,
        here=here,
        why=shown_why(why, preferences, known=request.app.state.bibliography, say=say),
        tankful=why.tankful or "",
        own_time=own_time,
        back=back,
    )
