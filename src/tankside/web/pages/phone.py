"""Linking a phone: the code is shown on this machine and typed, or scanned, on the phone."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.refusals import Refused
from tankside.web.addresses import go_to
from tankside.web.device import keep
from tankside.web.door import PHONE_COOKIE, from_here
from tankside.web.drawing.qr import qr_code
from tankside.web.forms import Form, TypedForm
from tankside.web.linking import PhoneLink
from tankside.web.templating import page

router = APIRouter()


def link_of(request: Request) -> PhoneLink | None:
    """The link to the home network, where Tankside was started for a phone."""
    found: PhoneLink | None = request.app.state.link
    return found


@router.get("/start/phone")
def explain(request: Request) -> Response:
    """How a phone is joined; with the code to scan where that is open."""
    link = link_of(request)
    shown = None if link is None else qr_code(link.open_on_phone)
    return page(request, "pages/start_phone.html", link=link, qr=shown, here=from_here(request.scope))


@router.post("/start/phone/lock-out")
def lock_out(request: Request) -> Response:
    """Lock every linked phone out; only from this machine, lest one phone lock out another."""
    link = link_of(request)
    if link is None or not from_here(request.scope):
        raise HTTPException(404)
    link.lock_out()
    return go_to(request, "/start/phone")


@router.get("/link/")
@router.get("/link/{code}")
def ask(request: Request, code: str = "") -> Response:
    """One button: only a press uses the code up, so that a preview of the address does not."""
    if link_of(request) is None:
        raise HTTPException(404)
    return page(request, "pages/link.html", form=Form.filled(code=code))


@router.post("/link/")
def use(request: Request, form: TypedForm) -> Response:
    """Take the code, and know this phone by its cookie from now on."""
    link = link_of(request)
    if link is None:
        raise HTTPException(404)
    try:
        token = link.link(form.text("code"))
    except Refused as refused:
        told = form.refused_by(refused, say=request.app.state.say, fields=("code",))
        return page(request, "pages/link.html", status=422, form=told)
    answer = go_to(request, "/")
    keep(answer, PHONE_COOKIE, token)
    return answer
