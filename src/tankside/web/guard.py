"""Who may ask: the Host list, the origin of each request, and the headers that bind every answer.

Loopback is open to any page of any browser on this machine and to names that are rebound to it, so each
request is judged before a page sees it.
"""

from __future__ import annotations

from collections.abc import Iterable

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

LOOPBACK = frozenset({"localhost", "127.0.0.1", "[::1]"})
SAFE_METHODS = frozenset({"GET", "HEAD", "OPTIONS"})
POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self'",
        "connect-src 'self'",
        "media-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)
# 'no-referrer' would make browsers send 'Origin: null' with the page's own forms; 'same-origin' does not.
BINDING_HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
}


def host_name(host: str) -> str:
    """The name in a Host header, without its port.

    >>> host_name("127.0.0.1:8420"), host_name("[::1]:8420")
    ('127.0.0.1', '[::1]')
    """
    name = host.strip().lower()
    if name.startswith("["):
        return name.partition("]")[0] + "]"
    return name.partition(":")[0]


def objection(method: str, scheme: str, headers: Headers, hosts: frozenset[str]) -> tuple[int, str] | None:
    """Status and sentence where a request may not pass, else None."""
    host = headers.get("host", "")
    if host_name(host) not in hosts:
        return 421, "This address is not one that Tankside answers to. Open it by the address it printed."
    site = headers.get("sec-fetch-site")
    if method in SAFE_METHODS:
        return _objection_to_reading(site, headers)
    return _objection_to_writing(site, headers.get("origin"), f"{scheme}://{host}")


def _objection_to_reading(site: str | None, headers: Headers) -> tuple[int, str] | None:
    """Links from elsewhere may open a page; nothing else from elsewhere may read."""
    if site in (None, "same-origin", "none"):
        return None
    opens_a_page = headers.get("sec-fetch-mode") == "navigate" and headers.get("sec-fetch-dest") == "document"
    return None if opens_a_page else (403, "Another site asked for this; only its own pages may.")


def _objection_to_writing(site: str | None, origin: str | None, own: str) -> tuple[int, str] | None:
    """Only Tankside's own pages may change anything; a request that does not say whence it comes may not."""
    if origin is not None and origin.lower() != own.lower():
        return 403, "This was sent from another site. Nothing was changed."
    if site is not None and site != "same-origin":
        return 403, "This was sent from another site. Nothing was changed."
    if origin is None and site is None:
        return 403, "This did not say where it was sent from. Nothing was changed."
    return None


class Guard:
    """Judges each request and puts the binding headers on each answer, streams included."""

    def __init__(self, app: ASGIApp, *, hosts: Iterable[str] = ()) -> None:
        self.app = app
        self.hosts = LOOPBACK | {host_name(host) for host in hosts}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, or answer it with the objection."""
        if scope["type"] == "lifespan":
            await self.app(scope, receive, send)
            return
        if scope["type"] != "http":
            await send({"type": "websocket.close", "code": 1008})
            return

        async def send_bound(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in BINDING_HEADERS.items():
                    headers[name] = value
                headers.setdefault("cache-control", "no-cache")
            await send(message)

        scope["house_path"] = scope.get("root_path", "")
        against = objection(scope["method"], scope["scheme"], Headers(scope=scope), self.hosts)
        if against is None:
            await self.app(scope, receive, send_bound)
        else:
            status, sentence = against
            await PlainTextResponse(sentence + "\n", status_code=status)(scope, receive, send_bound)
