"""A live Tankside on a free port of this machine, and the themes and sizes that every page is seen in."""

from __future__ import annotations

import os
import shutil
import socket
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

import uvicorn
from fakes import memory_desk

from tankside.web.app import make_app
from tankside.workflows.ports import Desk

CHROMIUM = os.environ.get("TANKSIDE_BROWSER") or shutil.which("chromium") or shutil.which("chromium-browser")
THEMES = ("light", "dark", "dim")
SIZES = {"small": (320, 640), "phone": (390, 844), "laptop": (1280, 800)}


@contextmanager
def serving(desk: Desk | None = None) -> Iterator[str]:
    """The address of an app over `desk`, up while the block runs."""
    app = make_app(desk or replace(memory_desk(), kept_at="~/tankside"), say=lambda refusal: refusal.code)
    ears = socket.socket()
    ears.bind(("127.0.0.1", 0))
    ears.listen(64)
    server = uvicorn.Server(uvicorn.Config(app, log_level="warning", timeout_graceful_shutdown=1))
    ready = threading.Event()
    startup = server.startup

    async def startup_and_say(sockets: list[socket.socket] | None = None) -> None:
        await startup(sockets)
        ready.set()

    server.startup = startup_and_say  # type: ignore[method-assign]
    thread = threading.Thread(target=server.run, kwargs={"sockets": [ears]}, daemon=True)
    thread.start()
    assert ready.wait(10), "the app did not start"
    try:
        yield f"http://127.0.0.1:{ears.getsockname()[1]}"
    finally:
        server.should_exit = True
        thread.join(5)
