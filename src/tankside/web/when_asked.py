"""A second house under an address of its own, opened by whoever asks for it first."""

from __future__ import annotations

import threading
from collections.abc import Callable

from starlette.concurrency import run_in_threadpool
from starlette.types import ASGIApp, Receive, Scope, Send

from tankside.workflows.house import House


class WhenAsked:
    """Opens its house at the first request, however many come at once; a refusal is told, and tried again."""

    def __init__(self, open_it: Callable[[], House], app_over: Callable[[House], ASGIApp]) -> None:
        self.house: House | None = None
        self._open_it = open_it
        self._app_over = app_over
        self._app: ASGIApp | None = None
        self._opening = threading.Lock()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass on to the house."""
        app = self._app
        if app is None:
            app = await run_in_threadpool(self._opened)
        await app(scope, receive, send)

    def _opened(self) -> ASGIApp:
        with self._opening:
            if self._app is None:
                self.house = self._open_it()
                self._app = self._app_over(self.house)
            return self._app
