"""Serves the app on a socket that is already taken, until it is told to stop."""

from __future__ import annotations

import socket

import uvicorn
from fastapi import FastAPI

# Open streams would hold up the end for ever.
GRACE_S = 1


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
    return uvicorn.Server(settings)


def serve_app(app: FastAPI, taken: socket.socket) -> None:
    """Serve on `taken` until Ctrl+C or a polite signal."""
    try:
        server_of(app).run(sockets=[taken])
    except KeyboardInterrupt:
        return
