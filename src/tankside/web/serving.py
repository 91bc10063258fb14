"""Serves the app on a socket that is already taken, until it is told to stop."""

from __future__ import annotations

import signal
import socket

import uvicorn
from fastapi import FastAPI

# A stream that does not end by itself would hold up the end for ever.
GRACE_S = 1


class HouseServer(uvicorn.Server):
    """Ends the streams of every house before it waits for its connections to end."""

    def __init__(self, app: FastAPI, settings: uvicorn.Config) -> None:
        super().__init__(settings)
        self.app = app

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        """End streams, then stop."""
        demo = getattr(self.app.state, "demo", None)
        for house in (getattr(self.app.state, "house", None), demo and demo.house):
            if house is not None:
                house.broadcast.close()
        await super().shutdown(sockets)


def server_of(app: FastAPI) -> uvicorn.Server:
    """A server for `app` that neither logs each request nor tells its name.

    Headers of a proxy are not believed: any program on this machine could send them.
    """
    settings = uvicorn.Config(
        app,
        log_level="warning",
        access_log=False,
        proxy_headers=False,
        server_header=False,
        timeout_graceful_shutdown=GRACE_S,
    )
    return HouseServer(app, settings)


def serve_app(app: FastAPI, *taken: socket.socket) -> None:
    """Serve on every socket `taken` until Ctrl+C or a polite signal.

    The server raises the signal that ended it once more when it has ended; by then both only end the waiting,
    so that databases are closed and locks let go.
    """
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    try:
        server_of(app).run(sockets=list(taken))
    except KeyboardInterrupt:
        return
