"""Refusals, lost pages and mishaps, said in the look of the house or as JSON to whoever asks for JSON."""

from __future__ import annotations

import logging
from collections.abc import Callable

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal, Refused
from tankside.web.templating import page
from tankside.web.ways_on import doors

Say = Callable[[Refusal], str]
log = logging.getLogger(__name__)

SENTENCES = {
    404: ("Nothing stands here", "This address leads to no page. It may have been mistyped or moved."),
    405: ("Not done this way", "This page does not take what was sent. Nothing was changed."),
    500: ("A fault in Tankside", "The program made a mistake. What was noted before it is kept."),
}


def wants_json(request: Request) -> bool:
    """Whether the asker reads JSON rather than pages."""
    accepts = request.headers.get("accept", "")
    return "application/json" in accepts and "text/html" not in accepts


def refused_answer(request: Request, refused: Refused, say: Say) -> Response:
    """422 with one sentence for each refusal, the same for page and JSON."""
    told = [{"code": one.code, "at": one.at, "sentence": say(one)} for one in refused.refusals]
    if wants_json(request):
        return JSONResponse({"refusals": told}, status_code=422)
    ways = doors(refused.refusals, Preferences())
    return page(request, "pages/refused.html", status=422, told=told, doors=ways)


def mishap_answer(request: Request, status: int) -> Response:
    """A plain page for a status that is no refusal."""
    heading, sentence = SENTENCES.get(status, ("Not done", "This could not be done. Nothing was changed."))
    if wants_json(request):
        return JSONResponse({"error": heading, "sentence": sentence}, status_code=status)
    return page(request, "pages/mishap.html", status=status, heading=heading, sentence=sentence)


def http_answer(request: Request, error: Exception) -> Response:
    """The page for a 404, a 405 and the like."""
    assert isinstance(error, HTTPException)
    return mishap_answer(request, error.status_code)


def not_linked_answer(request: Request) -> Response:
    """403 for whoever asks from the network without having been linked."""
    if wants_json(request):
        sentence = "This device is not linked. Take the code that Tankside shows."
        return JSONResponse({"error": "Not linked", "sentence": sentence}, status_code=403)
    return page(request, "pages/not_linked.html", status=403)


class LastResort:
    """Turns a bug into a page, inside the guard.

    The framework's own handler for unforeseen errors answers outside every middleware, so its answer would
    lack the binding headers.
    """

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass on; after a bug answer 500, unless an answer has begun."""
        begun = False

        async def send_noting(message: Message) -> None:
            nonlocal begun
            begun = begun or message["type"] == "http.response.start"
            await send(message)

        try:
            await self.app(scope, receive, send_noting)
        except Exception:
            if begun or scope["type"] != "http":
                raise
            log.exception("a fault while answering %s", scope["path"])
            await mishap_answer(Request(scope), 500)(scope, receive, send)
