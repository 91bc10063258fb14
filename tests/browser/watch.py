"""Listens to a page: errors in its console, breaches of its policy, requests that fail or go elsewhere."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from urllib.parse import urlsplit

from playwright.sync_api import ConsoleMessage, Error, Page, Request, Response

# A page that is left gives up what it was still loading, its stream too.
GIVEN_UP = "net::ERR_ABORTED"


@dataclass
class Watch:
    """What went wrong on the pages it was put on; `expected` holds patterns that a test means to see."""

    address: str
    troubles: list[str] = field(default_factory=list)
    expected: list[str] = field(default_factory=list)

    def put_on(self, page: Page) -> None:
        """Listen from now on."""
        page.on("console", self._console)
        page.on("pageerror", self._page_error)
        page.on("request", self._request)
        page.on("requestfailed", self._request_failed)
        page.on("response", self._response)

    def unexpected(self) -> list[str]:
        """Every trouble that no pattern foretold."""
        return [one for one in self.troubles if not any(re.search(pattern, one) for pattern in self.expected)]

    def _console(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning"):
            self.troubles.append(f"console: {message.text} ({message.location.get('url', '')})")

    def _page_error(self, error: Error) -> None:
        self.troubles.append(f"uncaught: {error}")

    def _request(self, request: Request) -> None:
        parts = urlsplit(request.url)
        if parts.scheme in ("http", "https", "ws", "wss") and parts.netloc != urlsplit(self.address).netloc:
            self.troubles.append(f"another host: {request.url}")

    def _request_failed(self, request: Request) -> None:
        if request.failure != GIVEN_UP:
            self.troubles.append(f"failed: {request.url} {request.failure}")

    def _response(self, response: Response) -> None:
        if response.status >= 400:
            self.troubles.append(f"answered {response.status}: {response.url}")
