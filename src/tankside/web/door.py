"""Who may come in from the home network: linked phones alone; this machine itself goes on as before."""

from __future__ import annotations

from starlette.datastructures import Headers
from starlette.requests import Request
from starlette.types import ASGIApp, Receive, Scope, Send

from tankside.web.errors import not_linked_answer
from tankside.web.guard import LOOPBACK, host_name
from tankside.web.linking import PhoneLink

PHONE_COOKIE = "tankside-phone"
OPEN_TO_ALL = ("/link/", "/static/")
"""A stranger may see where to type the code, and the styles of that page; nothing there is the person's."""


def from_here(scope: Scope) -> bool:
    """Whether a request comes from this machine and by one of its own names."""
    client = scope.get("client")
    host = host_name(Headers(scope=scope).get("host", ""))
    return client is not None and client[0] in ("127.0.0.1", "::1") and host in LOOPBACK


class Door:
    """Stands behind the guard: asks everyone from the network for the cookie of a linked phone."""

    def __init__(self, app: ASGIApp, *, link: PhoneLink) -> None:
        self.app = app
        self.link = link

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, or answer it with 403."""
        if scope["type"] != "http" or self._may_come_in(scope):
            await self.app(scope, receive, send)
            return
        await not_linked_answer(Request(scope))(scope, receive, send)

    def _may_come_in(self, scope: Scope) -> bool:
        if from_here(scope) or scope["path"].startswith(OPEN_TO_ALL):
            return True
        return self.link.knows(Request(scope).cookies.get(PHONE_COOKIE, ""))
